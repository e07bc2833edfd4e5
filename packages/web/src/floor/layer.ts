import type { ReactNode } from 'react';
import type { AreaDrawing, Dot } from '../worker/api.ts';
import type { FloorFrame } from './geometry.ts';

/** A note in the column beside the floor, with a leader to what it speaks of. */
export interface FloorLabel {
  readonly key: string;
  readonly at: Dot;
  readonly text: string;
  readonly note?: string;
  readonly warm?: boolean;
}

/** What a step draws on the floor, and what it says beside it. At most five labels stand beside a floor. */
export interface FloorLayer {
  readonly title: string;
  readonly note?: string;
  /** Drawn instead of the area looked at: rooms that are worked as one floor. */
  readonly area?: AreaDrawing;
  readonly labels?: readonly FloorLabel[];
  /** Drawn over the slab, under joints and cracks. */
  readonly under?: (frame: FloorFrame) => ReactNode;
  /** Drawn over everything but the labels. */
  readonly over?: (frame: FloorFrame) => ReactNode;
  /** Left out where the drawing of another matter needs the room. */
  readonly bare?: boolean;
}
