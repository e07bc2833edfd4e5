import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { KeptAs, KeptPlan } from '../worker/api.ts';

/**
 * Plans as they were last shown, so that an opened job stands there before the worker has started. They can all be
 * made again: they are in no backup, and what cannot be kept or read is only said to the console.
 */
interface Shelf extends DBSchema {
  plans: { key: string; value: Row; indexes: { at: number } };
}

/** As text it is read in a third of the time its thousand small parts would take. */
interface Row extends KeptAs {
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly text: string;
}

const NAME = 'slabwright-shown';
/** Jobs a person is likely to open next. */
const MOST = 12;

let opened: Promise<IDBPDatabase<Shelf>> | null = null;

const shelf = (): Promise<IDBPDatabase<Shelf>> => {
  opened ??= openDB<Shelf>(NAME, 1, {
    upgrade: (database) => {
      database.createObjectStore('plans', { keyPath: 'id' }).createIndex('at', 'at');
    },
    blocking: (_now, _next, event) => (event.target as IDBDatabase).close(),
  });
  return opened;
};

/** Null where there is none, or where another version of the program made it. */
export async function keptPlan(id: string, version: string): Promise<KeptPlan | null> {
  try {
    const found = await (await shelf()).get('plans', id);
    return found?.version === version ? (JSON.parse(found.text) as KeptPlan) : null;
  } catch (trouble) {
    console.warn(trouble);
    return null;
  }
}

export async function keepPlan(plan: KeptPlan, at: number): Promise<void> {
  try {
    const change = (await shelf()).transaction('plans', 'readwrite', { durability: 'relaxed' });
    const { id, version, key } = plan;
    await change.store.put({ id, version, key, at, text: JSON.stringify(plan) });
    const ids = await change.store.index('at').getAllKeys();
    await Promise.all(ids.slice(0, Math.max(ids.length - MOST, 0)).map((id) => change.store.delete(id)));
    await change.done;
  } catch (trouble) {
    console.warn(trouble);
  }
}

/** A job that is removed leaves no plan behind. */
export async function forgetPlan(id: string): Promise<void> {
  try {
    await (await shelf()).delete('plans', id);
  } catch (trouble) {
    console.warn(trouble);
  }
}
