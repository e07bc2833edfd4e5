import { Z90 } from '../../kernel/band.ts';
import type { VerdictWord } from '../../kernel/verdict.ts';
import type { Milestone } from '../cure/progress.ts';
import { MARK_MS } from '../heat/forcing.ts';
import { type CoatToPlace, LEAST_P10, SMALL_RISE, type WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';
import {
  extremes,
  firstUnknown,
  inOrder,
  markOf,
  nearLimit,
  organisationReasons,
  outsideLimits,
  type WindowReason,
  weatherReasons,
} from './reasons.ts';

/** A rise that no thermometer shows is none, K. */
const LEAST_RISE = 0.05;

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
    } else if (rise > LEAST_RISE) {
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
  reasons.push(...organisationReasons(coat, hours, start, laid));

  const [limiting, ...others] = inOrder(reasons);
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
