import type { Voice } from '@slabwright/core';
import type { Scale } from './look.ts';
import type { Measure } from './text.ts';
import type { SheetWords } from './words.ts';

/** What every part of a sheet needs to set itself. */
export interface Setting {
  readonly voice: Voice;
  readonly words: SheetWords;
  readonly scale: Scale;
  readonly measure: Measure;
}
