import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqliteStore } from './sqlite/index.ts';

/** `npm run measure -w packages/store`: prints the times of the embedded database with 10,000 jobs of about 2 kB. */
const jobs = 10_000;
const streets = ['Elm Street', 'Calle Peñón', 'Mill Lane', 'Harbour Road', 'Camino Real'];
const folder = await mkdtemp(join(tmpdir(), 'slabwright-measure-'));
const path = join(folder, 'store.db');

async function timed(what: string, action: () => Promise<unknown>, repeats = 1): Promise<void> {
  const times: number[] = [];
  for (let repeat = 0; repeat < repeats; repeat++) {
    const start = performance.now();
    await action();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const middle = times[Math.floor(times.length / 2)] ?? 0;
  console.log(`${what.padEnd(60)} ${middle.toFixed(1).padStart(8)} ms, longest ${(times.at(-1) ?? 0).toFixed(1)} ms`);
}

let store = await openSqliteStore({ path });
await timed(`write ${jobs} jobs in one transaction`, () =>
  store.transaction(
    Array.from({ length: jobs }, (_, index) => ({
      do: 'put' as const,
      expected: 0,
      draft: {
        kind: 'job',
        id: `job-${index}`,
        updatedAt: new Date(Date.UTC(2026, 0, 1) + index * 60_000).toISOString(),
        title: `Garage floor ${index}`,
        searchText: `Customer ${(index * 7919) % jobs}, ${streets[index % streets.length]}, two coats, broadcast`,
        body: { index, notes: 'x'.repeat(1900) },
      },
    })),
  ),
);
await timed('list the first page', () => store.list({ kind: 'job' }), 20);
await timed('search one word found in a fifth', () => store.list({ kind: 'job', text: 'penon' }), 20);
await timed('search three words found once', () => store.list({ kind: 'job', text: 'customer 7919, garage' }), 20);
await timed('search a word found nowhere', () => store.list({ kind: 'job', text: 'nowhere' }), 20);
await timed('read one job', () => store.get('job', 'job-5000'), 20);
let revision = 0;
await timed('write one job (one commit)', () => store.put(draftOf(revision), revision++), 100);
await timed('export everything', () => store.exportAll(), 3);
await timed('close', () => store.close());
await timed('open, with the check of the file', async () => {
  store = await openSqliteStore({ path });
});
await store.close();
await rm(folder, { recursive: true });

function draftOf(number: number) {
  return {
    kind: 'job',
    id: 'job-edited',
    updatedAt: new Date(Date.UTC(2026, 6, 1) + number).toISOString(),
    title: 'Edited',
    searchText: '',
    body: { number, notes: 'x'.repeat(1900) },
  };
}
