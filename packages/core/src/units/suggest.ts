import type { Unit } from '../kernel/unit.ts';
import { UNITS } from '../kernel/unit.ts';
import { SPELLINGS } from './trade-spellings.ts';
import { type TradeUnit, unitsOf } from './trade-unit.ts';

/**
 * Fewest single-letter slips between two words: a letter added, dropped, replaced, or two neighbours swapped
 * (optimal string alignment).
 */
export const slipsBetween = (a: string, b: string): number => {
  const [from, to] = [[...a], [...b]];
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const next = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const same = from[row - 1] === to[column - 1] ? 0 : 1;
      let fewest = Math.min((last[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + same);
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) fewest = Math.min(fewest, (before[column - 2] ?? 0) + 1);
      next.push(fewest);
    }
    [before, last] = [last, next];
  }
  return last[to.length] ?? 0;
};

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[\s^.]/g, '');

const slipsTo = (typed: string, { name }: TradeUnit): number =>
  Math.min(...[name, ...(SPELLINGS[name] ?? [])].map((spelling) => slipsBetween(plain(typed), plain(spelling))));

const near = (typed: string, units: readonly TradeUnit[]): readonly string[] => {
  // Half of a short word may be wrong, three letters of a long one; more is another word.
  const most = Math.min(3, Math.max(1, Math.floor(plain(typed).length / 2)));
  return units
    .map((unit, order) => ({ name: unit.name, slips: slipsTo(typed, unit), order }))
    .filter(({ slips }) => slips <= most)
    .sort((a, b) => a.slips - b.slips || a.order - b.order)
    .map(({ name }) => name);
};

const HOW_MANY = 3;

const ALL_UNITS = UNITS.flatMap((unit) => unitsOf(unit));

/** The usual units of a dimension, imperial and metric in turn. */
export const usualUnits = (expected: Unit): readonly string[] => {
  const units = unitsOf(expected).filter(({ name }) => name !== '1');
  const imperial = units.filter(({ system }) => system !== 'metric').map(({ name }) => name);
  const metric = units.filter(({ system }) => system === 'metric').map(({ name }) => name);
  return imperial
    .flatMap((name, place) => [name, ...metric.slice(place, place + 1)])
    .concat(metric.slice(imperial.length));
};

/** Spellings near a mistyped unit: of the expected dimension; where none is near, its usual units. */
export const suggestUnits = (typed: string, expected?: Unit): readonly string[] => {
  if (expected === undefined) return near(typed, ALL_UNITS).slice(0, HOW_MANY);
  const own = near(typed, unitsOf(expected));
  return (own.length > 0 ? own : usualUnits(expected)).slice(0, HOW_MANY);
};

/**
 * Units to use in place of a known one of another dimension: near spellings first (lbf for lb), then the usual ones,
 * because a near spelling may be chance (km for kg).
 */
export const replaceUnit = (typed: string, expected: Unit): readonly string[] =>
  [...new Set([...near(typed, unitsOf(expected)), ...usualUnits(expected)])].slice(0, HOW_MANY);
