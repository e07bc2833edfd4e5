import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, DESK, PHONE, planShown, withBrowser } from './app-page.ts';

withBrowser();

const STEPS = [
  'survey',
  'preparation',
  'system',
  'quantities',
  'hours',
  'spread',
  'price',
  'papers',
  'site',
  'acceptance',
  'handover',
  'rates',
] as const;

/** Every screen there is, by its address after the hash. */
const SCREENS = ['/', '/job/none/survey', ...STEPS.map((step) => `/job/example-garage/${step}`)];

async function show(page: Page, screen: string): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, screen);
  if (screen === '/') await page.getByRole('heading', { name: words.list.title }).waitFor();
  else if (screen.includes('/none/')) await page.getByRole('heading', { name: words.absent.title }).waitFor();
  else {
    const step = screen.split('/').at(-1) as (typeof STEPS)[number];
    await page.getByRole('region', { name: words.steps[step], exact: true }).waitFor();
    await page.locator('main.sheet:not(.stale) #facts > *').last().waitFor();
  }
}

/** Opens the working of the first number of the step that has one. */
async function openWorking(page: Page): Promise<void> {
  await show(page, '/job/example-garage/quantities');
  await planShown(page);
  await page.locator('#facts table a').first().click();
  await page.locator('.working .wb').waitFor();
}

interface Broken {
  readonly screen: string;
  readonly rule: string;
  readonly where: readonly string[];
}

async function rulesBroken(page: Page, screen: string): Promise<readonly Broken[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.map(({ id, nodes }) => ({
    screen,
    rule: id,
    where: nodes.map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary ?? ''}`),
  }));
}

describe.each([
  ['sun', DESK],
  ['night', DESK],
  ['sun', PHONE],
  ['night', PHONE],
] as const)('accessibility rules, %s, %o', (theme, viewport) => {
  test('no screen breaks one', async () => {
    const { page, context } = await arrive(null, { viewport });
    await context.addInitScript((chosen) => {
      localStorage.setItem('slabwright.preferences', JSON.stringify({ theme: chosen }));
    }, theme);
    await page.goto(inject('app'));
    const broken: Broken[] = [];
    for (const screen of SCREENS) {
      await show(page, screen);
      broken.push(...(await rulesBroken(page, screen)));
    }
    await openWorking(page);
    broken.push(...(await rulesBroken(page, 'working')));
    expect(broken).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.dataset.theme ?? '')).toBe(
      theme === 'night' ? 'night' : '',
    );
  });
});

/** Parts that stick out of the page sideways, so that a person would have to scroll. */
const sticksOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const root = document.documentElement;
    if (root.scrollWidth <= root.clientWidth) return [];
    return [...document.querySelectorAll('body *')]
      .filter((part) => part.getBoundingClientRect().right > root.clientWidth + 1)
      .map((part) => `${part.tagName.toLowerCase()}.${part.getAttribute('class') ?? ''}`)
      .slice(0, 8);
  });

describe.each([
  ['320 pixels wide', { width: 320, height: 640 }, 1],
  ['at 200 % on a desk', { width: DESK.width / 2, height: DESK.height / 2 }, 2],
  ['at 400 % on a desk', { width: 320, height: 256 }, 4],
] as const)('%s', (_what, viewport, deviceScaleFactor) => {
  test('nothing needs sideways scroll', async () => {
    const { page } = await arrive(inject('app'), { viewport, deviceScaleFactor });
    const out: [string, readonly string[]][] = [];
    for (const screen of SCREENS) {
      await show(page, screen);
      out.push([screen, await sticksOut(page)]);
    }
    await openWorking(page);
    out.push(['working', await sticksOut(page)]);
    expect(out.filter(([, parts]) => parts.length > 0)).toEqual([]);
  });
});

test('letters twice as large, as a browser can be told: nothing is cut off sideways', async () => {
  const { page } = await arrive(inject('app'), { viewport: PHONE });
  for (const screen of SCREENS) {
    await show(page, screen);
    // WCAG 2.2, 1.4.12: spacing a reader may set for themselves.
    await page
      .addStyleTag({
        url: `data:text/css,${encodeURIComponent('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }')}`,
      })
      .catch(() => undefined);
    expect([screen, await sticksOut(page)]).toEqual([screen, []]);
  }
});
