import { Z90 } from '../../kernel/band.ts';
import { severity, type VerdictWord } from '../../kernel/verdict.ts';
import { MARK_MS } from '../heat/forcing.ts';
import { LEAST_RAIN } from '../weather/rain.ts';
import { type CoatToPlace, type Limits, STRONG_WIND, type WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';

/**
 * Why an hour is not a plain go, with the number that decides and the smallest change that would lift it.
 *
 * In SI: K, 0-1, m/s, m, or s, as the code says. Codes, not sentences: words live in the message files.
 */
export interface WindowReason {
  readonly verdict: Exclude<VerdictWord, 'go'>;
  readonly code: string;
  /** What it is, and the bound it misses. */
  readonly value: number;
  readonly bound: number;
  /** The smallest change that would open the hour by itself. */
  readonly lift: { readonly code: string; readonly by: number };
}

/** Physical reasons before organisational ones, so that the limiting reason is never "not in working hours" by night. */
const ORDER: readonly string[] = [
  'window-weather-unknown',
  'window-cure-unknown',
  'window-rain-unknown',
  'window-rain',
  'window-slab-cold',
  'window-slab-hot',
  'window-air-cold',
  'window-air-hot',
  'window-humidity-high',
  'window-humidity-low',
  'window-dew-margin',
  'window-rising',
  'window-wind',
  'window-recoat-not-open',
  'window-recoat-closed',
  'window-preparation',
  'window-working-hours',
  'window-dew-margin-uncertain',
  'window-slab-near-limit',
  'window-rising-little',
  'window-rain-before',
  'window-wind-strong',
];

/** The worst first, and among equals the one that lies deepest. */
export const inOrder = (reasons: WindowReason[]): WindowReason[] =>
  reasons.length < 2 ? reasons : reasons.sort((a, b) => rankOf(a) - rankOf(b));

/** Place of each code, looked up some thousand times for one plan; a code that is not listed comes first. */
const PLACES: ReadonlyMap<string, number> = new Map(ORDER.map((code, i) => [code, i]));
const rankOf = ({ verdict, code }: WindowReason): number => severity(verdict) * 100 + (PLACES.get(code) ?? -1);

/** The first in order of some reasons in order and some others. */
export function worstOf(ordered: readonly WindowReason[], others: readonly WindowReason[]): WindowReason | undefined {
  let [found] = ordered;
  for (const other of others) if (!found || rankOf(other) < rankOf(found)) found = other;
  return found;
}

/** Rain this long before laying leaves a slab wet, ms. */
const WET_BEFORE = 24 * 3_600_000;

export const markOf = (conditions: Conditions, instant: number): number =>
  Math.min(conditions.count - 1, Math.max(0, Math.round((instant - conditions.from) / MARK_MS)));

export interface Extremes {
  readonly least: number;
  readonly most: number;
}
export const extremes = (values: Float64Array, from: number, to: number): Extremes => {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let m = from; m <= to; m++) {
    const each = values[m] as number;
    if (each < least) least = each;
    if (each > most) most = each;
  }
  return { least, most };
};

export const outsideLimits = (
  found: Extremes,
  [least, most]: Limits,
  cold: string,
  hot: string,
  lifts: readonly [string, string],
): WindowReason[] => {
  const out: WindowReason[] = [];
  if (least !== undefined && found.least < least) {
    out.push({
      verdict: 'stop',
      code: cold,
      value: found.least,
      bound: least,
      lift: { code: lifts[0], by: least - found.least },
    });
  }
  if (most !== undefined && found.most > most) {
    out.push({
      verdict: 'stop',
      code: hot,
      value: found.most,
      bound: most,
      lift: { code: lifts[1], by: found.most - most },
    });
  }
  return out;
};

/** First instant without weather between two marks. */
export const firstUnknown = (
  conditions: Conditions,
  known: Uint8Array,
  first: number,
  last: number,
): number | undefined => {
  for (let m = first; m <= last; m++) if (known[m] === 0) return conditions.from + m * MARK_MS;
  return undefined;
};

