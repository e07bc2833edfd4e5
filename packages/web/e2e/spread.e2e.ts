import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { words as compare } from '../src/compare/words.ts';
import { words as spread } from '../src/spread/words.ts';
import { words } from '../src/words.ts';
import { arrive, DESK, goToStep, openJob, planShown, stepLink, withBrowser } from './app-page.ts';

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

/** The floor on the sheet, not the small one of the strip. */
const sheetOf = (page: Page) => page.locator('section.floor svg').first();

test('pours drawn on the floor are judged, and put away the plan is as it was', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.locator('.batches').waitFor();
  const judged = facts.locator('.drawn-pours .judged');

  await facts.getByRole('button', { name: spread.drawn.begin }).click();
  const sheet = await page.locator('section.floor .draw-sheet').boundingBox();
  if (!sheet) throw new Error('no sheet to draw on');
  const tap = (x: number, y: number) => page.mouse.click(sheet.x + sheet.width * x, sheet.y + sheet.height * y);
  // The far half, then the near half and a piece of the far one once more; both reach over the walls.
  for (const [x, y] of [
    [0.1, 0.04],
    [0.69, 0.04],
    [0.69, 0.55],
    [0.1, 0.55],
    [0.1, 0.045],
  ] as const)
    await tap(x, y);
  await facts.getByText(spread.drawn.corners(4)).waitFor();
  for (const [x, y] of [
    [0.1, 0.42],
    [0.69, 0.42],
    [0.69, 0.95],
    [0.1, 0.95],
  ] as const)
    await tap(x, y);
  await facts.getByRole('button', { name: spread.drawn.close }).click();
  await facts.getByRole('button', { name: spread.drawn.judge }).click();
  await judged.getByText(/^Pour 2 lies .* over pour 1\.$/).waitFor();

  // A corner can be typed instead of tapped; a pour taken away leaves its floor bare.
  await facts.locator('.drawn-list summary').first().click();
  const corner = facts.getByLabel(spread.drawn.corner(spread.pour(1), 1, spread.lines.across));
  await corner.fill('-1 ft');
  await corner.press('Enter');
  await judged.waitFor({ state: 'detached' });
  await facts.getByRole('button', { name: spread.drawn.remove(spread.pour(2)) }).click();
  await facts.getByRole('button', { name: spread.drawn.judge }).click();
  await judged.getByText(/of floor is in no pour/).waitFor();
  await facts.getByRole('button', { name: spread.drawn.done }).click();
  await page.locator('section.floor .draw-sheet').waitFor({ state: 'detached' });
  await facts.locator('.batches').waitFor();

  // Begun with the planned pours, nothing moved: the plan's own order holds. The first two swapped, it does not.
  await facts.getByRole('button', { name: spread.drawn.fromPlan }).click();
  await facts.getByRole('button', { name: spread.drawn.judge }).click();
  await judged.getByText(spread.drawn.good).waitFor();
  await facts.getByRole('button', { name: spread.drawn.down(spread.pour(1)) }).click();
  await judged.waitFor({ state: 'detached' });
  await facts.getByRole('button', { name: spread.drawn.judge }).click();
  await judged.getByText(/^These pours break/).waitFor();
});

/** The garage and a room behind its house door, taped from a corner of its own. */
function withRoom(): Buffer {
  const file = (name: string) =>
    JSON.parse(readFileSync(new URL(`../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));
  const job = file('job');
  job.id = 'garage-and-room';
  job.title = 'Garage and room';
  const corners = [
    [0, 0],
    [10, 0],
    [10, 12],
    [0, 12],
  ].map((corner) => corner.map((feet) => `${feet} ft`));
  job.areas.push({ id: 'room', name: 'Room behind', outline: corners });
  for (const option of job.options) option.areas = ['main', 'room'];
  job.doors = [
    {
      id: 'between',
      name: 'house door',
      wall: '6 in',
      sides: [
        { area: 'main', from: ['20 ft', '14 ft'], to: ['20 ft', '17 ft'] },
        { area: 'room', from: ['5 ft', '0 ft'], to: ['8 ft', '0 ft'] },
      ],
    },
  ];
  job.areas[0].exits.splice(1, 1);
  return Buffer.from(JSON.stringify(job));
}

test('rooms that a door joins are spread as one floor; the door shut, they are two', async () => {
  const { page } = await arrive();
  await page.getByRole('link', { name: words.list.examples }).first().waitFor();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer: withRoom() });
  await planShown(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.locator('.batches').waitFor();
  expect(await sheetOf(page).getAttribute('aria-label')).toContain('Garage floor, Room behind');
  // One coat for both rooms together.
  expect(await facts.locator('.coat-choice label').count()).toBe(2);

  await facts.getByRole('button', { name: spread.doors.doShut('house door') }).click();
  await facts.locator('.coat-choice label').nth(3).waitFor();
  await facts.getByRole('button', { name: spread.doors.doOpen('house door') }).click();
  await facts.locator('.coat-choice label').nth(3).waitFor({ state: 'detached' });
});

test('a way out is dragged along the walls, and moved back without a pointer', async () => {
  const { page } = await arrive(undefined, { viewport: DESK });
  await openJob(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.locator('.batches').waitFor();
  const handle = page.locator('section.floor .door-handle').first();
  const before = await handle.boundingBox();
  if (!before) throw new Error('no handle');
  const [x, y] = [before.x + before.width / 2, before.y + before.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x - 400, y - 200, { steps: 4 });
  await page.mouse.up();
  // The wide door now stands in the left wall.
  await expect.poll(async () => (await handle.boundingBox())?.x ?? x).toBeLessThan(before.x - 100);
  await planShown(page);
  const moved = (await handle.boundingBox())?.y ?? 0;
  await facts.getByRole('button', { name: spread.doors.less('overhead door') }).click();
  await expect.poll(async () => Math.abs(((await handle.boundingBox())?.y ?? moved) - moved)).toBeGreaterThan(2);
});

test('a longer look says how far it is, can be stopped, and leaves the pours', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.spread);
  const facts = page.getByRole('region', { name: words.steps.spread, exact: true });
  await facts.locator('.batches').waitFor();
  await facts.getByRole('button', { name: spread.search.longer }).click();
  await facts.locator('.search-told progress').waitFor();
  await facts.getByRole('button', { name: spread.search.stop }).click();
  await facts.locator('.search-told progress').waitFor({ state: 'detached' });
  expect(await facts.locator('.batches li').count()).toBeGreaterThan(1);
  await facts.getByRole('button', { name: spread.own.judge }).click();
  await facts.getByText(spread.own.good).waitFor();
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
