import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, GARAGE, kept, planShown, withBrowser } from './app-page.ts';

withBrowser();

/** What has the focus, by role-like name, and whether a person can see that it has. */
const focused = (page: Page): Promise<{ readonly name: string; readonly seen: boolean }> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return { name: '', seen: true };
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(at);
    const name = at.getAttribute('aria-label') ?? at.textContent ?? '';
    return { name: name.trim(), seen: (outlineStyle !== 'none' && outlineWidth !== '0px') || boxShadow !== 'none' };
  });

/** Presses Tab until the focus is on something of this name; every stop on the way must show that it has the focus. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const unseen: string[] = [];
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    if (!now.seen) unseen.push(now.name);
    if (typeof name === 'string' ? now.name.includes(name) : name.test(now.name)) {
      expect(unseen).toEqual([]);
      return;
    }
  }
  throw new Error(`Tab never came to ${String(name)}`);
}

test('the whole way by keyboard alone: a job, its steps, a working and back, a moved start, undo', async () => {
  const { page } = await arrive();
  await page.getByRole('link', { name: GARAGE }).waitFor();
  await tabTo(page, GARAGE);
  await page.keyboard.press('Enter');
  await planShown(page);

  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await tabTo(page, words.skip);
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('facts');

  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await tabTo(page, new RegExp(`^${words.steps.hours}:`));
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: words.steps.hours, exact: true }).waitFor();

  await page.locator('#facts').focus();
  await tabTo(page, /^[\d.,]+$/);
  await page.keyboard.press('Enter');
  const working = page.getByRole('region', { name: words.working.label });
  await working.locator('h2').waitFor();
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('H2');
  await page.keyboard.press('Escape');
  await page.getByRole('region', { name: words.steps.hours, exact: true }).waitFor();

  const flag = page.getByRole('slider').last();
  await flag.focus();
  const before = await flag.getAttribute('aria-valuetext');
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => flag.getAttribute('aria-valuetext')).not.toBe(before);
  await planShown(page);
  await kept(page);
  await page.keyboard.press('Control+z');
  await expect.poll(() => flag.getAttribute('aria-valuetext')).toBe(before);
  // The focus stays on what was moved: the next press moves it again.
  expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('slider');
});
