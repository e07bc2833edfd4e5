import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Store, StoreFailed } from '@slabwright/store';
import { openSqliteStore } from '@slabwright/store/sqlite';

/** The database inside a data folder. */
export const DATABASE = 'slabwright.db';

/**
 * Opens the store in a data folder, which is made when it is not there and then belongs to its owner alone.
 *
 * @throws a StoreError naming what is in the way.
 */
export async function openDataFolder(folder: string): Promise<Store> {
  const path = resolve(folder);
  try {
    mkdirSync(path, { recursive: true, mode: 0o700 });
  } catch (cause) {
    throw new StoreFailed(cause);
  }
  return openSqliteStore({ path: join(path, DATABASE) });
}
