import 'fake-indexeddb/auto';
import { describe, test } from 'vitest';
import { type Place, storeAcceptance } from '../acceptance/index.ts';
import { eraseIndexedDbStore, openIndexedDbStore } from './index.ts';

let count = 0;

async function makePlace(): Promise<Place> {
  const name = `acceptance-${++count}`;
  return {
    open: (wrap) => openIndexedDbStore({ name, ...(wrap === undefined ? {} : { wrap }) }),
    erase: () => eraseIndexedDbStore(name),
  };
}

// The same suite runs in a real browser; this quick run over a copy of the interface finds most slips at once.
storeAcceptance('IndexedDB', makePlace, true, { describe, test });
