import type { Claim, EvidencePair, EvidenceRow, EvidenceTable } from '../steps/evidence/index.ts';
import type { Voice } from '../words/say.ts';

/** What one sheet states of a property, and whether it may be held against the others of the row. */
export interface EvidenceCell {
  readonly product: string;
  readonly claim?: Claim;
  readonly text: string;
  /** The method, or in two or three words why the value may not be compared. */
  readonly note: string;
  readonly comparable: boolean;
}

/** A property in the reader's words, with what its test was set to. */
export const evidenceName = ({ family, setting }: EvidenceRow, voice: Voice): string =>
  voice.word(`evidence-property-${family.id}`) + (setting === undefined ? '' : `, ${setting}`);

/** One row of sheets side by side, cell by cell in the order of the table's products. */
export function evidenceCells(row: EvidenceRow, table: EvidenceTable, voice: Voice): readonly EvidenceCell[] {
  const reference = referenceOf(row);
  const alone = !row.pairs.some(({ verdict }) => verdict === 'comparable');
  return table.products.map(({ id: product }) => {
    const claim = row.claims.find((one) => one.product === product);
    if (!claim) return { product, text: '—', note: voice.word('evidence-short-none'), comparable: false };
    const pair = reference === undefined || product === reference ? undefined : pairOf(row, reference, product);
    const comparable = !alone && (product === reference || pair?.verdict === 'comparable');
    const method = claim.method?.id ?? claim.typedMethod ?? '';
    const note = comparable || !pair ? method : shortReason(pair, claim, evidenceName(row, voice), table, voice);
    return { product, claim, text: valueText(claim, voice), note, comparable };
  });
}

const pairOf = ({ pairs }: EvidenceRow, a: string, b: string): EvidencePair | undefined =>
  pairs.find(({ first, second }) => (first === a && second === b) || (first === b && second === a));

/** The product the others of a row are held against: with most comparable neighbours, the first of equals. */
function referenceOf({ claims, pairs }: EvidenceRow): string | undefined {
  const neighbours = (id: string): number =>
    pairs.filter(({ verdict, first, second }) => verdict === 'comparable' && (first === id || second === id)).length;
  const [best] = claims.map(({ product }) => product).sort((a, b) => neighbours(b) - neighbours(a));
  return best;
}

function valueText({ low, high, property }: Claim, voice: Voice): string {
  if (low && high) return low.id === high.id ? voice.show(low.id) : `${voice.show(low.id)} to ${voice.show(high.id)}`;
  if (low) return `≥ ${voice.show(low.id)}`;
  return high ? `≤ ${voice.show(high.id)}` : property.value;
}

function shortReason(pair: EvidencePair, claim: Claim, property: string, table: EvidenceTable, voice: Voice): string {
  const own = pair.reasons.find(({ names }) => names?.product === undefined || names.product === claim.name);
  const reason = own ?? pair.reasons[0];
  if (!reason) return '';
  const names = reason.names ?? {};
  if (!own) return voice.say({ code: 'evidence-short-gap-elsewhere', names: { product: names.product ?? '' } });
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
  return voice.say({ code, names: { ...names, mine: mine ?? '', property } });
}
