import type { Figure } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { evidenceDifference } from '../formulas/evidence.ts';
import type { Claim } from './claim.ts';
import { plain } from './methods.ts';

/** How the second claim stands to the first, where the two may be compared. */
export type Outcome = 'higher' | 'lower' | 'equal' | 'overlapping' | 'same words' | 'other words';

export interface Compared {
  readonly outcome: Outcome;
  /** Between the nearest ends of the two; none where they touch or are no numbers. */
  readonly difference?: Figure;
  readonly says: Said;
}

/** Above rounding of floating numbers, far below any digit a sheet prints. */
const SLACK = 1e-9;

function outcomeOf(a: Claim, b: Claim): Outcome {
  const [x, y] = [a.value, b.value];
  if (x.kind === 'rank' && y.kind === 'rank') return x.rank === y.rank ? 'equal' : y.rank > x.rank ? 'higher' : 'lower';
  if (x.kind !== 'number' || y.kind !== 'number')
    return plain(a.property.value) === plain(b.property.value) ? 'same words' : 'other words';
  const single = x.low !== undefined && x.low === x.high && y.low !== undefined && y.low === y.high;
  if (single && x.low !== undefined && y.low !== undefined) {
    const apart = y.low - x.low;
    const written = (x.step + y.step) / 2;
    if (Math.abs(apart) <= written + SLACK * Math.max(Math.abs(x.low), Math.abs(y.low))) return 'equal';
    return apart > 0 ? 'higher' : 'lower';
  }
  if (x.high !== undefined && y.low !== undefined && y.low > x.high) return 'higher';
  if (x.low !== undefined && y.high !== undefined && y.high < x.low) return 'lower';
  return 'overlapping';
}

const CODES: Readonly<Record<Outcome, string>> = {
  higher: 'evidence-outcome-higher',
  lower: 'evidence-outcome-lower',
  equal: 'evidence-outcome-equal',
  overlapping: 'evidence-outcome-overlapping',
  'same words': 'evidence-outcome-same-words',
  'other words': 'evidence-outcome-other-words',
};

/** The outcome of two claims that `judge` let through, with the difference as a Figure. */
export function compared(a: Claim, b: Claim, trace: Trace): Compared {
  const outcome = outcomeOf(a, b);
  const names = { first: a.name, second: b.name, better: `@evidence-better-${a.family.better}` };
  const [lower, higher] = outcome === 'higher' ? [a.high, b.low] : [b.high, a.low];
  if ((outcome !== 'higher' && outcome !== 'lower') || !lower || !higher) {
    const ranked = a.value.kind === 'rank' && (outcome === 'higher' || outcome === 'lower');
    return { outcome, says: { code: ranked ? `${CODES[outcome]}-rank` : CODES[outcome], names } };
  }
  const f = evidenceDifference(a.family.shows);
  const difference = trace.figure('difference', f, { lowerClaim: lower, higherClaim: higher });
  return { outcome, difference, says: { code: CODES[outcome], figures: { difference: difference.id }, names } };
}
