import type { AnyFormula } from '../../kernel/formula.ts';
import { roomBelowLimit } from './system-room.ts';
import { thinnedVolume, volatileOfThinned } from './system-voc.ts';

/** Small sums of the system step. */
export const systemFormulas: readonly AnyFormula[] = [roomBelowLimit, thinnedVolume, volatileOfThinned];
