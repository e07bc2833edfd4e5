import { Conflict, InvalidInput, StoreClosed } from '../errors.ts';
import type { Store, StoreEvent } from '../port.ts';
import { holds, rejection, same, untilTrue } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job, reading } from './samples.ts';

export const transactionCases: readonly AcceptanceCase[] = [
  {
    rule: 'T1',
    title: 'all changes of a transaction are made, in order, each seeing the ones before',
    async run({ open }) {
      const store = await open();
      const outcomes = await store.transaction([
        { do: 'put', draft: job('a'), expected: 0 },
        { do: 'put', draft: job('a', { title: 'Again' }), expected: 1 },
        { do: 'append', entry: reading('a', 'r1', 0) },
        { do: 'append', entry: reading('a', 'r1', 0) },
        { do: 'remove', kind: 'job', id: 'a', expected: 2, updatedAt: instant(1) },
        { do: 'restore', kind: 'job', id: 'a', expected: 3, updatedAt: instant(2) },
      ]);
      same(
        outcomes.map(({ did }) => did),
        ['put', 'put', 'append', 'append', 'remove', 'restore'],
        'what was done',
      );
      same(
        outcomes.map((outcome) => (outcome.did === 'append' ? outcome.added : outcome.document.revision)),
        [1, 2, true, false, 3, 4],
        'the outcomes',
      );
      same(await store.transaction([]), [], 'a transaction without changes');
    },
  },
  {
    rule: 'T2',
    title: 'when one change is a conflict, none is made',
    async run({ open }) {
      const store = await open();
      await store.put(job('taken'), 0);
      const before = await store.exportAll();
      await rejection(
        store.transaction([
          { do: 'put', draft: job('a'), expected: 0 },
          { do: 'append', entry: reading('a', 'r1', 0) },
          { do: 'put', draft: job('taken', { title: 'Mine' }), expected: 0 },
        ]),
        Conflict,
        'the transaction',
      );
      await rejection(
        store.transaction([
          { do: 'put', draft: job('a'), expected: 0 },
          { do: 'put', draft: job('b', { title: 'x'.repeat(501) }), expected: 0 },
        ]),
        InvalidInput,
        'the transaction with a value that cannot be stored',
      );
      same(await store.exportAll(), before, 'the store');
      same((await store.list({ kind: 'job', text: 'garage' })).total, 1, 'the list');
    },
  },
  {
    rule: 'T3',
    title: 'of many writes at once on one revision one is made, the others are conflicts',
    async run({ open }) {
      const stores = [await open(), await open()];
      const tries = await Promise.allSettled(
        Array.from({ length: 20 }, (_, index) =>
          (stores[index % 2] as (typeof stores)[number]).put(job('a', { title: `Writer ${index}` }), 0),
        ),
      );
      const made = tries.filter(({ status }) => status === 'fulfilled');
      const refused = tries.filter((result) => result.status === 'rejected' && result.reason instanceof Conflict);
      same([made.length, refused.length], [1, 19], 'made and refused');
      same((await stores[0]?.history('job', 'a'))?.length, 1, 'the number of revisions');
    },
  },
  {
    rule: 'T4',
    title: 'many writes at once on different documents are all made',
    async run({ open }) {
      const [one, other] = [await open(), await open()];
      await Promise.all(
        Array.from({ length: 30 }, (_, index) => (index % 2 === 0 ? one : other).put(job(`j${index}`), 0)),
      );
      same((await one.list({ kind: 'job' })).total, 30, 'seen by the one');
      same((await other.list({ kind: 'job' })).total, 30, 'seen by the other');
    },
  },
  {
    rule: 'T5',
    title: 'two sessions reading and writing one job, in every order: each version is kept or handed back',
    async run({ open }) {
      const stores = [await open(), await open()] as const;
      const orders = interleavings(4, 4);
      same(orders.length, 70, 'the number of orders');
      for (const [index, order] of orders.entries()) await twoSessions(stores, `job-${index}`, order);
    },
  },
  {
    rule: 'W1',
    title: 'a watcher is told what was written, after it was, and nothing once stopped',
    async run({ open }) {
      const store = await open();
      const told: StoreEvent[] = [];
      const stop = store.watch((event) => told.push(event));
      await store.transaction([
        { do: 'put', draft: job('a'), expected: 0 },
        { do: 'append', entry: reading('a', 'r1', 0) },
      ]);
      await untilTrue(() => told.length > 0, 'the watcher is told');
      const documents = [{ kind: 'job', id: 'a', revision: 1 }];
      const entries = [{ jobId: 'a', id: 'r1' }];
      same(told, [{ what: 'changed', documents, entries, elsewhere: false }], 'what was told');
      stop();
      await store.put(job('b'), 0);
      await settled();
      same(told.length, 1, 'told after the stop');
    },
  },
  {
    rule: 'W2',
    title: 'a write that fails or changes nothing tells nobody',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await settled();
      const told: StoreEvent[] = [];
      store.watch((event) => told.push(event));
      await rejection(store.put(job('a', { title: 'Mine' }), 0), Conflict, 'the conflict');
      await store.put(job('a'), 0);
      await settled();
      same(told, [], 'what was told');
    },
  },
  {
    rule: 'W3',
    title: 'a second handle is told, and what it writes from the old revision is a conflict, not a loss',
    needsTelling: true,
    async run({ open }) {
      const [first, second] = [await open(), await open()];
      const told: StoreEvent[] = [];
      second.watch((event) => told.push(event));
      await first.put(job('a', { title: 'Written in the first' }), 0);
      await untilTrue(() => told.length > 0, 'the second is told');
      same(
        told,
        [{ what: 'changed', documents: [{ kind: 'job', id: 'a', revision: 1 }], entries: [], elsewhere: true }],
        'what the second is told',
      );
      const conflict = await rejection(second.put(job('a', { title: 'Typed in the second' }), 0), Conflict, 'its put');
      same((conflict.offered as { title: string }).title, 'Typed in the second', 'the version it can still save');
    },
  },
  {
    rule: 'C1',
    title: 'what was acknowledged is there after closing and opening',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.put(job('a', { title: 'Second' }), 1);
      await store.append(reading('a', 'r1', 0));
      const before = await store.exportAll();
      await store.close();
      const again = await open();
      same(await again.exportAll(), before, 'the store opened again');
      same((await again.put(job('a', { title: 'Third' }), 2)).revision, 3, 'the next revision');
    },
  },
  {
    rule: 'C2',
    title: 'a closed store refuses by name, and closing twice is closing once',
    async run({ open }) {
      const store = await open();
      await store.close();
      await store.close();
      await rejection(store.get('job', 'a'), StoreClosed, 'a read');
      await rejection(store.put(job('a'), 0), StoreClosed, 'a write');
    },
  },
  {
    rule: 'C3',
    title: 'closing waits for the writes that are running',
    async run({ open }) {
      const store = await open();
      const writes = [store.put(job('a'), 0), store.put(job('b'), 0), store.append(reading('a', 'r1', 0))];
      await store.close();
      const results = await Promise.allSettled(writes);
      holds(
        results.every(({ status }) => status === 'fulfilled'),
        'every write that began was acknowledged',
      );
      const again = await open();
      same((await again.list({ kind: 'job' })).total, 2, 'the documents');
      same((await again.entries('a')).length, 1, 'the entries');
    },
  },
];

