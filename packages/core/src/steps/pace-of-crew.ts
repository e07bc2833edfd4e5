import { Z90 } from '../kernel/band.ts';
import type { Band, Causes } from '../kernel/entry.ts';

/**
 * Share of the variance of a rate that belongs to the crew rather than to the task: one crew that is slow at grinding
 * is slow at edges too, so errors of tasks do not cancel. An assumption; a correlation of nought would be a bolder one.
 */
export const CREW_SHARE = 0.5;

/** Causes of a rate: its own and the pace of the crew. A quicker crew has higher rates and shorter times. */
export function causesOfRate(work: string, counts: 'area' | 'length' | 'whole', [low, high]: Band): Causes {
  const deviation = (high - low) / (2 * Z90);
  const sign = counts === 'whole' ? -1 : 1;
  return {
    'pace of the crew': sign * deviation * Math.sqrt(CREW_SHARE),
    [`rate of ${work}`]: deviation * Math.sqrt(1 - CREW_SHARE),
  };
}
