import { asideOf } from '../aside.ts';
import { type Backup, backupText, readBackup } from '../backup.ts';
import { Conflict, Damaged, FutureSchema } from '../errors.ts';
import type { Store } from '../port.ts';
import { holds, rejection, same } from './expect.ts';
import type { AcceptanceCase } from './place.ts';
import { instant, job, reading } from './samples.ts';

export const backupCases: readonly AcceptanceCase[] = [
  {
    rule: 'B1',
    title: 'export, an empty store, import, export: the same bytes',
    async run({ open, openOther }) {
      const store = await open();
      await fill(store);
      const text = backupText(await store.exportAll());
      const other = await openOther();
      const report = await other.importAll(readBackup(text));
      same([report.revisionsAdded, report.entriesAdded, report.diverged], [5, 2, []], 'the report');
      holds(backupText(await other.exportAll()) === text, 'the bytes are the same');
      same((await other.list({ kind: 'job', text: 'garage' })).total, 1, 'the list');
      same((await other.put(job('a', { title: 'Goes on' }), 2)).revision, 3, 'the next revision');
    },
  },
  {
    rule: 'B2',
    title: 'an import adds what is missing, changes nothing, and twice is once',
    async run({ open, openOther }) {
      const store = await open();
      await fill(store);
      const old = await store.exportAll();
      await store.put(job('a', { title: 'Newer here' }), 2);
      await store.put(job('only-here'), 0);
      const before = await store.exportAll();
      const report = await store.importAll(old);
      same(
        [report.revisionsAdded, report.revisionsAlreadyHere, report.entriesAlreadyHere],
        [0, 5, 2],
        'the old backup',
      );
      same(await store.exportAll(), before, 'the store after the old backup');
      const other = await openOther();
      await other.importAll(old);
      const more = await other.importAll(before);
      same([more.revisionsAdded, more.revisionsAlreadyHere, more.diverged], [2, 5, []], 'the newer backup');
      same(await other.exportAll(), before, 'the store after both');
    },
  },
  {
    rule: 'B3',
    title: 'where store and backup went different ways, the store stays and the backup is kept as an aside',
    async run({ open, openOther }) {
      const store = await open();
      await fill(store);
      await store.put(job('a', { title: 'Written there' }), 2);
      const theirs = await store.exportAll();
      const other = await openOther();
      await fill(other);
      const mine = await other.put(job('a', { title: 'Written here' }), 2);
      await other.append(reading('b', 'r9', 9, 0.5));
      const before = await other.exportAll();
      const report = await other.importAll(theirs);
      same(
        report.diverged.map(({ of }) => of),
        ['job/a'],
        'what went another way',
      );
      same(await other.get('job', 'a'), mine, 'the document here');
      const aside = await other.get('aside', report.diverged[0]?.aside ?? 'none');
      holds(aside !== null, 'the aside is there');
      const kept = (aside.body as unknown as { revisions: { title: string }[] }).revisions;
      same(
        kept.map(({ title }) => title),
        ['Garage a', 'Second', 'Written there'],
        'the history of the backup',
      );
      const again = await other.importAll(theirs);
      same([again.revisionsAdded, again.diverged], [0, report.diverged], 'the same import again');
      same((await other.exportAll()).documents.length, before.documents.length + 1, 'the number of revisions');
    },
  },
  {
    rule: 'B4',
    title: 'a damaged backup is refused and nothing is changed',
    async run({ open }) {
      const store = await open();
      await fill(store);
      const backup = await store.exportAll();
      const text = backupText(backup);
      const broken: readonly [string, () => Promise<unknown>][] = [
        ['half a file', async () => readBackup(text.slice(0, text.length / 2))],
        ['a changed letter', async () => readBackup(text.replace('Garage', 'Gerage'))],
        ['an empty file', async () => readBackup('')],
        ['a list', async () => readBackup('[]')],
        ['another program', async () => readBackup('{"schema":"other/1"}')],
        ['an entry less', () => store.importAll({ ...backup, entries: backup.entries.slice(1) })],
        ['a revision less', () => store.importAll({ ...backup, documents: backup.documents.slice(1) })],
        ['no body', () => store.importAll({ ...backup, documents: [{ kind: 'job' }] } as unknown as Backup)],
      ];
      for (const [what, read] of broken) await rejection(read(), Damaged, what);
      same(await store.exportAll(), backup, 'the store');
    },
  },
  {
    rule: 'B5',
    title: 'a backup of a newer version is refused by name and nothing is changed',
    async run({ open }) {
      const store = await open();
      await fill(store);
      const backup = await store.exportAll();
      const newer = { ...backup, schema: 'slabwright.backup/2' } as unknown as Backup;
      const refused = await rejection(store.importAll(newer), FutureSchema, 'the newer backup');
      holds(refused.message.includes('Update the program'), `the message gives the way out: ${refused.message}`);
      same(await store.exportAll(), backup, 'the store');
    },
  },
  {
    rule: 'B6',
    title: 'the version that lost a conflict can be kept as an aside, and kept twice is there once',
    async run({ open }) {
      const store = await open();
      await store.put(job('a', { title: 'Theirs' }), 0);
      await store.append(reading('a', 'r1', 0));
      const conflicts = [
        await rejection(store.put(job('a', { title: 'Mine' }), 0), Conflict, 'the document'),
        await rejection(store.append(reading('a', 'r1', 0, 0.9)), Conflict, 'the entry'),
      ];
      for (const conflict of [...conflicts, ...conflicts]) await store.put(asideOf(conflict, instant(1)), 0);
      const { headings } = await store.list({ kind: 'aside' });
      same(headings.map(({ title }) => title).sort(), ['Log entry r1', 'Mine'], 'the asides');
      const id = headings.find(({ title }) => title === 'Mine')?.id ?? 'none';
      const aside = await store.get('aside', id);
      holds(aside !== null, 'the aside is there');
      same((aside.body as unknown as { offered: unknown }).offered, conflicts[0]?.offered, 'the version kept');
    },
  },
];

async function fill(store: Store): Promise<void> {
  await store.put(job('a'), 0);
  await store.put(job('a', { title: 'Second', updatedAt: instant(1), searchText: 'garage, Elm Street' }), 1);
  await store.put(job('c', { kind: 'weather', title: 'Forecast \u0000 "ñ" 😀' }), 0);
  await store.put(job('b', { body: [null, true, 1e-7, 'text', { deep: [[]] }] }), 0);
  await store.remove('job', 'b', 1, instant(2));
  await store.append(reading('b', 'r2', 1));
  await store.append(reading('b', 'r1', 1));
}
