import { describe, test } from 'vitest';
import { type Place, storeAcceptance } from '../acceptance/index.ts';
import { memoryDisk, openMemoryStore } from './index.ts';

async function makePlace(): Promise<Place> {
  const disk = memoryDisk();
  return {
    open: (wrap) => openMemoryStore({ disk, ...(wrap === undefined ? {} : { wrap }) }),
    erase: async () => undefined,
  };
}

storeAcceptance('memory', makePlace, true, { describe, test });