/** Inside its limits on the whole, but not at P10 or P90. */
export const nearLimit = (
  conditions: Conditions,
  [least, most]: Limits,
  first: number,
  last: number,
): WindowReason[] => {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let m = first; m <= last; m++) {
    const spread = Z90 * (conditions.surfaceDeviation[m] as number);
    low = Math.min(low, (conditions.surface[m] as number) - spread);
    high = Math.max(high, (conditions.surface[m] as number) + spread);
  }
  if (least !== undefined && low < least) {
    return [
      {
        verdict: 'caution',
        code: 'window-slab-near-limit',
        value: low,
        bound: least,
        lift: { code: 'lift-read-slab-and-air', by: least - low },
      },
    ];
  }
  if (most !== undefined && high > most) {
    return [
      {
        verdict: 'caution',
        code: 'window-slab-near-limit',
        value: high,
        bound: most,
        lift: { code: 'lift-read-slab-and-air', by: high - most },
      },
    ];
  }
  return [];
};

/** Rain before and during the sensitive time, wind while laying. */
export const weatherReasons = (
  conditions: Conditions,
  coat: CoatToPlace,
  start: number,
  first: number,
  laid: number,
  last: number,
): WindowReason[] => {
  const out: WindowReason[] = [];
  const unknown = firstUnknown(conditions, conditions.rainKnown, first, last);
  if (unknown !== undefined) {
    const by = (conditions.from + last * MARK_MS - unknown) / 1000;
    out.push({
      verdict: 'not known',
      code: 'window-rain-unknown',
      value: (unknown - start) / 1000,
      bound: ((last - first) * MARK_MS) / 1000,
      lift: { code: 'lift-more-weather', by },
    });
  }
  for (let m = first; m <= last; m++) {
    if ((conditions.rain[m] as number) <= LEAST_RAIN) continue;
    const until = (conditions.from + m * MARK_MS - start) / 1000;
    out.push({
      verdict: 'stop',
      code: 'window-rain',
      value: until,
      bound: ((last - first) * MARK_MS) / 1000,
      lift: { code: 'lift-cover-floor', by: conditions.rain[m] as number },
    });
    break;
  }
  const before = markOf(conditions, start - WET_BEFORE);
  const wet = extremes(conditions.rain, before, first).most;
  if (wet > LEAST_RAIN)
    out.push({
      verdict: 'caution',
      code: 'window-rain-before',
      value: wet,
      bound: LEAST_RAIN,
      lift: { code: 'lift-dry-and-read-moisture', by: wet },
    });
  const wind = extremes(conditions.wind, first, laid).most;
  if (coat.windMost !== undefined && wind > coat.windMost) {
    out.push({
      verdict: 'stop',
      code: 'window-wind',
      value: wind,
      bound: coat.windMost,
      lift: { code: 'lift-wind-screen', by: wind - coat.windMost },
    });
  } else if (coat.windMost === undefined && wind > STRONG_WIND) {
    out.push({
      verdict: 'caution',
      code: 'window-wind-strong',
      value: wind,
      bound: STRONG_WIND,
      lift: { code: 'lift-wind-screen', by: wind - STRONG_WIND },
    });
  }
  return out;
};

/** What the job itself asks of the start: the coat below, the preparation, the working day. */
export const organisationReasons = (
  coat: CoatToPlace,
  hours: readonly WorkingHours[],
  start: number,
  laid: number,
): readonly WindowReason[] => {
  let out: WindowReason[] | undefined;
  const stop = (code: string, value: number, lift: string, by: number): void => {
    out ??= [];
    out.push({ verdict: 'stop', code, value, bound: 0, lift: { code: lift, by } });
  };
  const early = ((coat.recoatOpens ?? start) - start) / 1000;
  if (early > 0) stop('window-recoat-not-open', -early, 'lift-start-later', early);
  const late = (laid - (coat.recoatCloses ?? laid)) / 1000;
  if (late > 0) stop('window-recoat-closed', late, 'lift-abrade-again', late);
  const unprepared = (coat.prepared - start) / 1000;
  if (unprepared > 0) stop('window-preparation', -unprepared, 'lift-prepare-earlier', unprepared);
  const beyond = outsideWork(hours, start, laid);
  if (beyond > 0) stop('window-working-hours', beyond, 'lift-longer-hours', beyond);
  return out ?? NONE;
};

/** Most starts have none: nothing is made for them. */
const NONE: readonly WindowReason[] = [];

/** Seconds of laying that fall outside the working stretch they fit best. */
const outsideWork = (hours: readonly WorkingHours[], start: number, laid: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const stretch of hours) {
    // Stretches are in order: a later one lies no nearer.
    if (stretch.from - start > least) break;
    const early = Math.max(0, stretch.from - start);
    const late = Math.max(0, laid - stretch.to);
    least = Math.min(least, early + late);
  }
  return hours.length === 0 ? 0 : least / 1000;
};
