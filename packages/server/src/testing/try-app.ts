import { readFileSync } from 'node:fs';
import type { Store } from '@slabwright/store';
import { openMemoryStore } from '@slabwright/store/memory';
import { createApp } from '../app.ts';
import type { WebFile } from '../web/web-files.ts';

/** The app over a store in memory, with a clock that stands still, called without a network. */
export interface TriedApp {
  readonly store: Store;
  readonly logged: readonly string[];
  call(method: string, path: string, body?: unknown, headers?: Readonly<Record<string, string>>): Promise<Response>;
}

export const NOW = '2026-05-12T18:00:00.000Z';

/** What a browser on the app's own page sends. */
export const OWN_PAGE = { 'sec-fetch-site': 'same-origin', 'content-type': 'application/json' } as const;

export async function tryApp(web: ReadonlyMap<string, WebFile> | null = null): Promise<TriedApp> {
  const store = await openMemoryStore();
  const logged: string[] = [];
  const app = createApp({ store, web, clock: () => NOW, log: (line) => logged.push(line) });
  return {
    store,
    logged,
    call: async (method, path, body, headers = OWN_PAGE) =>
      app.request(`http://localhost:4170${path}`, {
        method,
        headers,
        ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
      }),
  };
}

export const golden = (name: string, file: string): unknown =>
  JSON.parse(readFileSync(new URL(`../../../../jobs/${name}/${file}.json`, import.meta.url), 'utf8'));
