import type { Draft, Entry } from '../port.ts';

/** An instant `minutes` after a fixed one. */
export function instant(minutes: number): string {
  return new Date(Date.UTC(2026, 2, 2, 8, minutes)).toISOString();
}

/** An invented job. */
export function job(id: string, changes: Partial<Draft> = {}): Draft {
  return {
    kind: 'job',
    id,
    updatedAt: instant(0),
    title: `Garage ${id}`,
    searchText: 'Elm Street',
    body: { area: 41.5, rooms: ['garage'] },
    ...changes,
  };
}

/** An invented reading. */
export function reading(jobId: string, id: string, minutes: number, humidity = 0.72): Entry {
  return { jobId, id, at: instant(minutes), body: { what: 'humidity in the slab', humidity } };
}
