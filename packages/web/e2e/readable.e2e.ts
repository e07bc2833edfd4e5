import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, DESK, PHONE, planShown, withBrowser } from './app-page.ts';

withBrowser();

const STEPS = [
  'quantities',
  'survey',
  'preparation',
  'system',
  'hours',
  'spread',
  'price',
  'papers',
  'site',
  'acceptance',
  'handover',
  'rates',
] as const;

/** Every screen there is, by its address after the hash; `working` stands for the working of a number. */
const SCREENS = ['/', '/job/none/survey', ...STEPS.map((step) => `/job/example-garage/${step}`), 'working'];

async function show(page: Page, screen: string): Promise<void> {
  if (screen === 'working') {
    await show(page, '/job/example-garage/quantities');
    await page.locator('#facts table a').first().click();
    await page.locator('.working .wb').waitFor();
    return;
  }
  await page.evaluate((hash) => {
    location.hash = hash;
  }, screen);
  if (screen === '/') {
    await page.getByRole('link', { name: words.list.examples }).first().waitFor();
  } else if (screen.includes('/none/')) {
    await page.getByRole('heading', { name: words.absent.title }).waitFor();
  } else {
    const step = screen.split('/').at(-1) as (typeof STEPS)[number];
    await page.getByRole('region', { name: words.steps[step], exact: true }).waitFor();
    if (step === 'quantities') await planShown(page);
    if (step === 'papers') await page.locator('ul.papers li').first().waitFor();
  }
}

interface Broken {
  readonly screen: string;
  readonly rule: string;
  readonly where: readonly string[];
}

async function rulesBroken(page: Page, screen: string, rules?: readonly string[]): Promise<readonly Broken[]> {
  const all = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] });
  const { violations } = await (rules ? all.withRules([...rules]) : all).analyze();
  return violations.map(({ id, nodes }) => ({
    screen,
    rule: id,
    where: nodes.slice(0, 4).map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary ?? ''}`),
  }));
}

const ground = (page: Page, theme: 'sun' | 'night'): Promise<void> =>
  page.evaluate((chosen) => {
    document.documentElement.dataset.theme = chosen === 'night' ? 'night' : '';
  }, theme);

describe.each([
  ['a desk', DESK],
  ['a phone', PHONE],
] as const)('accessibility rules on %s', (_what, viewport) => {
  test('no screen breaks one, on either ground', async () => {
    const { page } = await arrive(inject('app'), { viewport });
    const broken: Broken[] = [];
    for (const screen of SCREENS) {
      await show(page, screen);
      broken.push(...(await rulesBroken(page, screen)));
      // The ground changes colours and nothing else.
      await ground(page, 'night');
      broken.push(...(await rulesBroken(page, `${screen} at night`, ['color-contrast'])));
      await ground(page, 'sun');
    }
    expect(broken).toEqual([]);
  }, 900_000);
});

/** Parts that stick out of the page sideways, so that a person would have to scroll. */
const sticksOut = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const root = document.documentElement;
    // Fractions of a pixel add up to one at most.
    if (root.scrollWidth <= root.clientWidth + 1) return [];
    return [...document.querySelectorAll('body *')]
      .filter((part) => part.getBoundingClientRect().right > root.clientWidth + 1)
      .map((part) => `${part.tagName.toLowerCase()}.${part.getAttribute('class') ?? ''}`)
      .slice(0, 8);
  });

describe.each([
  ['320 pixels wide', { width: 320, height: 640 }, 1],
  ['at 200 % on a desk', { width: DESK.width / 2, height: DESK.height / 2 }, 2],
] as const)('%s', (_what, viewport, deviceScaleFactor) => {
  test('nothing needs sideways scroll, also with the spacing a reader may ask for', async () => {
    const { page } = await arrive(inject('app'), { viewport, deviceScaleFactor });
    const out: (readonly [string, readonly string[]])[] = [];
    for (const screen of SCREENS) {
      await show(page, screen);
      out.push([screen, await sticksOut(page)]);
    }
    // WCAG 2.2, success criterion 1.4.12.
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('* { line-height: 1.5; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }');
      document.adoptedStyleSheets.push(sheet);
    });
    for (const screen of SCREENS) {
      await show(page, screen);
      out.push([`${screen} spaced`, await sticksOut(page)]);
    }
    expect(out.filter(([, parts]) => parts.length > 0)).toEqual([]);
  });
});
