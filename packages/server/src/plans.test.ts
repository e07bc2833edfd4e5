import { backupText } from '@slabwright/store';
import { openMemoryStore } from '@slabwright/store/memory';
import { describe, expect, test } from 'vitest';
import { addDemoJobs } from './demo.ts';
import { golden, NOW, tryApp } from './testing/try-app.ts';

// biome-ignore lint/suspicious/noExplicitAny: files are damaged on purpose
type Damage = (files: any) => void;

function garage(damage: Damage = () => {}): unknown {
  const files = {
    job: golden('garage', 'job'),
    catalogue: golden('garage', 'catalogue'),
    priceBook: golden('garage', 'price-book'),
    weather: golden('garage', 'weather'),
    now: '2026-05-12T18:00:00-06:00',
  };
  damage(files);
  return files;
}

describe('plans', () => {
  test('a job is planned from the files sent, and the stored one gives the same bytes', async () => {
    const { call, store } = await tryApp();
    await addDemoJobs(store);
    const sent = await call('POST', '/api/plan', garage());
    expect(sent.status).toBe(200);
    const text = await sent.text();
    expect(JSON.parse(text).plan).toMatchObject({ schema: 'slabwright.plan/1', currency: 'USD' });
    expect(await (await call('GET', '/api/jobs/example-garage/plan')).text()).toBe(text);
  });

  test('without a price book every step but price is there', async () => {
    const { call } = await tryApp();
    const { plan } = await (
      await call(
        'POST',
        '/api/plan',
        garage((files) => delete files.priceBook),
      )
    ).json();
    expect(plan.currency).toBeUndefined();
    expect(plan.options[0].price.verdict.word).toBe('not known');
    expect(plan.options[0].quantities.verdict.word).not.toBe('not known');
  });

  test.each<readonly [string, Damage, string, readonly unknown[]]>([
    ['a field of the job', (files) => delete files.job.title, 'field-missing', ['job', 'title']],
    [
      'a file of another kind',
      (files) => Object.assign(files, { catalogue: files.job }),
      'schema-other-kind',
      ['catalogue', 'schema'],
    ],
    [
      'a future file',
      (files) => Object.assign(files.priceBook, { schema: 'slabwright.price-book/9' }),
      'schema-from-the-future',
      ['priceBook', 'schema'],
    ],
    ['a moment', (files) => Object.assign(files, { now: 'tomorrow' }), 'instant-malformed', ['now']],
  ])('%s that is wrong is named with its file and place', async (_what, damage, code, path) => {
    const { call } = await tryApp();
    const answer = await call('POST', '/api/plan', garage(damage));
    expect(answer.status).toBe(422);
    const { issues, messages } = await answer.json();
    expect(issues[0]).toMatchObject({ code, path });
    expect(messages).toHaveLength(issues.length);
  });

  test('a stored job that names a catalogue which is not there', async () => {
    const { call } = await tryApp();
    await call('PUT', '/api/documents/job/a', { expected: 0, title: 'a', body: { job: {}, catalogue: 'none' } });
    const answer = await call('GET', '/api/jobs/a/plan');
    expect(answer.status).toBe(422);
    expect((await answer.json()).issues[0]).toMatchObject({
      code: 'job-without-catalogue',
      names: { catalogue: 'none' },
    });
    expect((await call('GET', '/api/jobs/b/plan')).status).toBe(404);
  });
});

describe('the backup', () => {
  test('out, into an empty server and out again: the same bytes', async () => {
    const here = await tryApp();
    await addDemoJobs(here.store);
    await here.call('POST', '/api/jobs/example-garage/log', { id: 'r', at: NOW, body: 1 });
    const out = await here.call('GET', '/api/backup');
    expect(out.headers.get('content-disposition')).toContain('slabwright-backup-2026-05-12.json');
    const text = await out.text();
    const there = await tryApp();
    const report = await (await there.call('POST', '/api/backup', text)).json();
    expect(report).toEqual({
      revisionsAdded: 15,
      revisionsAlreadyHere: 0,
      entriesAdded: 1,
      entriesAlreadyHere: 0,
      diverged: [],
    });
    expect(await (await there.call('GET', '/api/backup')).text()).toBe(text);
  });

  test('a damaged one and one of a later version change nothing', async () => {
    const { call, store } = await tryApp();
    const other = await openMemoryStore();
    await addDemoJobs(other);
    const text = backupText(await other.exportAll());
    const damaged = await call('POST', '/api/backup', text.replace('Two-car garage', 'Ten-car garage'));
    expect(damaged.status).toBe(422);
    expect((await damaged.json()).issues[0].code).toBe('damaged');
    const later = await call('POST', '/api/backup', text.replace('slabwright.backup/1', 'slabwright.backup/2'));
    expect(later.status).toBe(422);
    expect((await later.json()).issues[0].code).toBe('future-schema');
    expect((await store.exportAll()).documents).toEqual([]);
  });
});

describe('demo jobs', () => {
  test('put in once, with catalogue and price book, the garage first; removed ones do not come back', async () => {
    const store = await openMemoryStore();
    expect(await addDemoJobs(store)).toHaveLength(4);
    const { headings } = await store.list({ kind: 'job' });
    expect(headings.map(({ id }) => id)[0]).toBe('example-garage');
    expect((await store.list({ kind: 'catalogue' })).total).toBe(4);
    for (const { id } of headings) await store.remove('job', id, 1, NOW);
    expect(await addDemoJobs(store)).toEqual([]);
    expect((await store.list({ kind: 'job' })).total).toBe(0);
  });
});
