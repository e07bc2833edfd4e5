import { type DBSchema, openDB } from 'idb';
import type { Dot } from '../worker/api.ts';

/** Pictures to trace over. They have a database of their own: what is in it never leaves this browser. */

export interface KeptPhoto {
  readonly picture: Blob;
  readonly name: string;
  /** Marks on the picture, in its own pixels from the upper left. */
  readonly marks: readonly Dot[];
  /** What was typed for them: one length, or along and away for each of four. */
  readonly typed: readonly string[];
  readonly way: 'length' | 'four';
}

interface Pictures extends DBSchema {
  pictures: { key: string; value: KeptPhoto };
}

const NAME = 'slabwright-pictures';
/** Where the browser gives no database, the picture lives as long as the page. */
const session = new Map<string, KeptPhoto>();

const open = () =>
  openDB<Pictures>(NAME, 1, {
    upgrade(database) {
      database.createObjectStore('pictures');
    },
  });

export async function keptPhoto(key: string): Promise<KeptPhoto | null> {
  try {
    const database = await open();
    const found = await database.get('pictures', key);
    database.close();
    return found ?? session.get(key) ?? null;
  } catch (trouble) {
    console.warn(trouble);
    return session.get(key) ?? null;
  }
}

/** Keeps a picture, or forgets it. True when it is kept past this visit. */
export async function keepPhoto(key: string, photo: KeptPhoto | null): Promise<boolean> {
  if (photo) session.set(key, photo);
  else session.delete(key);
  try {
    const database = await open();
    if (photo) await database.put('pictures', photo, key);
    else await database.delete('pictures', key);
    database.close();
    return true;
  } catch (trouble) {
    console.warn(trouble);
    return false;
  }
}
