import { expect, test } from 'vitest';
import { words as draw } from '../src/draw/words.ts';
import { newWords } from '../src/edit/new-words.ts';
import { words as edit } from '../src/edit/words.ts';
import { words } from '../src/words.ts';
import { arrive, downloaded, kept, planShown, withBrowser, workingShown } from './app-page.ts';
import { choose, pressAt, tabTo, typeInto } from './keys.ts';
import { AREA, WALLS } from './l-shape.ts';

withBrowser();

/** With the last wall but one drawn to 7 ft: 20 by 10 ft and 12 by 7 ft (own arithmetic). */
const HIGHER = '284 ft²';

test('a whole job by keyboard alone: an L drawn, planned, a working down to its reading, a paper, no network, a change, back', async () => {
  const { page, context } = await arrive();
  await page.getByRole('link', { name: words.list.examples }).first().waitFor();
  const steps = page.getByRole('navigation', { name: words.steps.nav });

  // The job.
  await pressAt(page, edit.newJob);
  await page.getByRole('button', { name: newWords.start }).and(page.locator(':enabled')).waitFor();
  await typeInto(page, newWords.name, 'Workshop in Halden');
  await typeInto(page, newWords.zone, 'America/Denver');
  await choose(page, newWords.units, 'imperial');
  await choose(page, newWords.catalogue, 'example-garage');
  await pressAt(page, newWords.start);
  await page.getByRole('heading', { name: draw.corners }).waitFor();

  // The floor.
  await pressAt(page, draw.first);
  for (const [way, length] of WALLS) {
    await typeInto(page, draw.length, length);
    await pressAt(page, draw.directions[way]);
  }
  await steps.getByText(AREA).waitFor();

  // A system on it, with people to lay it.
  await pressAt(page, new RegExp(`^${words.steps.system}:`));
  await page.getByRole('region', { name: words.steps.system, exact: true }).waitFor();
  await pressAt(page, edit.chooseOptions);
  await page.getByRole('button', { name: edit.add('an option') }).waitFor();
  await pressAt(page, edit.add('an option'));
  await choose(page, /^System$/, 'flake-one-day');
  await tabTo(page, /^Floor$/);
  await page.keyboard.press('Space');

  // The number of the plan, and what it stands on.
  await pressAt(page, new RegExp(`^${words.steps.quantities}:`));
  await page.getByRole('region', { name: words.steps.quantities, exact: true }).waitFor();
  await planShown(page);
  await page.locator('#facts').focus();
  await pressAt(page, /^[\d.,]+ ?\S*$/);
  const working = page.locator('.working');
  await workingShown(page);
  const given = working.getByRole('heading', { name: words.working.from, exact: true });
  for (let depth = 0; depth < 12 && !(await given.isVisible()); depth++) {
    const next = working.locator('.tree li.in a, .tree li a').first();
    const name = ((await next.getAttribute('aria-label')) ?? (await next.textContent()) ?? '').trim();
    const before = page.url();
    await tabTo(page, name);
    await page.keyboard.press('Enter');
    await page.waitForFunction((url) => location.href !== url, before);
    await workingShown(page);
  }
  await given.waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('region', { name: words.steps.quantities, exact: true }).waitFor();

  // A paper.
  await pressAt(page, new RegExp(`^${words.steps.papers}:`));
  await page.locator('ul.papers li').first().waitFor();
  await tabTo(page, `${words.papers.download} ${words.papers.kinds['buying-list']}`);
  const bytes = await downloaded(page, page.locator('button:focus'));
  expect(bytes.subarray(0, 5).toString('latin1')).toBe('%PDF-');

  // No network.
  await kept(page);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await context.setOffline(true);
  await page.reload();
  await steps.getByText(AREA).waitFor();
  await pressAt(page, new RegExp(`^${words.steps.survey}:`));
  await page.getByRole('region', { name: words.steps.survey, exact: true }).waitFor();
  await pressAt(page, edit.draw);
  await page.getByRole('heading', { name: draw.corners }).waitFor();
  for (const corner of [5, 6]) {
    await typeInto(page, draw.y(corner), '17 ft');
    await page.keyboard.press('Enter');
  }
  await steps.getByText(HIGHER).waitFor();
  await kept(page);

  // And back.
  await context.setOffline(false);
  await page.reload();
  await steps.getByText(HIGHER).waitFor();
}, 300_000);
