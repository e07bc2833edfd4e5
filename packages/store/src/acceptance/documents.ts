import { Conflict, InvalidInput, NotFound, WrittenOnce } from '../errors.ts';
import { holds, rejection, same } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job } from './samples.ts';

export const documentCases: readonly AcceptanceCase[] = [
  {
    rule: 'D1',
    title: 'a new document becomes revision 1 and reads back as written',
    async run({ open }) {
      const store = await open();
      const written = await store.put(job('a'), 0);
      same(written, { ...job('a'), revision: 1, removed: false }, 'the answer');
      same(await store.get('job', 'a'), written, 'what is read');
      same(await store.get('job', 'b'), null, 'an unknown document');
    },
  },
  {
    rule: 'D2',
    title: 'a put that has seen the stored revision becomes the next one',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      const second = await store.put(job('a', { title: 'Second', updatedAt: instant(5) }), 1);
      same(second.revision, 2, 'the revision');
      same((await store.get('job', 'a'))?.title, 'Second', 'the title read');
    },
  },
  {
    rule: 'D3',
    title: 'a put that has not seen it is a conflict with both versions, and nothing is written',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      const stored = await store.put(job('a', { title: 'Theirs' }), 1);
      for (const expected of [0, 1, 3]) {
        const conflict = await rejection(
          store.put(job('a', { title: 'Mine' }), expected),
          Conflict,
          `put at ${expected}`,
        );
        same(conflict.stored, stored, 'the stored version');
        same(conflict.offered, { ...job('a', { title: 'Mine' }), removed: false }, 'the offered version');
      }
      const missing = await rejection(store.put(job('b'), 4), Conflict, 'put at a revision that is not there');
      same(missing.stored, null, 'no stored version');
      same((await store.history('job', 'a')).length, 2, 'the number of revisions');
      same(await store.get('job', 'b'), null, 'the document that was not made');
    },
  },
  {
    rule: 'D4',
    title: 'the same put again, after a lost answer, is answered with the revision it made',
    async run({ open }) {
      const store = await open();
      const first = await store.put(job('a'), 0);
      same(await store.put(job('a'), 0), first, 'the repeated first put');
      const removed = await store.remove('job', 'a', 1, instant(3));
      same(await store.remove('job', 'a', 1, instant(3)), removed, 'the repeated removal');
      same((await store.history('job', 'a')).length, 2, 'the number of revisions');
    },
  },
  {
    rule: 'D5',
    title: 'documents come back as copies: changing one changes nothing stored',
    async run({ open }) {
      const store = await open();
      const body = { rooms: ['garage'] };
      const written = await store.put(job('a', { body }), 0);
      body.rooms.push('after the put');
      (written.body as { rooms: string[] }).rooms.push('in the answer');
      same((await store.get('job', 'a'))?.body, { rooms: ['garage'] }, 'the stored body');
    },
  },
  {
    rule: 'D6',
    title: 'one id in two kinds names two documents',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.put(job('a', { kind: 'weather', title: 'Forecast' }), 0);
      same((await store.get('job', 'a'))?.title, 'Garage a', 'the job');
      same((await store.get('weather', 'a'))?.title, 'Forecast', 'the weather');
    },
  },
  {
    rule: 'D7',
    title: 'a value that cannot be stored is refused by field, value and range, and nothing is written',
    async run({ open }) {
      const store = await open();
      const refusals: readonly [string, Promise<unknown>][] = [
        ['kind', store.put(job('a', { kind: 'Job' }), 0)],
        ['id', store.put(job(''), 0)],
        ['id', store.put(job('a b'), 0)],
        ['id', store.put(job('x'.repeat(201)), 0)],
        ['updatedAt', store.put(job('a', { updatedAt: '2026-02-30T08:00:00.000Z' }), 0)],
        ['updatedAt', store.put(job('a', { updatedAt: '2026-03-01T08:00:00+01:00' }), 0)],
        ['title', store.put(job('a', { title: 'x'.repeat(501) }), 0)],
        ['title', store.put(job('a', { title: 'half a character \ud83d' }), 0)],
        ['expected', store.put(job('a'), -1)],
        ['expected', store.put(job('a'), 0.5)],
        ['revision', store.get('job', 'a', 0)],
      ];
      for (const [field, refused] of refusals) {
        const error = await rejection(refused, InvalidInput, field);
        same(error.field, field, 'the field named');
        holds(error.message.includes('allowed is'), `the message gives the range: ${error.message}`);
      }
      const longest = await store.put(job('x'.repeat(200), { title: 'x'.repeat(500) }), 0);
      same(longest.revision, 1, 'the longest id and title are taken');
      same((await store.list({ kind: 'job' })).total, 1, 'the number of documents');
    },
  },
  {
    rule: 'D8',
    title: 'a paper is written once: neither changed nor removed, only superseded',
    async run({ open }) {
      const store = await open();
      const paper = job('p-1', { kind: 'paper', title: 'Proposal' });
      await store.put(paper, 0);
      await rejection(store.put({ ...paper, title: 'Changed' }, 1), WrittenOnce, 'a changed paper');
      await rejection(store.remove('paper', 'p-1', 1, instant(1)), WrittenOnce, 'a removed paper');
      same((await store.get('paper', 'p-1'))?.title, 'Proposal', 'the paper');
      same((await store.put({ ...paper, id: 'p-2' }, 0)).revision, 1, 'the paper that supersedes it');
    },
  },
  {
    rule: 'H1',
    title: 'every revision stays readable, numbered from 1 without gaps',
    async run({ open }) {
      const store = await open();
      for (let revision = 0; revision < 12; revision++) {
        await store.put(job('a', { title: `Version ${revision + 1}`, updatedAt: instant(revision) }), revision);
      }
      const history = await store.history('job', 'a');
      same(
        history.map((heading) => heading.revision),
        [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
        'the numbers',
      );
      same(history[8]?.title, 'Version 9', 'the ninth heading');
      same((await store.get('job', 'a', 9))?.title, 'Version 9', 'the ninth revision');
      same((await store.get('job', 'a', 9))?.body, job('a').body, 'its body');
      same(await store.get('job', 'a', 13), null, 'a revision that is not there');
      same(await store.history('job', 'b'), [], 'the history of an unknown document');
    },
  },
  {
    rule: 'R1',
    title: 'removal is a tombstone that keeps the body, and restoring undoes it',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      const tombstone = await store.remove('job', 'a', 1, instant(1));
      same(tombstone, { ...job('a'), updatedAt: instant(1), revision: 2, removed: true }, 'the tombstone');
      same(await store.get('job', 'a'), tombstone, 'what is read');
      const back = await store.restore('job', 'a', 2, instant(2));
      same(back, { ...job('a'), updatedAt: instant(2), revision: 3, removed: false }, 'the restored document');
      same(
        (await store.history('job', 'a')).map((heading) => heading.removed),
        [false, true, false],
        'the history',
      );
    },
  },
  {
    rule: 'R2',
    title: 'removal and restoring need the seen revision, and something to remove',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.put(job('a', { title: 'Changed elsewhere' }), 1);
      const conflict = await rejection(
        store.remove('job', 'a', 1, instant(1)),
        Conflict,
        'a removal from an old revision',
      );
      same(conflict.stored, await store.get('job', 'a'), 'the stored version');
      await rejection(store.remove('job', 'b', 0, instant(1)), NotFound, 'removal of nothing');
      await rejection(store.restore('job', 'b', 0, instant(1)), NotFound, 'restoring of nothing');
    },
  },
  {
    rule: 'R3',
    title: 'removing what is removed, or restoring what is there, makes no revision',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      same((await store.restore('job', 'a', 1, instant(1))).revision, 1, 'restoring what is there');
      await store.remove('job', 'a', 1, instant(2));
      same((await store.remove('job', 'a', 2, instant(3))).revision, 2, 'removing what is removed');
    },
  },
  {
    rule: 'R4',
    title: 'a put that has seen the tombstone brings the document back',
    async run({ open }) {
      const store = await open();
      await store.put(job('a'), 0);
      await store.remove('job', 'a', 1, instant(1));
      await rejection(store.put(job('a', { title: 'Not seen' }), 1), Conflict, 'a put that has not seen the tombstone');
      same((await store.put(job('a', { title: 'Seen' }), 2)).removed, false, 'a put that has');
    },
  },
];
