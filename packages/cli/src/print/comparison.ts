import type { Claim, EvidencePair, EvidenceRow, EvidenceTable, Voice } from '@slabwright/core';
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

const propertyName = (row: EvidenceRow, voice: Voice): string =>
  voice.word(`evidence-property-${row.family.id}`) + (row.setting === undefined ? '' : `, ${row.setting}`);

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
    const cells = table.products.map(({ id }) => cellOf(row, id, table, voice));
    const better = row.better === 'neither' ? '' : voice.word(`evidence-better-${row.better}`);
    return [
      ['', ...cells.map(() => '')],
      [propertyName(row, voice), ...cells.map(([value]) => value)],
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

const pairOf = (row: EvidenceRow, a: string, b: string): EvidencePair | undefined =>
  row.pairs.find(({ first, second }) => (first === a && second === b) || (first === b && second === a));

/** The product the others of a row are held against: with most comparable neighbours, the first of equals. */
function referenceOf(row: EvidenceRow): string | undefined {
  const neighbours = (id: string): number =>
    row.pairs.filter((p) => p.verdict === 'comparable' && (p.first === id || p.second === id)).length;
  return row.claims
    .map(({ product }) => product)
    .reduce<string | undefined>((best, id) => {
      return best === undefined || neighbours(id) > neighbours(best) ? id : best;
    }, undefined);
}

const valueText = (claim: Claim, voice: Voice): string => {
  const { low, high, property } = claim;
  if (low && high) return low.id === high.id ? voice.show(low.id) : `${voice.show(low.id)} to ${voice.show(high.id)}`;
  if (low) return `≥ ${voice.show(low.id)}`;
  return high ? `≤ ${voice.show(high.id)}` : property.value;
};

/** Value and the short reason below it. */
function cellOf(row: EvidenceRow, id: string, table: EvidenceTable, voice: Voice): readonly [string, string] {
  const claim = row.claims.find(({ product }) => product === id);
  if (!claim) return ['—', voice.word('evidence-short-none')];
  const value = valueText(claim, voice);
  const reference = referenceOf(row);
  const alone = !row.pairs.some((pair) => pair.verdict === 'comparable');
  const method = claim.method?.id ?? claim.typedMethod ?? '';
  if (id === reference) return [alone ? `[${value}]` : value, method];
  const pair = reference === undefined ? undefined : pairOf(row, reference, id);
  if (!pair || pair.verdict === 'comparable') return [value, method];
  return [`[${value}]`, shortReason(pair, claim, row, table, voice)];
}

function shortReason(pair: EvidencePair, claim: Claim, row: EvidenceRow, table: EvidenceTable, voice: Voice): string {
  const own = pair.reasons.find(({ names }) => names?.product === undefined || names.product === claim.name);
  const reason = own ?? pair.reasons[0];
  if (!reason) return '';
  if (!own) return voice.say({ code: 'evidence-short-gap-elsewhere', names: { product: reason.names?.product ?? '' } });
  const names = reason.names ?? {};
  const first = table.products.find(({ id }) => id === pair.first)?.name === claim.name;
  const mine =
    reason.code === 'evidence-method-differs' || reason.code === 'evidence-method-unlisted'
      ? (claim.method?.id ?? claim.typedMethod)
      : reason.code === 'evidence-mode-differs'
        ? claim.property.failureMode
        : first
          ? names.firstValue
          : names.secondValue;
  const code = reason.code.replace('evidence-', 'evidence-short-');
  return voice.say({ code, names: { ...names, mine: mine ?? '', property: propertyName(row, voice) } });
}

function outcomes(row: EvidenceRow, voice: Voice): readonly string[] {
  return row.pairs.flatMap((pair) => {
    const said = [...(pair.says ? [pair.says] : []), ...pair.notes].map(voice.say).join(' ');
    return pair.verdict === 'comparable' ? [`${propertyName(row, voice)}: ${said}`] : [];
  });
}

function refusals(row: EvidenceRow, voice: Voice): readonly string[] {
  // One silent sheet is a gap of every pair it stands in: each reason is said once a row.
  const said = row.pairs
    .filter(({ verdict }) => verdict !== 'comparable')
    .flatMap(({ reasons }) => reasons.filter(({ code }) => code !== 'evidence-not-on-sheet').map(voice.say));
  const once = [...new Set(said)];
  return once.length === 0 ? [] : [`${propertyName(row, voice)}: ${once.join(' ')}`];
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
