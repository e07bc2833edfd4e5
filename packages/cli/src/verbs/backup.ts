import { backupText } from '@slabwright/store';
import { type DataOptions, withData } from '../data/open-data.ts';
import { refuseExisting, writeWhole } from '../data/write-file.ts';
import { EXIT, type Terminal } from '../terminal.ts';

export interface BackupOptions extends DataOptions {
  readonly out: string;
  readonly overwrite?: boolean;
}

/** `backup --out FILE`: everything in the data folder, every revision and entry, as one file under a checksum. */
export async function backupVerb(options: BackupOptions, terminal: Terminal): Promise<number> {
  refuseExisting(options.out, options.overwrite);
  const backup = await withData(options, 'must be there', (store) => store.exportAll());
  writeWhole(options.out, backupText(backup));
  const { checksum, documents, entries, unreadable } = backup;
  if (options.json) {
    const counts = { revisions: documents.length, entries: entries.length, unreadable };
    terminal.out(`${JSON.stringify({ written: options.out, checksum, ...counts })}\n`);
  } else {
    terminal.out(`${options.out}: ${documents.length} revisions, ${entries.length} log entries, ${checksum}\n`);
  }
  for (const name of unreadable) terminal.err(`${name} no longer reads; it is in the backup as the text it is.\n`);
  return unreadable.length > 0 ? EXIT.halted : EXIT.fine;
}
