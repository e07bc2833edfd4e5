import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words as draw } from '../src/draw/words.ts';
import { newWords } from '../src/edit/new-words.ts';
import { words as edit } from '../src/edit/words.ts';
import { words } from '../src/words.ts';
import { arrive, kept, withBrowser } from './app-page.ts';
import { AREA, WALLS } from './l-shape.ts';

withBrowser();

async function newJob(page: Page): Promise<void> {
  await page.getByRole('link', { name: edit.newJob }).click();
  await page.getByLabel(newWords.name).fill('Workshop in Halden');
  await page.getByLabel(newWords.zone).fill('America/Denver');
  await page.getByLabel(newWords.units).selectOption('imperial');
  await page.getByRole('button', { name: newWords.start }).press('Enter');
  await page.getByRole('heading', { name: draw.corners }).waitFor();
}

/** The survey answers with the area once the plan has caught up. */
async function planned(page: Page): Promise<void> {
  await page.getByRole('navigation', { name: words.steps.nav }).getByText(AREA).waitFor();
}

const sheet = (page: Page) => page.getByRole('application', { name: draw.label });

describe('an L-shaped room', () => {
  test('drawn by keyboard alone and planned', async () => {
    const { page } = await arrive();
    await newJob(page);
    await page.getByRole('button', { name: draw.first }).press('Enter');
    for (const [way, length] of WALLS) {
      await page.getByLabel(draw.length).focus();
      await page.keyboard.type(length);
      await page.getByRole('button', { name: draw.directions[way] }).press('Enter');
    }
    await planned(page);
    expect(await page.getByRole('textbox', { name: draw.x(4), exact: true }).inputValue()).toBe('12 ft');
    // Undo takes back the last wall, redo brings it again.
    await page.getByRole('button', { name: words.undo, exact: true }).press('Enter');
    await page.getByRole('textbox', { name: draw.x(6), exact: true }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: words.redo, exact: true }).press('Enter');
    await planned(page);
    await kept(page);
    await page.reload();
    await planned(page);
  });

  test('drawn by mouse with lengths typed, and planned', async () => {
    const { page } = await arrive();
    await newJob(page);
    const box = await sheet(page).boundingBox();
    if (!box) throw new Error('there is no drawing');
    let [x, y] = [box.width * 0.2, box.height * 0.8];
    await sheet(page).click({ position: { x, y } });
    await page.getByRole('textbox', { name: draw.x(1), exact: true }).waitFor();
    const ways = { right: [60, 0], up: [0, -60], left: [-60, 0], down: [0, 60] } as const;
    let corner = 1;
    for (const [way, length] of WALLS) {
      await page.getByLabel(draw.length).fill(length);
      const handle = page.getByRole('button', { name: new RegExp(`^Corner ${corner},`) });
      const at = await handle.boundingBox();
      if (!at) throw new Error(`corner ${corner} is not drawn`);
      [x, y] = [at.x + at.width / 2 - box.x + ways[way][0], at.y + at.height / 2 - box.y + ways[way][1]];
      await sheet(page).click({ position: { x, y } });
      corner += 1;
      await page.getByRole('textbox', { name: draw.x(corner), exact: true }).waitFor();
    }
    await planned(page);
  });

  test('a corner is moved by hand, by arrow keys and by typing', async () => {
    const { page } = await arrive(`${inject('app')}#/job/example-garage/survey/enter/floor`);
    const field = page.getByRole('textbox', { name: draw.x(3), exact: true });
    await field.waitFor();
    const corner = page.getByRole('button', { name: /^Corner 3,/ });
    await corner.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => field.inputValue()).toBe('20 ft 6 in');
    await page.getByRole('button', { name: words.undo, exact: true }).click();
    await expect.poll(() => field.inputValue()).toBe('20 ft');
    const at = await corner.boundingBox();
    if (!at) throw new Error('corner 3 is not drawn');
    await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
    await page.mouse.down();
    await page.mouse.move(at.x + at.width / 2 + 60, at.y + at.height / 2, { steps: 4 });
    await page.mouse.up();
    await expect.poll(() => field.inputValue()).not.toBe('20 ft');
    await page.getByRole('button', { name: words.undo, exact: true }).click();
    await expect.poll(() => field.inputValue()).toBe('20 ft');
    await field.fill('20 ft 3');
    await field.press('Enter');
    await page.getByText(edit.wrongNote).first().waitFor();
    expect(await field.inputValue()).toBe('20 ft 3');
  });
});
