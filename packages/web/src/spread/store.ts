import { useSyncExternalStore } from 'react';

/** What the spread screen looks at: which coat, and which moment of its day. It is no part of the job. */
export interface Look {
  /** Layer, and the day where there are several: `coatMark`. */
  readonly layer: string | null;
  /** Milliseconds since 1970; null shows the whole plan. */
  readonly at: number | null;
}

let look: Look = { layer: null, at: null };
const listeners = new Set<() => void>();

const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function lookAt(change: Partial<Look>): void {
  look = { ...look, ...change };
  for (const listener of listeners) listener();
}

export const useLook = (): Look => useSyncExternalStore(subscribe, () => look);
/** The coat alone: the labels beside the floor follow it, not every minute that is played. */
export const useLookedCoat = (): string | null => useSyncExternalStore(subscribe, () => look.layer);
export const lookedCoat = (): string | null => look.layer;

/** The moment looked at, where it lies in the day of this coat; else the whole plan is shown. */
export function useMoment(pours: readonly { readonly mixFrom: string; readonly end: string }[]): number | null {
  const { at } = useLook();
  const [first] = pours;
  const last = pours.at(-1);
  if (at === null || !first || !last) return null;
  return at >= Date.parse(first.mixFrom) && at <= Date.parse(last.end) ? at : null;
}