/** Long enough for anything that would be told to have been told. */
async function settled(): Promise<void> {
  await new Promise((done) => setTimeout(done, 20));
}

/** Each session reads, writes from what it read, and does both again; `order` says whose turn it is. */
async function twoSessions(stores: readonly [Store, Store], id: string, order: readonly (0 | 1)[]): Promise<void> {
  await stores[0].put(job(id), 0);
  const kept = [job(id).title];
  const seen = [0, 0];
  const turns = [0, 0];
  for (const session of order) {
    const turn = (turns[session] ?? 0) + 1;
    turns[session] = turn;
    if (turn % 2 === 1) {
      seen[session] = (await stores[session].get('job', id))?.revision ?? 0;
      continue;
    }
    const title = `Session ${session}, turn ${turn}`;
    const expected = seen[session] ?? 0;
    const put = stores[session].put(job(id, { title }), expected);
    if (expected === kept.length) {
      await put;
      kept.push(title);
    } else {
      const conflict = await rejection(put, Conflict, `${title} in order ${order.join('')}`);
      same((conflict.stored as { title: string }).title, kept.at(-1), 'the version stored');
      same((conflict.offered as { title: string }).title, title, 'the version handed back');
    }
  }
  const history = await stores[0].history('job', id);
  same(
    history.map(({ title }) => title),
    kept,
    `the history after order ${order.join('')}`,
  );
}

/** Every order of `a` turns of session 0 and `b` turns of session 1. */
function interleavings(a: number, b: number): readonly (readonly (0 | 1)[])[] {
  if (a === 0) return [new Array<1>(b).fill(1)];
  if (b === 0) return [new Array<0>(a).fill(0)];
  return [
    ...interleavings(a - 1, b).map((rest) => [0 as const, ...rest]),
    ...interleavings(a, b - 1).map((rest) => [1 as const, ...rest]),
  ];
}
