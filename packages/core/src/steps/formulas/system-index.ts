import type { AnyFormula } from '../../kernel/formula.ts';
import { roomBelowHumidity, roomBelowLimit } from './system-room.ts';
import { thinnedVolume, volatileOfThinned } from './system-voc.ts';

/** Small sums of the system step. */
export const systemFormulas: readonly AnyFormula[] = [
  roomBelowLimit,
  roomBelowHumidity,
  thinnedVolume,
  volatileOfThinned,
];
