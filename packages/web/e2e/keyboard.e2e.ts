import { expect, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, GARAGE, kept, planShown, withBrowser } from './app-page.ts';
import { tabTo } from './keys.ts';

withBrowser();

test('a finished job by keyboard alone: its steps, a working and back, a moved start, undo', async () => {
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
