/** What the pages of catalogue and price book say. */
export const fileWords = {
  catalogue: 'Catalogue',
  prices: 'Price book',
  parts: 'Parts of the catalogue',
  absent: 'This file is not on this device.',
  saveJson: 'Save as a file',
  saveCsv: 'Save as a table',
  openTable: 'Read a table',
  openTableNote: 'CSV with the columns list, item, field, value, as “Save as a table” writes it.',
  read: (items: number) => `${items} ${items === 1 ? 'item' : 'items'} read. Undo takes them back.`,
  noColumns: (absent: string) =>
    `The table has no column ${absent}. Save this file as a table to see how one looks. Nothing was changed.`,
  broken: (line: number, detail: string) => `Line ${line} cannot be read: ${detail}. Nothing was changed.`,
  jobs: 'Jobs that use it plan with every change at once.',
  kept: { kept: 'kept on this device', writing: 'writing', failed: 'not kept' },
} as const;
