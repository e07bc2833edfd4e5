import type { ReactNode } from 'react';
import type { AxisTick } from '../worker/api.ts';
import type { DayData } from './day-data.ts';
import type { DayScale } from './scale.ts';

/** Where a row of the ribbon draws. */
export interface DayFrame {
  readonly scale: DayScale;
  /** Scale behind the break mark, where something comes later. */
  readonly tail: DayScale | null;
  readonly data: DayData;
  readonly axis: readonly AxisTick[];
  /** Row names end here. */
  readonly gutter: number;
  readonly width: number;
  readonly small: boolean;
  /** Many coats and hands: their rows are lower, so that hours and floor stay in sight. */
  readonly dense: boolean;
}

/** One row of the ribbon. `height` may grow with what is in it; nothing to show means the row is left out. */
export interface DayRow {
  readonly key: string;
  height(frame: DayFrame): number;
  /** Grows into the room that is left. */
  readonly grows?: boolean;
  draw(frame: DayFrame, top: number, height: number): ReactNode;
}
