import { Z90 } from '../../kernel/band.ts';
import type { CureLaw } from '../cure/law.ts';
import type { MilestoneClock } from '../cure/progress.ts';
import { MARK_MS } from '../heat/forcing.ts';
import { clockOn } from './clocks.ts';
import { type CoatToPlace, LEAST_P10, SMALL_RISE } from './coat.ts';
import type { Conditions } from './conditions.ts';
import {
  extremes,
  firstUnknown,
  inOrder,
  markOf,
  nearLimit,
  outsideLimits,
  type WindowReason,
  weatherReasons,
} from './reasons.ts';

/** A rise that no thermometer shows is none, K. */
const LEAST_RISE = 0.05;

/** What the hours alone say to one start, whatever the crew and the coat below do. */
export interface StartPhysics {
  /** The worst first. */
  readonly reasons: readonly WindowReason[];
  /** Least margin over the whole sensitive time and its P10, K. */
  readonly margin: number;
  readonly marginP10: number;
  /** Largest rise of the breathing layer between laying and gel, K; 0 for a coat that does not mind. */
  readonly rise: number;
  /** End of laying and of the sensitive stage (its long bound), ms since 1970. */
  readonly laid: number;
  readonly sensitiveUntil: number;
}

type Physics = (start: number) => StartPhysics;

/** Laws are told apart by number: two coats of one product share theirs. */
const numbers = new WeakMap<CureLaw, number>();
let nextNumber = 1;
function numberOf(law: CureLaw | undefined): number {
  if (law === undefined) return 0;
  const known = numbers.get(law);
  if (known !== undefined) return known;
  numbers.set(law, nextNumber);
  return nextNumber++;
}

/** Coats whose starts are kept for one site, and starts kept of one coat; a week has some seven hundred. */
const MOST_COATS = 24;
const MOST_STARTS = 20_000;
const made = new WeakMap<Conditions, Map<string, Physics>>();

/**
 * What the hours say to any start of a coat. Answers are kept as long as the conditions are: options with the same
 * coat ask the same, and a moved start changes none of them.
 */
export function physicsOn(conditions: Conditions, coat: CoatToPlace): Physics {
  let here = made.get(conditions);
  if (!here) {
    here = new Map();
    made.set(conditions, here);
  }
  const key = [
    numberOf(coat.open),
    numberOf(coat.touch),
    coat.laying,
    coat.sensitive,
    coat.marginRule,
    ...coat.slab,
    ...coat.air,
    ...coat.humidity,
    coat.porous,
    coat.risingStops,
    coat.outdoors,
    coat.windMost,
  ].join(' ');
  const known = here.get(key);
  if (known) return known;
  if (here.size >= MOST_COATS) here.clear();
  const fresh = remembered(physicsOf(conditions, coat));
  here.set(key, fresh);
  return fresh;
}

function remembered(physics: Physics): Physics {
  const kept = new Map<number, StartPhysics>();
  return (start) => {
    const known = kept.get(start);
    if (known) return known;
    if (kept.size >= MOST_STARTS) kept.clear();
    const found = physics(start);
    kept.set(start, found);
    return found;
  };
}

/** Rise of the breathing layer that a patch laid at each mark sees until its gel, K; each mark worked out once. */
function riseByMark(conditions: Conditions, sensitive: number, clock: MilestoneClock | undefined) {
  const { breathing, from } = conditions;
  const rises = new Float64Array(conditions.count).fill(Number.NaN);
  return (m: number): number => {
    const known = rises[m] as number;
    if (!Number.isNaN(known)) return known;
    const laid = from + m * MARK_MS;
    const gel = clock?.middle(laid) ?? laid + sensitive * 1000;
    const rise = extremes(breathing, m, markOf(conditions, gel)).most - (breathing[m] as number);
    rises[m] = rise;
    return rise;
  };
}

function physicsOf(conditions: Conditions, coat: CoatToPlace): Physics {
  const clocks = {
    open: coat.open && clockOn(conditions, coat.open),
    touch: coat.touch && clockOn(conditions, coat.touch),
  };
  const riseAt = coat.porous ? riseByMark(conditions, coat.sensitive, clocks.open ?? clocks.touch) : undefined;
  return (start) => startPhysics(conditions, coat, clocks, riseAt, start);
}

function startPhysics(
  conditions: Conditions,
  coat: CoatToPlace,
  clocks: { readonly open: MilestoneClock | undefined; readonly touch: MilestoneClock | undefined },
  riseAt: ((mark: number) => number) | undefined,
  start: number,
): StartPhysics {
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
    // The cold side of the band is what the sheet says nothing of, not the middle.
    let coldest = Number.POSITIVE_INFINITY;
    for (let m = first; m <= last; m++) {
      const cold = (conditions.surface[m] as number) - Z90 * (conditions.surfaceDeviation[m] as number);
      coldest = Math.min(coldest, cold);
    }
    const bound = coat.touch?.range[0] ?? 0;
    reasons.push({
      verdict: 'not known',
      code: 'window-cure-unknown',
      value: coldest,
      bound,
      lift: { code: 'lift-warm-slab', by: Math.max(0, bound - coldest) },
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
  if (riseAt) {
    // The largest that any part of the coat sees; never under 0.
    const lastLaid = markOf(conditions, laid);
    for (let m = first; m <= lastLaid; m++) rise = Math.max(rise, riseAt(m));
    if (rise > SMALL_RISE) {
      reasons.push({
        verdict: coat.risingStops ? 'stop' : 'caution',
        code: 'window-rising',
        value: rise,
        bound: SMALL_RISE,
        lift: { code: 'lift-thin-primer-first', by: rise - SMALL_RISE },
      });
    } else if (rise > LEAST_RISE) {
      reasons.push({
        verdict: coat.risingStops ? 'stop' : 'caution',
        code: 'window-rising-little',
        value: rise,
        bound: 0,
        lift: { code: 'lift-start-later', by: rise },
      });
    }
  }

  if (coat.outdoors) reasons.push(...weatherReasons(conditions, coat, start, first, markOf(conditions, laid), last));
  return { reasons: inOrder(reasons), margin, marginP10, rise, laid, sensitiveUntil };
}
