import { useSyncExternalStore } from 'react';
import type { Dot } from '../worker/api.ts';
import type { JudgedOrder } from './api.ts';

/** Pours somebody draws over the floor to have them judged. They are no part of the job: the plan stays the plan. */
export interface Drawing {
  /** Which coat they are drawn for: layer and rooms; null while nobody draws. */
  readonly coat: string | null;
  readonly pours: readonly (readonly Dot[])[];
  /** Outlines of the plan's own pours it began with, by their numbers; one that still stands as it was is the plan's. */
  readonly from?: readonly (readonly Dot[] | null)[];
  /** Corners of the pour in hand. */
  readonly open: readonly Dot[];
  readonly judged: JudgedOrder | null;
}

export const NOTHING_DRAWN: Drawing = { coat: null, pours: [], open: [], judged: null };

let drawing = NOTHING_DRAWN;
const listeners = new Set<() => void>();
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const useDrawing = (): Drawing => useSyncExternalStore(subscribe, () => drawing);

export function draw(change: (before: Drawing) => Drawing): void {
  drawing = change(drawing);
  for (const listener of listeners) listener();
}

/** A tap this near to the first corner closes the pour, m of floor for each pixel of a finger. */
export const CLOSES_PX = 18;

/** A corner more; near the first one it closes the pour. What was judged is no longer what stands there. */
export function withCorner(before: Drawing, at: Dot, nearM: number): Drawing {
  const { open } = before;
  const [first] = open;
  const closes = first !== undefined && open.length >= 3 && Math.hypot(at[0] - first[0], at[1] - first[1]) <= nearM;
  return closes ? closed(before) : { ...before, open: [...open, at], judged: null };
}

/** The pour in hand is done; fewer than three corners are no pour. */
export const closed = (before: Drawing): Drawing =>
  before.open.length < 3 ? before : { ...before, pours: [...before.pours, before.open], open: [], judged: null };

/** One step back: the last corner, else the last pour is in hand again without its last corner. */
export function undone(before: Drawing): Drawing {
  if (before.open.length > 0) return { ...before, open: before.open.slice(0, -1), judged: null };
  const last = before.pours.at(-1);
  return last ? { ...before, pours: before.pours.slice(0, -1), open: last.slice(0, -1), judged: null } : before;
}

export function without(before: Drawing, index: number): Drawing {
  return { ...before, pours: before.pours.filter((_, i) => i !== index), judged: null };
}

export function swapped(before: Drawing, index: number, by: -1 | 1): Drawing {
  const pours = [...before.pours];
  const [one] = pours.splice(index, 1);
  if (one) pours.splice(index + by, 0, one);
  return { ...before, pours, judged: null };
}

/** A corner typed in its place. */
export function retyped(before: Drawing, pour: number, corner: number, to: Dot): Drawing {
  const pours = before.pours.map((ring, i) => (i === pour ? ring.with(corner, to) : ring));
  return { ...before, pours, judged: null };
}

/** Number in the plan of a drawn pour, from 1, while nobody moved a corner of it. */
export function plannedNumber({ from }: Drawing, ring: readonly Dot[]): number | undefined {
  const at = from?.indexOf(ring) ?? -1;
  return at < 0 ? undefined : at + 1;
}

/** Things that are known by their place alone, each with it. */
export const numbered = <T>(
  all: readonly T[],
): readonly { readonly key: string; readonly one: T; readonly at: number }[] =>
  all.map((one, at) => ({ key: `${at}`, one, at }));
