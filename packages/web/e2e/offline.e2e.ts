import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Serving, serve } from '@slabwright/server';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, DESK, GARAGE, goToStep, openJob, PHONE, planShown, withBrowser } from './app-page.ts';
import { type StaticHost, staticHost } from './static-host.ts';

withBrowser();

let data = '';
let serving: Serving;

beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), 'slabwright-offline-'));
  serving = await serve({ data, port: 0, web: inject('built'), log: (line) => process.stderr.write(`${line}\n`) });
});
afterEach(async () => {
  await serving.stop();
  rmSync(data, { recursive: true });
});

/** The service worker has taken everything in and answers for this page. */
async function visitedTwice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

async function downloaded(page: Page, name: string): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
  return readFile(await download.path());
}

describe('without the server', () => {
  test('after the second visit the whole job works: plan, working, change, papers as PDF, reload', async () => {
    const { page } = await arrive(serving.address);
    await visitedTwice(page);
    await serving.stop();
    await page.reload();
    await openJob(page);
    await goToStep(page, words.steps.hours);
    const start = page.getByRole('region', { name: words.day.title }).getByRole('textbox').first();
    const before = await start.inputValue();
    await page.getByRole('button', { name: words.day.later }).first().click();
    await expect.poll(() => start.inputValue()).not.toBe(before);
    const moved = await start.inputValue();
    await planShown(page);
    await page.getByRole('status').filter({ hasText: words.kept.here }).first().waitFor();

    await goToStep(page, words.steps.papers);
    const bytes = await downloaded(page, `${words.papers.download} ${words.papers.kinds['crew-sheet']}`);
    expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(bytes.subarray(-8).toString('latin1')).toContain('%%EOF');

    await page.reload();
    await planShown(page).catch(() => undefined);
    await goToStep(page, words.steps.hours);
    expect(await start.inputValue()).toBe(moved);
  });
});

describe('a plain host of files with a certificate, as in docs/onto-the-phone.md', () => {
  let host: StaticHost;
  afterEach(() => host.stop());

  test.each(['/', '/tools/floor/'])('under %s: the app can be installed, and opens in flight mode', async (under) => {
    host = await staticHost({ folder: inject('built'), under, https: true });
    const { page, context } = await arrive(null, {
      viewport: PHONE,
      isMobile: true,
      hasTouch: true,
      ignoreHTTPSErrors: true,
    });
    await page.goto(host.address);
    const devtools = await context.newCDPSession(page);
    const { errors } = await devtools.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    // An incognito window may not install; everything the app itself has to bring is there.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
    await visitedTwice(page);
    await context.setOffline(true);
    await host.stop();
    await page.reload();
    await page.getByRole('link', { name: GARAGE }).tap();
    await planShown(page);
    host = await staticHost({ folder: inject('built') });
  });
});

test('a desk without any host finds what was typed when it comes back', async () => {
  const { page, context } = await arrive(serving.address, { viewport: DESK });
  await visitedTwice(page);
  await openJob(page);
  await context.setOffline(true);
  await page.getByRole('button', { name: words.day.later }).first().click();
  await planShown(page);
  await context.setOffline(false);
  await page.reload();
  await planShown(page);
  expect(await page.getByRole('button', { name: words.undo }).isDisabled()).toBe(true);
});
