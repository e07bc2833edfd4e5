import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, test } from 'vitest';
import { type Place, storeAcceptance } from '../acceptance/index.ts';
import { openSqliteStore } from './index.ts';

async function makePlace(): Promise<Place> {
  const folder = await mkdtemp(join(tmpdir(), 'slabwright-store-'));
  return {
    open: (wrap) => openSqliteStore({ path: join(folder, 'store.db'), ...(wrap === undefined ? {} : { wrap }) }),
    erase: () => rm(folder, { recursive: true }),
  };
}

storeAcceptance('SQLite', makePlace, false, { describe, test });
