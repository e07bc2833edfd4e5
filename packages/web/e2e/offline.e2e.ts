import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { serve } from '@slabwright/server';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import {
  arrive,
  downloaded,
  GARAGE,
  goToStep,
  kept,
  openJob,
  PHONE,
  planShown,
  startField,
  withBrowser,
} from './app-page.ts';
import { staticHost } from './static-host.ts';

withBrowser();

/** The service worker has taken everything in and answers for this page. */
async function visitedTwice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
}

describe('without the server', () => {
  test('after the second visit the whole job works: plan, change, papers as PDF, and the change is there again', async () => {
    const data = mkdtempSync(join(tmpdir(), 'slabwright-offline-'));
    const serving = await serve({ data, port: 0, web: inject('built'), log: (line) => process.stderr.write(line) });
    const { page } = await arrive(serving.address);
    await visitedTwice(page);
    await serving.stop();
    rmSync(data, { recursive: true });

    await page.reload();
    await openJob(page);
    const before = await startField(page).inputValue();
    await page.getByRole('button', { name: words.day.later }).first().click();
    await expect.poll(() => startField(page).inputValue()).not.toBe(before);
    const moved = await startField(page).inputValue();
    await kept(page);

    await goToStep(page, words.steps.papers);
    const button = page.getByRole('button', { name: `${words.papers.download} ${words.papers.kinds['buying-list']}` });
    const bytes = await downloaded(page, button);
    expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(bytes.subarray(-8).toString('latin1')).toContain('%%EOF');

    await page.reload();
    await expect.poll(() => startField(page).inputValue()).toBe(moved);
  });
});

describe('a plain host of files with a certificate, as in docs/onto-the-phone.md', () => {
  test.each(['/', '/tools/floor/'])('under %s the app can be installed, and opens in flight mode', async (under) => {
    const host = await staticHost({ folder: inject('built'), under, certificate: inject('certificate') });
    const { page, context } = await arrive(host.address, { viewport: PHONE, isMobile: true, hasTouch: true });
    const devtools = await context.newCDPSession(page);
    expect((await devtools.send('Page.getAppManifest')).errors).toEqual([]);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    // A private window, as tests use, may not install; everything the app itself has to bring is there.
    expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual([]);
    await visitedTwice(page);
    await context.setOffline(true);
    await host.stop();
    await page.reload();
    await page.getByRole('link', { name: GARAGE }).tap();
    await planShown(page);
  });
});
