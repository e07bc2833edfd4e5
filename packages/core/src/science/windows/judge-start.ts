import { Z90 } from '../../kernel/band.ts';
import type { VerdictWord } from '../../kernel/verdict.ts';
import type { Milestone } from '../cure/progress.ts';
import { MARK_MS } from '../heat/forcing.ts';
import { LEAST_RAIN } from '../weather/rain.ts';
import { type CoatToPlace, LEAST_P10, type Limits, SMALL_RISE, type WorkingHours } from './coat.ts';
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

export interface Candidate {
  /** ms since 1970 */
  readonly start: number;
  readonly word: VerdictWord;
  /** The one reason that limits most, absent for a go; the others follow it. */
  readonly limiting?: WindowReason;
  readonly others: readonly WindowReason[];
  /** Least margin over the whole sensitive time and its P10, K. */
  readonly margin: number;
  readonly marginP10: number;
  /** Largest rise of the breathing layer between laying and gel, K; 0 for a coat that does not mind. */
  readonly rise: number;
  /** End of laying and of the sensitive stage (its long bound), ms since 1970. */
  readonly laid: number;
  readonly sensitiveUntil: number;
}

export interface CoatClocks {
  readonly open: ((start: number) => Milestone | undefined) | undefined;
  readonly touch: ((start: number) => Milestone | undefined) | undefined;
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
];
const SEVERITY: Readonly<Record<VerdictWord, number>> = { stop: 0, 'not known': 1, caution: 2, go: 3 };

/** Rain this long before laying leaves a slab wet, ms. */
const WET_BEFORE = 24 * 3_600_000;

const markOf = (conditions: Conditions, instant: number): number =>
  Math.min(conditions.count - 1, Math.max(0, Math.round((instant - conditions.from) / MARK_MS)));

interface Extremes {
  readonly least: number;
  readonly most: number;
}
const extremes = (values: Float64Array, from: number, to: number): Extremes => {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let m = from; m <= to; m++) {
    const each = values[m] as number;
    if (each < least) least = each;
    if (each > most) most = each;
  }
  return { least, most };
};

/** Largest rise of the breathing layer that any part of the coat sees between its laying and its gel, K; never under 0. */
const largestRise = (conditions: Conditions, coat: CoatToPlace, start: number, clock: CoatClocks['open']): number => {
  const first = markOf(conditions, start);
  const last = markOf(conditions, start + coat.laying * 1000);
  let worst = 0;
  for (let m = first; m <= last; m++) {
    const laid = conditions.from + m * MARK_MS;
    const gel = clock?.(laid)?.at ?? laid + coat.sensitive * 1000;
    const here = conditions.breathing[m] as number;
    const { most } = extremes(conditions.breathing, m, markOf(conditions, gel));
    worst = Math.max(worst, most - here);
  }
  return worst;
};

