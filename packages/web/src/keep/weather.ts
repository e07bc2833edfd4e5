import type { Json, Store } from '@slabwright/store';
import { useEffect, useState } from 'react';

/** Weather of a job as it is stored: a file of the published format, one document for each that was given. */

export const weatherTitle = (body: Json): string => {
  const source = body !== null && typeof body === 'object' && 'source' in body ? body.source : '';
  return typeof source === 'string' && source !== '' ? source : 'weather';
};

/** Keeps a weather file under an id of its own and gives that id. */
export async function keepWeather(store: Store, body: Json): Promise<string> {
  const id = `weather-${crypto.randomUUID().slice(0, 8)}`;
  const updatedAt = new Date().toISOString();
  await store.put({ kind: 'weather', id, title: weatherTitle(body), searchText: '', updatedAt, body }, 0);
  return id;
}

/** Weather read from the store: `undefined` while it is being read, null when the job has none. */
export type StoredWeather = Json | null | undefined;

export function useStoredWeather(store: Store, id: string | undefined): StoredWeather {
  const [found, setFound] = useState<{ readonly id: string; readonly body: Json | null } | null>(null);
  useEffect(() => {
    if (id === undefined) return;
    let left = false;
    const read = async (): Promise<void> => {
      const stored = await store.get('weather', id);
      if (!left) setFound({ id, body: stored && !stored.removed ? stored.body : null });
    };
    void read();
    return () => {
      left = true;
    };
  }, [store, id]);
  if (id === undefined) return null;
  return found?.id === id ? found.body : undefined;
}
