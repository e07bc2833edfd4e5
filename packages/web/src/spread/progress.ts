import { useSyncExternalStore } from 'react';
import type { SpreadTold } from './api.ts';

/** How far the search for pours is that runs now; only what shows it is drawn again when it goes on. */

let told: SpreadTold | null = null;
const listeners = new Set<() => void>();
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export function tellProgress(next: SpreadTold | null): void {
  told = next;
  for (const listener of listeners) listener();
}

export const useProgress = (): SpreadTold | null => useSyncExternalStore(subscribe, () => told);
