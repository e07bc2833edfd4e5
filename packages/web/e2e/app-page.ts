import { buffer } from 'node:stream/consumers';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { words } from '../src/words.ts';

/** A browser for the tests of one file, and a fresh person at it for each of them. */

let browser: Browser;
const opened: { readonly context: BrowserContext; readonly heard: string[] }[] = [];

export function withBrowser(): void {
  beforeAll(async () => {
    browser = await chromium.connect(inject('browser'));
  });
  afterEach(async () => {
    const troubles: string[] = [];
    for (const { context, heard } of opened.splice(0)) {
      troubles.push(...heard);
      await context.close();
    }
    expect(troubles).toEqual([]);
  });
  afterAll(() => browser.close());
}

export interface Person {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the browser complained about; the test fails unless this is emptied or says so. */
  readonly heard: string[];
}

export const DESK = { width: 1280, height: 900 };
export const PHONE = { width: 390, height: 844 };

/** Opens a window of its own with nothing stored, at the app's first screen unless told otherwise. */
export async function arrive(
  address: string | null = inject('app'),
  options: BrowserContextOptions = {},
): Promise<Person> {
  const context = await browser.newContext({ viewport: DESK, locale: 'en-US', acceptDownloads: true, ...options });
  context.setDefaultTimeout(60_000);
  const heard: string[] = [];
  context.on('weberror', (trouble) => heard.push(String(trouble.error())));
  context.on('console', (message) => {
    if (message.type() === 'error') heard.push(`${message.text()} (${message.location().url})`);
  });
  opened.push({ context, heard });
  const page = await context.newPage();
  if (address !== null) await page.goto(address);
  return { context, page, heard };
}

export const GARAGE = 'Two-car garage, one day';

/** Opens an example from the list and waits for its plan. */
export async function openJob(page: Page, title: string = GARAGE): Promise<void> {
  await page.getByRole('link', { name: title }).click();
  await planShown(page);
}

/** The plan is there and not older than what was typed. */
export async function planShown(page: Page): Promise<void> {
  await page.locator('main.sheet:not(.stale) #facts table').first().waitFor();
}

/** The working of the number in the address is there. */
export async function workingShown(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const panel = document.querySelector<HTMLElement>('.working:not([aria-busy])');
    return panel?.dataset.entry === decodeURIComponent(location.hash.split('/working/')[1] ?? '');
  });
}

export const stepLink = (page: Page, title: string) =>
  page.getByRole('navigation', { name: words.steps.nav }).getByRole('link', { name: new RegExp(`^${title}:`) });

export async function goToStep(page: Page, title: string): Promise<void> {
  await stepLink(page, title).click();
  await page.getByRole('region', { name: title, exact: true }).waitFor();
}

/** Until the header says that what was typed is kept. */
export async function kept(page: Page): Promise<void> {
  await page.getByRole('status').filter({ hasText: words.kept.here }).first().waitFor();
}

/** The field in which the start of the coat looked at is typed. */
export const startField = (page: Page) => page.locator('.start:visible input').first();

/** Presses something and gives the bytes of the file the browser is handed. */
export async function downloaded(page: Page, press: Locator): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), press.click()]);
  return buffer(await download.createReadStream());
}
