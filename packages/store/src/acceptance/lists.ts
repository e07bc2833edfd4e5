import { InvalidInput } from '../errors.ts';
import type { ListPlace } from '../port.ts';
import { rejection, same } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job } from './samples.ts';

export const listCases: readonly AcceptanceCase[] = [
  {
    rule: 'L1',
    title: 'newest first, then by id downwards, each document once at its latest revision',
    async run({ open }) {
      const store = await open();
      await store.put(job('b', { updatedAt: instant(1) }), 0);
      await store.put(job('a', { updatedAt: instant(1) }), 0);
      await store.put(job('c', { updatedAt: instant(0) }), 0);
      await store.put(job('d', { updatedAt: instant(0) }), 0);
      await store.put(job('d', { updatedAt: instant(9), title: 'Changed last' }), 1);
      const page = await store.list({ kind: 'job' });
      same(
        page.headings.map(({ id }) => id),
        ['d', 'b', 'a', 'c'],
        'the order',
      );
      same(
        page.headings[0],
        { kind: 'job', id: 'd', revision: 2, updatedAt: instant(9), removed: false, title: 'Changed last' },
        'the first heading',
      );
      same([page.total, page.next], [4, null], 'total and next');
    },
  },
  {
    rule: 'L2',
    title: 'every word of the text must occur in title or search text; case and accents do not count',
    async run({ open }) {
      const store = await open();
      await store.put(job('a', { title: 'Garage Müller', searchText: 'Calle Peñón 4' }), 0);
      await store.put(job('b', { title: 'Hall', searchText: 'Muller & Sons' }), 0);
      const find = async (text: string) => (await store.list({ kind: 'job', text })).headings.map(({ id }) => id);
      same(await find('muller'), ['b', 'a'], 'a word in both');
      same(await find('  PENON   garage '), ['a'], 'two words');
      same(await find('aller'), [], 'a text in none');
      same(await find('ULLE'), ['b', 'a'], 'part of a word');
      same(await find('garage sons'), [], 'words of different documents');
      same(await find(' '), ['b', 'a'], 'no word');
    },
  },
  {
    rule: 'L3',
    title: 'pages follow each other without gap or repeat, with and without text',
    async run({ open }) {
      const store = await open();
      const ids = Array.from({ length: 23 }, (_, index) => `job-${String(index).padStart(2, '0')}`);
      await store.transaction(
        ids.map((id, index) => ({ do: 'put', draft: job(id, { updatedAt: instant(index >> 2) }), expected: 0 })),
      );
      for (const text of ['', 'elm garage']) {
        const seen: string[] = [];
        let after: ListPlace | null = null;
        do {
          const query = { kind: 'job', text, limit: 5, ...(after === null ? {} : { after }) };
          const page = await store.list(query);
          same(page.total, 23, 'the total on every page');
          seen.push(...page.headings.map(({ id }) => id));
          after = page.next;
        } while (after !== null);
        same(seen, [...ids].reverse(), `the pages with text "${text}"`);
      }
      const whole = await store.list({ kind: 'job', limit: 23 });
      same([whole.headings.length, whole.next], [23, null], 'a page that just holds all');
    },
  },
  {
    rule: 'L4',
    title: 'removed documents are in the list of the removed only',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.put(job('b'), 0);
      await store.remove('job', 'a', 1, instant(1));
      const living = await store.list({ kind: 'job' });
      same([living.total, living.headings.map(({ id }) => id)], [1, ['b']], 'the living');
      const removed = await store.list({ kind: 'job', removed: true, text: 'garage' });
      same([removed.total, removed.headings.map(({ id }) => id)], [1, ['a']], 'the removed');
      await store.restore('job', 'a', 2, instant(2));
      same((await store.list({ kind: 'job', removed: true })).total, 0, 'the removed after restoring');
    },
  },
  {
    rule: 'L5',
    title: 'a list holds one kind',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.put(job('b', { kind: 'weather' }), 0);
      await store.put(job('c', { kind: 'job-template' }), 0);
      same(
        (await store.list({ kind: 'job' })).headings.map(({ id }) => id),
        ['a'],
        'the jobs',
      );
      same((await store.list({ kind: 'catalogue' })).total, 0, 'a kind without documents');
    },
  },
  {
    rule: 'L6',
    title: 'a page holds 1 to 1,000 headings',
    async run({ open }) {
      const store = await open();
      for (const limit of [0, -1, 1.5, 1001, Number.NaN]) {
        await rejection(store.list({ kind: 'job', limit }), InvalidInput, `limit ${limit}`);
      }
      same((await store.list({ kind: 'job', limit: 1000 })).total, 0, 'limit 1,000');
      same((await store.list({ kind: 'job', limit: 1 })).total, 0, 'limit 1');
    },
  },
];
