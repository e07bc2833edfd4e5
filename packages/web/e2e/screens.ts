import type { Page } from 'playwright-core';
import { words as compare } from '../src/compare/words.ts';
import { CATALOGUE_SECTIONS } from '../src/edit/catalogue-sections.ts';
import { OPTIONS } from '../src/edit/option-section.ts';
import { SURVEY_SECTIONS } from '../src/edit/survey-sections.ts';
import { STEP_IDS, type StepId } from '../src/steps/step.ts';
import { words } from '../src/words.ts';
import { planShown } from './app-page.ts';

/** Every screen of the app, and how to come to it. */
export interface Screen {
  readonly name: string;
  show(page: Page): Promise<void>;
}

async function go(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
}

const GARAGE = '/job/example-garage';

async function step(page: Page, id: StepId): Promise<void> {
  await go(page, `${GARAGE}/${id}`);
  await page.getByRole('region', { name: words.steps[id], exact: true }).waitFor();
  if (id === 'quantities' || id === 'hours') await planShown(page);
  if (id === 'papers') await page.locator('ul.papers li').first().waitFor();
  if (id === 'spread') await page.locator('#facts .batches li').first().waitFor();
}

/** Where something is entered; the first item of a list stands open, so that its fields are looked at too. */
async function entering(page: Page, hash: string): Promise<void> {
  await go(page, hash);
  await page.waitForFunction((to) => location.hash === `#${to}`, hash);
  await page.locator('main:not([aria-busy]) .fields, main:not([aria-busy]) .entering').first().waitFor();
  const item = page.locator('.list .item').first();
  if ((await item.count()) > 0 && (await item.getAttribute('aria-expanded')) === 'false') await item.click();
}

const PARTS = ['floor', ...SURVEY_SECTIONS.map(({ id }) => id), 'goods', OPTIONS.id];

export const SCREENS: readonly Screen[] = [
  {
    name: 'the list of jobs',
    async show(page) {
      await go(page, '/');
      await page.getByRole('link', { name: words.list.examples }).first().waitFor();
    },
  },
  {
    name: 'a job that is not here',
    async show(page) {
      await go(page, '/job/none/survey');
      await page.getByRole('heading', { name: words.absent.title }).waitFor();
    },
  },
  ...STEP_IDS.map((id): Screen => ({ name: `step ${id}`, show: (page) => step(page, id) })),
  {
    name: 'the working of a number',
    async show(page) {
      await step(page, 'quantities');
      await page.locator('#facts table a').first().click();
      await page.locator('.working .wb').waitFor();
    },
  },
  {
    name: 'systems like for like',
    async show(page) {
      await step(page, 'system');
      await page.getByRole('button', { name: compare.open }).click();
      await page.getByRole('columnheader', { name: compare.title }).waitFor();
    },
  },
  { name: 'a new job', show: (page) => entering(page, '/new') },
  ...PARTS.map(
    (part): Screen => ({ name: `entering ${part}`, show: (page) => entering(page, `${GARAGE}/survey/enter/${part}`) }),
  ),
  { name: 'entering weather', show: (page) => entering(page, `${GARAGE}/hours/enter/weather`) },
  ...CATALOGUE_SECTIONS.map(
    ({ id }): Screen => ({
      name: `catalogue ${id}`,
      show: (page) => entering(page, `/catalogue/example-garage/${id}`),
    }),
  ),
  { name: 'prices', show: (page) => entering(page, '/prices/example-garage') },
];
