import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE, openDataFolder } from '@slabwright/server';
import { type Store, StoreError } from '@slabwright/store';
import { BadInput } from '../terminal.ts';

/** The folder that holds the data when none is named; `serve` uses the same. */
export const DEFAULT_DATA = './data';

export interface DataOptions {
  readonly data?: string;
  readonly json?: boolean;
}

/** Lets a verb work on a data folder and closes it, whatever comes of it. A store's refusal is told as bad input. */
export async function withData<T>(
  { data = DEFAULT_DATA }: DataOptions,
  folder: 'must be there' | 'is made',
  work: (store: Store) => Promise<T>,
): Promise<T> {
  if (folder === 'must be there' && !existsSync(join(data, DATABASE))) {
    throw new BadInput([`${data}: this folder holds no data. Name the one that \`serve\` was given with --data.`]);
  }
  try {
    const store = await openDataFolder(data);
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  } catch (trouble) {
    if (trouble instanceof StoreError) throw new BadInput([`${data}: ${trouble.message}`]);
    throw trouble;
  }
}
