import { Conflict, InvalidInput } from '../errors.ts';
import { rejection, same } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job, reading } from './samples.ts';

export const logCases: readonly AcceptanceCase[] = [
  {
    rule: 'E1',
    title: 'an entry is added to its job and reads back as written',
    async run({ open }) {
      const store = await open();
      same(await store.append(reading('a', 'r1', 0)), { entry: reading('a', 'r1', 0), added: true }, 'the answer');
      await store.append(reading('b', 'r1', 0));
      same(await store.entries('a'), [reading('a', 'r1', 0)], 'the log of a');
      same(await store.entries('c'), [], 'the log of a job without entries');
    },
  },
  {
    rule: 'E2',
    title: 'the same entry again is answered, not added',
    async run({ open }) {
      const store = await open();
      await store.append(reading('a', 'r1', 0));
      same(await store.append(reading('a', 'r1', 0)), { entry: reading('a', 'r1', 0), added: false }, 'the answer');
      same((await store.entries('a')).length, 1, 'the number of entries');
    },
  },
  {
    rule: 'E3',
    title: 'another entry under a taken id is a conflict with both, and the stored one stays',
    async run({ open }) {
      const store = await open();
      await store.append(reading('a', 'r1', 0));
      for (const other of [reading('a', 'r1', 0, 0.9), reading('a', 'r1', 1)]) {
        const conflict = await rejection(store.append(other), Conflict, 'the other entry');
        same([conflict.stored, conflict.offered], [reading('a', 'r1', 0), other], 'both entries');
      }
      same(await store.entries('a'), [reading('a', 'r1', 0)], 'the log');
    },
  },
  {
    rule: 'E4',
    title: 'entries come oldest first, then by id, in pages without gap or repeat',
    async run({ open }) {
      const store = await open();
      const order = [3, 1, 2, 0, 5, 4];
      for (const minutes of order) {
        await store.append(reading('a', `r${minutes}-b`, minutes));
        await store.append(reading('a', `r${minutes}-a`, minutes));
      }
      const wanted = [0, 1, 2, 3, 4, 5].flatMap((minutes) => [`r${minutes}-a`, `r${minutes}-b`]);
      same(
        (await store.entries('a')).map(({ id }) => id),
        wanted,
        'the order',
      );
      const first = await store.entries('a', { limit: 5 });
      const rest = await store.entries('a', { after: { at: instant(2), id: 'r2-a' } });
      same(
        [...first, ...rest].map(({ id }) => id),
        wanted,
        'two pages',
      );
    },
  },
  {
    rule: 'E5',
    title: 'an entry that cannot be stored is refused by field',
    async run({ open }) {
      const store = await open();
      const refusals: readonly [string, Promise<unknown>][] = [
        ['jobId', store.append({ ...reading('a', 'r', 0), jobId: '' })],
        ['id', store.append(reading('a', '\n', 0))],
        ['at', store.append({ ...reading('a', 'r', 0), at: 'yesterday' })],
        ['limit', store.entries('a', { limit: 0 })],
      ];
      for (const [field, refused] of refusals)
        same((await rejection(refused, InvalidInput, field)).field, field, 'field');
      same(await store.entries('a'), [], 'the log');
    },
  },
  {
    rule: 'E6',
    title: 'entries need no document and outlive its removal',
    async run({ open }) {
      const store = await open();
      await store.append(reading('a', 'r1', 0));
      await store.put(job('a'), 0);
      await store.remove('job', 'a', 1, instant(1));
      same(await store.entries('a'), [reading('a', 'r1', 0)], 'the log');
    },
  },
];
