import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, downloaded, GARAGE, kept, openJob, planShown, startField, withBrowser } from './app-page.ts';

withBrowser();

const golden = (file: string) =>
  JSON.parse(readFileSync(new URL(`../../../jobs/garage/${file}.json`, import.meta.url), 'utf8'));

const later = (page: Page) => page.locator('.start:visible').getByRole('button', { name: words.day.later }).first();

async function moveStart(page: Page): Promise<string> {
  const before = await startField(page).inputValue();
  await later(page).click();
  await expect.poll(() => startField(page).inputValue()).not.toBe(before);
  return startField(page).inputValue();
}

/** Chooses a file on the first screen. */
async function choose(page: Page, name: string, content: string | Buffer): Promise<void> {
  const buffer = typeof content === 'string' ? Buffer.from(content) : content;
  const field = page.locator('input[type=file]').first();
  await field.setInputFiles({ name, mimeType: 'application/json', buffer });
}

async function backup(
  page: Page,
): Promise<{ text: string; documents: { kind: string; id: string; revision: number; body: unknown }[] }> {
  const text = (await downloaded(page, page.getByRole('button', { name: words.list.backup }))).toString('utf8');
  return { text, ...JSON.parse(text) };
}

describe('two tabs', () => {
  test('the second is told, each sees what the other changes, and every version is kept', async () => {
    const { page: first, context } = await arrive();
    await openJob(first);
    const second = await context.newPage();
    await second.goto(first.url());
    await planShown(second);
    await second.getByText(words.kept.elsewhere).waitFor();
    const byFirst = await moveStart(first);
    await expect.poll(() => startField(second).inputValue()).toBe(byFirst);
    await kept(second);
    const bySecond = await moveStart(second);
    await expect.poll(() => startField(first).inputValue()).toBe(bySecond);
    await second.goto(inject('app'));
    const { documents } = await backup(second);
    const versions = documents.filter(({ kind, id }) => kind === 'job' && id === 'example-garage');
    expect(versions.map(({ revision }) => revision)).toEqual([1, 2, 3]);
  });
});

describe('no room left', () => {
  test('it is said, what was typed stays and can be saved as a file; with room again it is kept', async () => {
    const { page } = await arrive();
    await openJob(page);
    // A browser's room cannot be made small from outside, so this throws what the browser throws when it is used up.
    await page.evaluate(() => {
      const { put, add } = IDBObjectStore.prototype;
      const full = (): never => {
        throw new DOMException('used up', 'QuotaExceededError');
      };
      Object.assign(IDBObjectStore.prototype, { put: full, add: full });
      Object.assign(window, { makeRoom: () => Object.assign(IDBObjectStore.prototype, { put, add }) });
    });
    const typed = await moveStart(page);
    const alert = page.getByRole('alert').filter({ hasText: 'no room left' });
    await alert.waitFor();
    expect(await startField(page).inputValue()).toBe(typed);
    const file = JSON.parse(
      (await downloaded(page, alert.getByRole('button', { name: words.kept.saveFile }))).toString(),
    );
    expect(JSON.stringify(file.options[0].starts)).toContain(typed);
    await page.evaluate(() => (window as unknown as { makeRoom: () => void }).makeRoom());
    await alert.getByRole('button', { name: words.kept.tryAgain }).click();
    await kept(page);
    await page.reload();
    await planShown(page);
    expect(await startField(page).inputValue()).toBe(typed);
  });
});

describe('files from elsewhere', () => {
  const ODD: readonly (readonly [what: string, content: () => string | Buffer])[] = [
    ['empty', () => ''],
    ['cut off', () => JSON.stringify(golden('job')).slice(0, 3000)],
    ['a picture', () => Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3, 255, 254])],
    ['of another program', () => '{"hello": "world"}'],
    ['of a later version', () => JSON.stringify({ ...golden('job'), schema: 'slabwright.job/9' })],
    ['without its areas', () => JSON.stringify({ ...golden('job'), areas: [] })],
    ['a list in place of a text', () => JSON.stringify({ ...golden('job'), title: [1] })],
    ['nested without end', () => `{"schema":"slabwright.job/1","areas":${'['.repeat(100_000)}${']'.repeat(100_000)}}`],
    [
      'a backup with a changed letter',
      () => '{"schema":"slabwright.backup/1","checksum":"sha-256:0","documents":[],"entries":[],"unreadable":[]}',
    ],
    ['a backup of a later version', () => '{"schema":"slabwright.backup/7"}'],
  ];

  const TOLD_BY_THE_STORE: Readonly<Record<string, string>> = {
    'a backup with a changed letter': 'checksum',
    'a backup of a later version': 'newer version',
  };

  test('whatever is odd about them, it is said in words, and nothing is changed', async () => {
    const { page } = await arrive();
    await page.getByRole('link', { name: GARAGE }).waitFor();
    const said = page.locator('.said.wrong');
    for (const [what, content] of ODD) {
      await choose(page, `${what}.json`, content());
      // A file names itself in what is said of it; a backup is told by the store, which knows no names.
      const says = TOLD_BY_THE_STORE[what] ?? words.imported.wrong(`${what}.json`);
      await said.filter({ hasText: says }).waitFor();
      expect([what, ((await said.textContent())?.length ?? 0) > 40]).toEqual([what, true]);
      expect([what, await page.getByRole('link', { name: words.list.examples }).count()]).toEqual([what, 4]);
    }
  });

  test('a name that would be a script elsewhere is only a name', async () => {
    const { page } = await arrive();
    await page.getByRole('link', { name: GARAGE }).waitFor();
    const title = '<img src=x onerror="document.title=1"><script>alert(1)</script>';
    await choose(page, 'odd.json', JSON.stringify({ ...golden('job'), id: 'odd', title }));
    await planShown(page);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain(title);
    expect(await page.locator('h1 img, h1 script').count()).toBe(0);
  });
});

describe('out and in again', () => {
  test('a job made here, saved in a backup, opens on another device as it was left', async () => {
    const here = await arrive();
    await here.page.getByRole('link', { name: GARAGE }).waitFor();
    await choose(here.page, 'mine.json', JSON.stringify({ ...golden('job'), id: 'mine', title: 'My own garage' }));
    await planShown(here.page);
    const left = await moveStart(here.page);
    await kept(here.page);
    await here.page.goto(inject('app'));
    const { text, documents } = await backup(here.page);

    const there = await arrive();
    await there.page.getByRole('link', { name: GARAGE }).waitFor();
    await choose(there.page, 'backup.json', text);
    await there.page.locator('.said:not(.wrong)').waitFor();
    const again = await backup(there.page);
    const files = (all: typeof documents) => all.filter(({ kind }) => kind !== 'settings' && kind !== 'aside');
    expect(files(again.documents)).toEqual(files(documents));
    await openJob(there.page, 'My own garage');
    expect(await startField(there.page).inputValue()).toBe(left);
  });
});
