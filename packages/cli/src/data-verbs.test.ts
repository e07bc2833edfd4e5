import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { heard, terminalInto } from './testing/heard.ts';
import { runHeard } from './testing/run-heard.ts';
import { serveVerb } from './verbs/serve.ts';

const all = mkdtempSync(join(tmpdir(), 'slabwright-data-'));
afterAll(() => rmSync(all, { recursive: true }));
let folder = '';
let data = '';
beforeEach(() => {
  folder = mkdtempSync(join(all, 'case-'));
  data = join(folder, 'data');
});

const GARAGE = new URL('../../../jobs/garage', import.meta.url).pathname;

const slabwright = (...args: string[]) => runHeard(args);

const path = (name: string): string => join(folder, name);
const read = (name: string): string => readFileSync(path(name), 'utf8');
const idOf = (): string => JSON.parse(readFileSync(join(GARAGE, 'job.json'), 'utf8')).id;

describe('import and export', () => {
  test('a job goes in with its catalogue and prices, and comes out so that the same plan is made of it', async () => {
    const into = await slabwright('import', GARAGE, '--data', data, '--json');
    expect(into.status).toBe(0);
    expect(JSON.parse(into.out).map(({ kind, stored }: { kind: string; stored: boolean }) => [kind, stored])).toEqual([
      ['catalogue', true],
      ['price-book', true],
      ['weather', true],
      ['job', true],
    ]);
    expect((await slabwright('export', idOf(), '--data', data, '--out', path('garage'))).status).toBe(0);
    const before = await slabwright('plan', GARAGE, '--json');
    expect((await slabwright('plan', path('garage'), '--json')).out).toBe(before.out);
  });

  test('the same again is stored once; a changed one keeps the older in its history', async () => {
    await slabwright('import', GARAGE, '--data', data);
    expect((await slabwright('import', GARAGE, '--data', data)).out).toContain('is here already');
    await slabwright('export', idOf(), '--data', data, '--out', path('job.json'));
    const job = JSON.parse(read('job.json'));
    writeFileSync(path('job.json'), JSON.stringify({ ...job, title: 'Garage, again' }));
    expect((await slabwright('import', path('job.json'), '--data', data)).status).toBe(0);
    await slabwright('backup', '--data', data, '--out', path('all.json'));
    const { documents } = JSON.parse(read('all.json'));
    const titles = documents
      .filter(({ kind }: { kind: string }) => kind === 'job')
      .map(({ title }: { title: string }) => title);
    expect(titles).toEqual([job.title, 'Garage, again']);
  });

  test('a job alone finds a stored catalogue that holds its systems, else says what to do', async () => {
    writeFileSync(path('job.json'), readFileSync(join(GARAGE, 'job.json')));
    const alone = await slabwright('import', path('job.json'), '--data', data);
    expect(alone.status).toBe(2);
    expect(alone.err).toContain('catalogue.json beside the job');
    await slabwright('import', join(GARAGE, 'catalogue.json'), '--data', data);
    expect((await slabwright('import', path('job.json'), '--data', data)).status).toBe(0);
  });

  test.each([
    ['empty', '', 'empty'],
    ['cut off', '{"schema": "slabwright.job/1"', 'ends in the middle'],
    ['of the future', '{"schema": "slabwright.job/9"}', 'later version'],
    ['of another kind', '{"schema": "slabwright.plan/1"}', 'is needed here'],
    ['a backup', '{"schema": "slabwright.backup/1"}', 'restore'],
  ])('a file that is %s is refused, and nothing is stored', async (_what, text, says) => {
    writeFileSync(path('wrong.json'), text);
    const answer = await slabwright('import', path('wrong.json'), '--data', data);
    expect(answer.status).toBe(2);
    expect(answer.err).toContain(says);
  });

  test('a job that is not there is named with what is, and a file in the way is kept', async () => {
    await slabwright('import', GARAGE, '--data', data);
    const none = await slabwright('export', 'nothing-like-it', '--data', data, '--out', path('x.json'));
    expect(none.status).toBe(2);
    expect(none.err).toContain(idOf());
    writeFileSync(path('x.json'), 'mine');
    const inTheWay = await slabwright('export', idOf(), '--data', data, '--out', path('x.json'));
    expect(inTheWay.status).toBe(2);
    expect(read('x.json')).toBe('mine');
    expect((await slabwright('export', idOf(), '--data', data, '--out', path('x.json'), '--overwrite')).status).toBe(0);
    expect(JSON.parse(read('x.json')).id).toBe(idOf());
    expect((await slabwright('export', idOf(), '--data', data, '--out', '-')).out).toBe(read('x.json'));
  });

  test('a folder without data is said, not made', async () => {
    const answer = await slabwright('export', 'a', '--data', path('nowhere'), '--out', path('x.json'));
    expect(answer.status).toBe(2);
    expect(answer.err).toContain('holds no data');
    expect(() => readFileSync(path('nowhere'))).toThrow(/ENOENT/);
  });
});

