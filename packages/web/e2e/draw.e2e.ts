import type { Page } from 'playwright-core';
import { expect, inject, test } from 'vitest';
import { words as draw } from '../src/draw/words.ts';
import { words } from '../src/words.ts';
import { arrive, kept, withBrowser } from './app-page.ts';

withBrowser();

const EMPTY_ROOM = {
  schema: 'slabwright.job/1',
  id: 'drawn',
  title: 'A room to draw',
  place: { zone: 'Europe/Dublin' },
  reader: { units: 'metric', paper: 'a4' },
  areas: [{ id: 'main', name: 'Room' }],
  survey: {},
  options: [],
};

/** Opens a job whose room nobody has drawn yet, at its drawing. */
async function openEmptyRoom(): Promise<Page> {
  const { page } = await arrive();
  await page.getByRole('link', { name: words.list.examples }).first().waitFor();
  const buffer = Buffer.from(JSON.stringify(EMPTY_ROOM));
  const file = { name: 'room.json', mimeType: 'application/json', buffer };
  await page.locator('input[type=file]').first().setInputFiles(file);
  await page.getByRole('heading', { name: EMPTY_ROOM.title }).waitFor();
  await page.goto(`${inject('app')}#/job/drawn/survey/enter/floor`);
  await page.getByRole('application', { name: draw.label }).waitFor();
  return page;
}

/** Corners in metres as the table beside the drawing has them. */
const corners = (page: Page): Promise<readonly (readonly [number, number])[]> =>
  page.locator('.corners ol > li').evaluateAll((rows) =>
    rows.map((row) => {
      const [x, y] = [...row.querySelectorAll('input')].map((field) => Number.parseFloat(field.value));
      return [x ?? Number.NaN, y ?? Number.NaN] as const;
    }),
  );

function areaOf(ring: readonly (readonly [number, number])[]): number {
  const twice = ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

/** The survey has taken the room: its floor is a number with a working. */
async function surveyedFloor(page: Page): Promise<string> {
  await kept(page);
  await page.goto(`${inject('app')}#/job/drawn/survey`);
  const row = page.locator('#facts tr', { has: page.getByRole('rowheader', { name: words.survey.total }) }).first();
  await row.waitFor();
  return (await row.textContent()) ?? '';
}

test('an L-shaped room by keyboard alone, walls typed as a tape reads them', async () => {
  const page = await openEmptyRoom();
  await page.getByRole('button', { name: draw.first }).focus();
  await page.keyboard.press('Enter');
  const walls = [
    ['8 m', draw.directions.right],
    ['3 m', draw.directions.up],
    ['3 m', draw.directions.left],
    ['300 cm', draw.directions.up],
    ['5 m', draw.directions.left],
  ] as const;
  for (const [index, [length, way]] of walls.entries()) {
    await page.getByRole('textbox', { name: draw.length }).focus();
    await page.keyboard.type(length);
    await page.getByRole('button', { name: way }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await corners(page)).length).toBe(index + 2);
  }
  // Own arithmetic: 8 by 3 and 5 by 3 metres.
  expect(areaOf(await corners(page))).toBeCloseTo(39, 6);
  expect(await surveyedFloor(page)).toContain('39');
});

test('the same room by arrow keys on the drawing', async () => {
  const page = await openEmptyRoom();
  await page.getByRole('textbox', { name: draw.step }).fill('1 m');
  const floor = page.getByRole('application', { name: draw.label });
  await floor.focus();
  const go = async (key: string, times: number): Promise<void> => {
    for (let n = 0; n < times; n++) await page.keyboard.press(key);
    await page.keyboard.press('Enter');
  };
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await corners(page)).length).toBe(1);
  const ways = [
    ['ArrowRight', 8],
    ['ArrowUp', 3],
    ['ArrowLeft', 3],
    ['ArrowUp', 3],
    ['ArrowLeft', 5],
  ] as const;
  for (const [index, [key, times]] of ways.entries()) {
    await go(key, times);
    await expect.poll(async () => (await corners(page)).length).toBe(index + 2);
  }
  expect(areaOf(await corners(page))).toBeCloseTo(39, 6);
});

test('an L-shaped room by hand: six presses, square corners', async () => {
  const page = await openEmptyRoom();
  const floor = page.getByRole('application', { name: draw.label });
  const box = await floor.boundingBox();
  if (!box) throw new Error('the floor to draw on is not there');
  const at = (x: number, y: number) => ({ x: box.x + box.width * x, y: box.y + box.height * y });
  // Each press is a few pixels off square, as a hand is.
  const presses = [at(0.2, 0.8), at(0.8, 0.81), at(0.805, 0.5), at(0.5, 0.505), at(0.495, 0.2), at(0.2, 0.205)];
  for (const [index, { x, y }] of presses.entries()) {
    await page.mouse.click(x, y);
    await expect.poll(async () => (await corners(page)).length).toBe(index + 1);
  }
  const ring = await corners(page);
  for (const [i, [x, y]] of ring.entries()) {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    expect([x === nextX || y === nextY, ring]).toEqual([true, ring]);
  }
  expect(areaOf(ring)).toBeGreaterThan(1);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await corners(page)).length).toBe(5);
});
