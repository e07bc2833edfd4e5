import { useSyncExternalStore } from 'react';
import type { Units } from '../worker/api.ts';

/** How this person reads on this device: units and ground. Without a choice the job's own units hold. */
export interface Preferences {
  readonly units?: Units;
  readonly theme: 'sun' | 'night';
}

const KEY = 'slabwright.preferences';
const PLAIN: Preferences = { theme: 'sun' };

function read(): Preferences {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Preferences>;
    return {
      theme: found.theme === 'night' ? 'night' : 'sun',
      ...(found.units === 'imperial' || found.units === 'metric' ? { units: found.units } : {}),
    };
  } catch (trouble) {
    // A blocked or damaged place for preferences costs a preference, never the job.
    console.warn(trouble);
    return PLAIN;
  }
}

let current: Preferences | null = null;
const listeners = new Set<() => void>();

const get = (): Preferences => {
  current ??= read();
  return current;
};

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function prefer(change: Partial<Preferences>): void {
  current = { ...get(), ...change };
  document.documentElement.dataset.theme = current.theme;
  try {
    localStorage.setItem(KEY, JSON.stringify(current));
  } catch (trouble) {
    console.warn(trouble);
  }
  for (const listener of listeners) listener();
}

export const usePreferences = (): Preferences => useSyncExternalStore(subscribe, get);