describe('backup and restore', () => {
  test('out, into an empty folder, out again: the same bytes', async () => {
    await slabwright('import', GARAGE, '--data', data);
    expect((await slabwright('backup', '--data', data, '--out', path('one.json'))).status).toBe(0);
    const restored = await slabwright('restore', path('one.json'), '--data', path('other'));
    expect(restored.out).toContain('4 revisions and 0 log entries added');
    await slabwright('backup', '--data', path('other'), '--out', path('two.json'));
    expect(read('two.json')).toBe(read('one.json'));
    expect((await slabwright('restore', path('one.json'), '--data', path('other'))).out).toContain('4 and 0 were here');
  });

  test('what went different ways is kept beside, and said', async () => {
    await slabwright('import', GARAGE, '--data', data);
    await slabwright('backup', '--data', data, '--out', path('one.json'));
    const other = path('other');
    await slabwright('restore', path('one.json'), '--data', other);
    for (const [at, title] of [
      [data, 'here'],
      [other, 'there'],
    ] as const) {
      const job = { ...JSON.parse(readFileSync(join(GARAGE, 'job.json'), 'utf8')), title };
      writeFileSync(path('job.json'), JSON.stringify(job));
      await slabwright('import', path('job.json'), '--data', at);
    }
    await slabwright('backup', '--data', other, '--out', path('two.json'));
    const merged = await slabwright('restore', path('two.json'), '--data', data);
    expect(merged.err).toContain(`job/${idOf()} is different here and in the backup`);
    await slabwright('export', idOf(), '--data', data, '--out', path('kept.json'));
    expect(JSON.parse(read('kept.json')).title).toBe('here');
  });

  test('a damaged backup changes nothing and makes no folder', async () => {
    await slabwright('import', GARAGE, '--data', data);
    await slabwright('backup', '--data', data, '--out', path('one.json'));
    writeFileSync(path('two.json'), read('one.json').replace('slabwright.job', 'slabwright.jab'));
    const answer = await slabwright('restore', path('two.json'), '--data', path('other'));
    expect(answer.status).toBe(2);
    expect(answer.err).toContain('checksum');
    expect(() => readFileSync(join(path('other'), 'slabwright.db'))).toThrow(/ENOENT/);
  });
});

describe('serve', () => {
  test('says where it is, answers until it is told to end, and is gone then', async () => {
    const said = heard();
    let end = (): void => undefined;
    const ended = serveVerb(
      { port: '0', data, json: true },
      terminalInto(said),
      () => new Promise((done) => (end = done)),
    );
    await expect.poll(() => said.out, { timeout: 20_000 }).not.toBe('');
    const { address, demoJobs } = JSON.parse(said.out);
    expect(demoJobs).toHaveLength(4);
    expect((await fetch(`${address}api/about`)).status).toBe(200);
    end();
    expect(await ended).toBe(0);
    await expect(fetch(`${address}api/about`)).rejects.toThrow();
  });

  test.each([
    ['--port', '70000', 'from 0 to 65535'],
    ['--port', 'http', 'from 0 to 65535'],
    ['--host', '203.0.113.9', 'not an address of this machine'],
  ])('%s %s is refused with a way out', async (option, value, says) => {
    const answer = await slabwright('serve', '--data', data, option, value);
    expect(answer.status).toBe(2);
    expect(answer.err).toContain(says);
  });
});
