import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { arrive } from './app-page.ts';
import { SCREENS, type Screen } from './screens.ts';

/** What every screen must keep: the accessibility rules on both grounds, no sideways scroll, room for a thumb. */

type Broken = readonly [screen: string, rule: string, where: readonly string[]];

/** The rules are put into the page once; going from screen to screen by the address keeps them there. */
async function withRules(page: Page): Promise<void> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
}

async function rulesBroken(page: Page, screen: string): Promise<readonly Broken[]> {
  await withRules(page);
  const found = await page.evaluate(async () => {
    const { run } = (window as unknown as { axe: typeof axe }).axe;
    const told = async (options: Parameters<typeof run>[1]) =>
      (await run(document, { resultTypes: ['violations'], ...options })).violations.map(
        ({ id, nodes }) =>
          [id, nodes.slice(0, 4).map(({ html, failureSummary }) => `${html.slice(0, 160)} ${failureSummary}`)] as const,
      );
    const { dataset } = document.documentElement;
    dataset.theme = 'sun';
    const sun = await told({});
    // The ground changes colours and nothing else.
    dataset.theme = 'night';
    const night = await told({ runOnly: ['color-contrast'] });
    dataset.theme = 'sun';
    return [...sun, ...night.map(([id, where]) => [`${id} at night`, where] as const)];
  });
  return found.map(([rule, where]) => [screen, rule, where]);
}

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

/** The spacing a reader may ask for: WCAG 2.2, success criterion 1.4.12. */
const spaced = (page: Page, on: boolean): Promise<void> =>
  page.evaluate((wanted) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('* { line-height: 1.5; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }');
    document.adoptedStyleSheets = wanted ? [sheet] : [];
  }, on);

/** Controls of the forms that are lower than a thumb needs: 44 px. */
const low = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        '.entering button, .entering select, .entering input:not([type=radio]):not([type=checkbox]):not(.unseen), .pages button, .pages select',
      ),
    ]
      .filter((one) => one.offsetParent !== null && one.getBoundingClientRect().height < 43.5)
      .map((one) => one.outerHTML.slice(0, 120)),
  );

interface Sight {
  readonly viewport: { readonly width: number; readonly height: number };
  readonly deviceScaleFactor?: number;
}

async function onEvery(sight: Sight, look: (page: Page, screen: Screen) => Promise<readonly Broken[]>): Promise<void> {
  const { page } = await arrive(inject('app'), sight);
  const broken: Broken[] = [];
  for (const screen of SCREENS) {
    await screen.show(page);
    broken.push(...(await look(page, screen)));
  }
  expect(broken).toEqual([]);
}

const LONG = 900_000;

export function testRules(what: string, sight: Sight): void {
  test(
    `no screen breaks an accessibility rule on ${what}, on either ground`,
    () => onEvery(sight, (page, { name }) => rulesBroken(page, name)),
    LONG,
  );
}

export function testRoom(what: string, sight: Sight): void {
  test(
    `nothing needs sideways scroll ${what}, also with wider spacing, and every control of a form is high enough`,
    () =>
      onEvery(sight, async (page, { name }) => {
        const plain = await sticksOut(page);
        const tooLow = await low(page);
        await spaced(page, true);
        const wide = await sticksOut(page);
        await spaced(page, false);
        const found: Broken[] = [
          [name, 'sideways', plain],
          [name, 'sideways when spaced', wide],
          [name, 'low', tooLow],
        ];
        return found.filter(([, , where]) => where.length > 0);
      }),
    LONG,
  );
}
