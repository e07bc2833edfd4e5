import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { acceptanceCases, indexedDbPlaces, runAcceptance, storeAcceptance } from '../acceptance/index.ts';

// The same suite runs in a real browser; this quick run over a copy of the interface finds most slips at once.
storeAcceptance('IndexedDB', indexedDbPlaces(), true, { describe, test });

describe('the suite without a test runner, as a page runs it', () => {
  test('tells of every rule, and of the one an adapter breaks', async () => {
    const places = indexedDbPlaces('broken');
    const results = await runAcceptance(async () => {
      const place = await places();
      return {
        ...place,
        async open(wrap) {
          const store = await place.open(wrap);
          // Forgets the revision asked for: rule H1 must notice.
          const get = store.get.bind(store);
          store.get = (kind, id) => get(kind, id);
          return store;
        },
      };
    }, true);
    expect(results.map(({ rule }) => rule)).toEqual(acceptanceCases.map(({ rule }) => rule));
    const broken = results.filter(({ failure }) => failure !== null).map(({ rule }) => rule);
    expect(broken).toContain('H1');
    expect(broken).not.toContain('E1');
  });
});