const outsideLimits = (
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

/** Judges one start of one coat over its whole open and sensitive time. */
export const judgeStart = (
  conditions: Conditions,
  coat: CoatToPlace,
  clocks: CoatClocks,
  hours: readonly WorkingHours[],
  start: number,
): Candidate => {
  const laid = start + coat.laying * 1000;
  const reasons: WindowReason[] = [];
  const touch = clocks.touch?.(laid);
  const cureUnknown = clocks.touch !== undefined && touch?.high === undefined;
  const sensitiveUntil = touch?.high ?? laid + coat.sensitive * 1000;
  const openUntil = Math.min(sensitiveUntil, clocks.open?.(laid)?.high ?? sensitiveUntil);

  const end = conditions.from + (conditions.count - 1) * MARK_MS;
  const [first, last, gel] = [
    markOf(conditions, start),
    markOf(conditions, sensitiveUntil),
    markOf(conditions, openUntil),
  ];
  const unknownUntil = firstUnknown(conditions, conditions.known, first, last);
  if (sensitiveUntil > end || start < conditions.from || unknownUntil !== undefined) {
    const at = unknownUntil ?? end;
    reasons.push({
      verdict: 'not known',
      code: 'window-weather-unknown',
      value: (at - start) / 1000,
      bound: (sensitiveUntil - start) / 1000,
      lift: { code: 'lift-more-weather', by: Math.max(0, sensitiveUntil - at) / 1000 },
    });
  }
  if (cureUnknown) {
    reasons.push({
      verdict: 'not known',
      code: 'window-cure-unknown',
      value: extremes(conditions.surface, first, last).least,
      bound: coat.touch?.range[0] ?? 0,
      lift: {
        code: 'lift-warm-slab',
        by: Math.max(0, (coat.touch?.range[0] ?? 0) - extremes(conditions.surface, first, last).least),
      },
    });
  }

  // The margin: the least over the whole sensitive time.
  let margin = Number.POSITIVE_INFINITY;
  let marginP10 = Number.POSITIVE_INFINITY;
  for (let m = first; m <= last; m++) {
    const central = conditions.margin[m] as number;
    margin = Math.min(margin, central);
    marginP10 = Math.min(marginP10, central - Z90 * (conditions.marginDeviation[m] as number));
  }
  if (margin < coat.marginRule) {
    reasons.push({
      verdict: 'stop',
      code: 'window-dew-margin',
      value: margin,
      bound: coat.marginRule,
      lift: { code: 'lift-warm-slab-or-dry-air', by: coat.marginRule - margin },
    });
  } else if (marginP10 < LEAST_P10) {
    reasons.push({
      verdict: 'caution',
      code: 'window-dew-margin-uncertain',
      value: marginP10,
      bound: LEAST_P10,
      lift: { code: 'lift-read-slab-and-air', by: LEAST_P10 - marginP10 },
    });
  }

  const slab = extremes(conditions.surface, first, gel);
  const slabReasons = outsideLimits(slab, coat.slab, 'window-slab-cold', 'window-slab-hot', [
    'lift-warm-slab',
    'lift-cool-slab',
  ]);
  reasons.push(...slabReasons);
  if (slabReasons.length === 0) reasons.push(...nearLimit(conditions, coat.slab, first, gel));
  reasons.push(
    ...outsideLimits(extremes(conditions.air, first, gel), coat.air, 'window-air-cold', 'window-air-hot', [
      'lift-warm-air',
      'lift-cool-air',
    ]),
  );
  reasons.push(
    ...outsideLimits(
      extremes(conditions.humidity, first, gel),
      coat.humidity,
      'window-humidity-low',
      'window-humidity-high',
      ['lift-moisten-air', 'lift-dry-air'],
    ),
  );

  let rise = 0;
  if (coat.porous) {
    rise = largestRise(conditions, coat, start, clocks.open ?? clocks.touch);
    if (rise > SMALL_RISE) {
      reasons.push({
        verdict: coat.risingStops ? 'stop' : 'caution',
        code: 'window-rising',
        value: rise,
        bound: SMALL_RISE,
        lift: { code: 'lift-thin-primer-first', by: rise - SMALL_RISE },
      });
    } else if (rise > 1e-9) {
      reasons.push({
        verdict: 'caution',
        code: 'window-rising-little',
        value: rise,
        bound: 0,
        lift: { code: 'lift-start-later', by: rise },
      });
    }
  }

  if (coat.outdoors) reasons.push(...weatherReasons(conditions, coat, start, first, markOf(conditions, laid), last));
  if (coat.recoatOpens !== undefined && start < coat.recoatOpens) {
    const by = (coat.recoatOpens - start) / 1000;
    reasons.push({
      verdict: 'stop',
      code: 'window-recoat-not-open',
      value: -by,
      bound: 0,
      lift: { code: 'lift-start-later', by },
    });
  }
  if (coat.recoatCloses !== undefined && laid > coat.recoatCloses) {
    const by = (laid - coat.recoatCloses) / 1000;
    reasons.push({
      verdict: 'stop',
      code: 'window-recoat-closed',
      value: by,
      bound: 0,
      lift: { code: 'lift-abrade-again', by },
    });
  }
  if (start < coat.prepared) {
    const by = (coat.prepared - start) / 1000;
    reasons.push({
      verdict: 'stop',
      code: 'window-preparation',
      value: -by,
      bound: 0,
      lift: { code: 'lift-prepare-earlier', by },
    });
  }
  const beyondHours = outsideWork(hours, start, laid);
  if (beyondHours > 0) {
    reasons.push({
      verdict: 'stop',
      code: 'window-working-hours',
      value: beyondHours,
      bound: 0,
      lift: { code: 'lift-longer-hours', by: beyondHours },
    });
  }

  reasons.sort((a, b) => SEVERITY[a.verdict] - SEVERITY[b.verdict] || ORDER.indexOf(a.code) - ORDER.indexOf(b.code));
  const [limiting, ...others] = reasons;
  return {
    start,
    word: limiting?.verdict ?? 'go',
    ...(limiting === undefined ? {} : { limiting }),
    others,
    margin,
    marginP10,
    rise,
    laid,
    sensitiveUntil,
  };
};

/** First instant without weather between two marks. */
const firstUnknown = (conditions: Conditions, known: Uint8Array, first: number, last: number): number | undefined => {
  for (let m = first; m <= last; m++) if (known[m] === 0) return conditions.from + m * MARK_MS;
  return undefined;
};

/** Inside its limits on the whole, but not at P10 or P90. */
const nearLimit = (conditions: Conditions, [least, most]: Limits, first: number, last: number): WindowReason[] => {
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
const weatherReasons = (
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
  }
  return out;
};

/** Seconds of laying that fall outside the working stretch they fit best. */
const outsideWork = (hours: readonly WorkingHours[], start: number, laid: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const stretch of hours) {
    const early = Math.max(0, stretch.from - start);
    const late = Math.max(0, laid - stretch.to);
    least = Math.min(least, early + late);
  }
  return hours.length === 0 ? 0 : least / 1000;
};
