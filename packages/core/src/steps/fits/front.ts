import { round9 } from '../../kernel/canonical.ts';

/** What systems are compared by. All but the margin are better when less; nothing is added up into one number. */
export interface Compared {
  readonly id: string;
  /** A system that rests on an unknown never beats one that does not. */
  readonly known: boolean;
  readonly price?: number;
  readonly hours?: number;
  readonly untilUse?: number;
  readonly margin?: number;
}

const LESS = ['price', 'hours', 'untilUse'] as const;

/** The criteria as numbers to be made small, at nine digits so that every engine decides alike. */
const costs = (one: Compared): readonly (number | undefined)[] => [
  ...LESS.map((key) => (one[key] === undefined ? undefined : round9(one[key]))),
  one.margin === undefined ? undefined : round9(-one.margin),
];

/** At least as good in everything and better in something; a criterion only one of them has decides for neither. */
function beats(a: readonly (number | undefined)[], b: readonly (number | undefined)[]): boolean {
  let better = false;
  for (const [i, x] of a.entries()) {
    const y = b[i];
    if (x === undefined && y === undefined) continue;
    if (x === undefined || y === undefined || x > y) return false;
    better ||= x < y;
  }
  return better;
}

/** Of each system that is beaten, one that beats it; the systems without an entry are the front. */
export function beatenBy(systems: readonly Compared[]): ReadonlyMap<string, string> {
  const rows = systems.map((one) => ({ one, at: costs(one) }));
  const front = rows.filter(
    ({ one, at }) => !rows.some((other) => (other.one.known || !one.known) && beats(other.at, at)),
  );
  const beaten = new Map<string, string>();
  for (const { one, at } of rows) {
    // What beats is itself beaten at most by something on the front, so looking there is enough.
    const by = front.find((other) => (other.one.known || !one.known) && beats(other.at, at));
    if (by) beaten.set(one.id, by.one.id);
  }
  return beaten;
}
