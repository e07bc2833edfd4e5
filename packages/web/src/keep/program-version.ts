import { registerSW } from 'virtual:pwa-register';
import { useSyncExternalStore } from 'react';

/** Whether the program itself is kept for work without a network, and whether a newer one waits. */
export interface ProgramVersion {
  readonly offline: boolean;
  readonly newer: boolean;
}

let current: ProgramVersion = { offline: navigator.serviceWorker?.controller != null, newer: false };
let use: ((reload?: boolean) => Promise<void>) | null = null;
const listeners = new Set<() => void>();

function become(change: Partial<ProgramVersion>): void {
  current = { ...current, ...change };
  for (const listener of listeners) listener();
}

/** Called once at the start. A newer version waits until the person says so: it never reloads a half-typed field. */
export function watchVersion(): void {
  use = registerSW({
    onNeedRefresh: () => become({ newer: true }),
    onOfflineReady: () => become({ offline: true }),
  });
}

/** Takes the newer version and reloads; what was typed is kept before anything closes. */
export const takeNewer = (): Promise<void> => use?.(true) ?? Promise.resolve();

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export const useProgramVersion = (): ProgramVersion => useSyncExternalStore(subscribe, () => current);
