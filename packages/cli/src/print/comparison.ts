import { type EvidenceRow, type EvidenceTable, evidenceCells, evidenceName, type Voice } from '@slabwright/core';
import type { Terminal } from '../terminal.ts';
import { columns, indent, paint, widthOf, wrap } from './lines.ts';

/** Blanks between two columns. */
const GAP = 3;

/** Rows of properties under one column a product; what may not be compared stands in brackets with its reason. */
export function printComparison(table: EvidenceTable, voice: Voice, terminal: Terminal): string {
  const width = Math.min(terminal.width, 110);
  const lines = [...grid(table, voice, terminal, width)];
  const block = (title: string, sentences: readonly string[]): void => {
    if (sentences.length === 0) return;
    lines.push('', paint(terminal, 'bold', title));
    for (const sentence of sentences) {
      const [first = '', ...rest] = wrap(sentence, width - 4);
      lines.push(`  · ${first}`, ...rest.map(indent(4)));
    }
  };
  block(
    'May be compared',
    table.rows.flatMap((row) => outcomes(row, voice)),
  );
  block(
    'May not be compared',
    table.rows.flatMap((row) => refusals(row, voice)),
  );
  block('Look twice', table.doubts.map(voice.say));
  block('Ask the maker', asks(table, voice));
  return `${lines.join('\n')}\n`;
}

/** One row whose cells are too wide as several rows under each other; words are never cut. */
function folded(row: readonly string[], width: number): readonly (readonly string[])[] {
  const cells = row.map((cell, i) => (i === 0 ? [cell] : wrap(cell, width)));
  const height = Math.max(...cells.map(({ length }) => length), 1);
  return Array.from({ length: height }, (_, line) => cells.map((cell) => cell[line] ?? ''));
}

function grid(table: EvidenceTable, voice: Voice, terminal: Terminal, width: number): readonly string[] {
  if (table.rows.length === 0) return ['None of these sheets states a property.'];
  const head = ['Like for like', ...table.products.map(({ name }) => name)];
  const sheets = ['', ...table.products.map(({ sheet }) => sheet)];
  const body = table.rows.flatMap((row) => {
    const cells = evidenceCells(row, table, voice).map(
      ({ claim, text, note, comparable }): readonly [string, string] => [
        comparable || !claim ? text : `[${text}]`,
        note,
      ],
    );
    const better = row.better === 'neither' ? '' : voice.word(`evidence-better-${row.better}`);
    return [
      ['', ...cells.map(() => '')],
      [evidenceName(row, voice), ...cells.map(([value]) => value)],
      [`  ${better}`, ...cells.map(([, why]) => why)],
    ];
  });
  const label = Math.max(...[head, ...body].map(([first = '']) => widthOf(first)));
  const cell = Math.floor((width - label) / table.products.length) - GAP;
  const under = folded(sheets, cell);
  const [title = '', ...rest] = columns([head, ...under, ...body.flatMap((row) => folded(row, cell))], { gap: GAP });
  return [
    paint(terminal, 'bold', title),
    ...rest.map((line, i) => (i < under.length ? paint(terminal, 'quiet', line) : line)),
    '',
    'Without brackets: same method and conditions along the row. In brackets: may not be compared along it.',
  ];
}

function outcomes(row: EvidenceRow, voice: Voice): readonly string[] {
  return row.pairs.flatMap((pair) => {
    const said = [...(pair.says ? [pair.says] : []), ...pair.notes].map(voice.say).join(' ');
    return pair.verdict === 'comparable' ? [`${evidenceName(row, voice)}: ${said}`] : [];
  });
}

function refusals(row: EvidenceRow, voice: Voice): readonly string[] {
  // One silent sheet is a gap of every pair it stands in: each reason is said once a row.
  const said = row.pairs
    .filter(({ verdict }) => verdict !== 'comparable')
    .flatMap(({ reasons }) => reasons.filter(({ code }) => code !== 'evidence-not-on-sheet').map(voice.say));
  const once = [...new Set(said)];
  return once.length === 0 ? [] : [`${evidenceName(row, voice)}: ${once.join(' ')}`];
}

/** One line a claim with gaps, and one a product for all that its sheet leaves out. */
function asks(table: EvidenceTable, voice: Voice): readonly string[] {
  const property = (id: string): string => voice.word(`evidence-property-${id}`);
  return table.products.flatMap(({ id, name }) => {
    const own = table.ask.filter(({ product }) => product === id);
    const silent = own.filter(({ claim }) => claim === undefined);
    const gaps = own.flatMap((ask) =>
      ask.claim === undefined
        ? []
        : [`${name}, ${property(ask.property)} (${ask.claim}): ${ask.wanted.map(voice.say).join('; ')}`],
    );
    const first = silent[0]?.wanted[0];
    if (!first) return gaps;
    return [...gaps, `${name}, ${silent.map((ask) => property(ask.property)).join(', ')}: ${voice.say(first)}`];
  });
}
