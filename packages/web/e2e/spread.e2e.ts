import { expect, test } from 'vitest';
import { words as compare } from '../src/compare/words.ts';
import { words as spread } from '../src/spread/words.ts';
import { words } from '../src/words.ts';
import { arrive, goToStep, openJob, stepLink, withBrowser } from './app-page.ts';

withBrowser();

test('the pours stand on the floor, their day plays, and a door shut replans them', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.getByRole('heading', { name: spread.table.title }).waitFor();
  expect(await facts.locator('.batches li').count()).toBeGreaterThan(1);

  await facts.getByRole('button', { name: spread.play.after, exact: true }).click();
  await facts.getByText(spread.play.spreading(1)).waitFor();
  const time = facts.getByLabel(spread.play.time, { exact: true });
  await time.fill('07:00');
  await time.press('Enter');
  await facts.getByRole('alert').waitFor();
  await facts.getByRole('button', { name: spread.play.whole }).click();

  await facts.getByRole('button', { name: spread.doors.doShut('overhead door') }).click();
  await facts.locator('.batches').waitFor({ state: 'detached' });
  expect(await stepLink(page, words.steps.spread).getAttribute('aria-label')).toContain(words.verdict['not known']);
  await facts.getByRole('button', { name: spread.doors.doOpen('overhead door') }).click();
  await facts.locator('.batches').waitFor();
});

test('an order of one’s own is judged, and a tape line replans the pours', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.getByRole('button', { name: spread.own.judge }).click();
  await facts.getByText(spread.own.good).waitFor();
  await facts.getByRole('button', { name: spread.own.down(1), exact: true }).click();
  await facts.getByRole('button', { name: spread.own.judge }).click();
  await facts.locator('.judged li').first().waitFor();

  await facts.getByRole('button', { name: spread.lines.add }).click();
  const place = facts.getByRole('textbox', {
    name: `${spread.lines.end(spread.lines.tape(1), spread.lines.from)}, ${spread.lines.up}`,
  });
  await place.fill('9 ft');
  await place.press('Enter');
  await facts.getByRole('button', { name: spread.lines.remove(spread.lines.tape(1)) }).click();
  await place.waitFor({ state: 'detached' });
});

test('systems stand like for like, and those that do not fit say what would admit them', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.system);
  await page.getByRole('button', { name: compare.open }).click();
  await page.getByRole('columnheader', { name: compare.title }).waitFor();
  await page.getByRole('heading', { name: compare.weak }).waitFor();
  expect(await page.getByText(compare.admit).count()).toBeGreaterThan(0);
  expect(await page.locator('.links .weakest').count()).toBe(1);
});
