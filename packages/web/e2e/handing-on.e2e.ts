import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words as draw } from '../src/draw/words.ts';
import { goodsWords } from '../src/edit/goods-words.ts';
import { words as edit } from '../src/edit/words.ts';
import { words } from '../src/words.ts';
import { arrive, downloaded, goToStep, openJob, planShown, withBrowser } from './app-page.ts';

withBrowser();

const papersListed = (page: Page) => page.locator('ul.papers li').first().waitFor();
const openHere = (page: Page, name: string, buffer: Buffer) =>
  page
    .getByLabel(`${words.list.importFile}: ${words.list.importHint}`)
    .setInputFiles({ name, mimeType: 'application/json', buffer });

async function sharedGarage(): Promise<Buffer> {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.papers);
  await papersListed(page);
  return downloaded(page, page.getByRole('button', { name: words.list.share }));
}

describe('a job handed on', () => {
  test('one file holds job, catalogue and weather but no price; another device plans the same hours with it', async () => {
    const bytes = await sharedGarage();
    const share = JSON.parse(bytes.toString()) as Record<string, unknown>;
    expect(Object.keys(share).sort()).toEqual(['asOf', 'catalogue', 'job', 'schema', 'weather']);
    const { page } = await arrive();
    await openHere(page, 'garage.share.json', bytes);
    await page.waitForURL(/#\/job\/garage\/survey$/);
    await planShown(page);
    const nav = page.getByRole('navigation', { name: words.steps.nav });
    await nav.getByText('with care at 11:45').waitFor();
    // The crew's copy works without a price book.
    await goToStep(page, words.steps.papers);
    await papersListed(page);
  });

  test('a shared file that was tampered with changes nothing', async () => {
    const share = JSON.parse((await sharedGarage()).toString()) as { weather: { rows: unknown[] } };
    share.weather.rows = [{ at: 'soon', air: '12' }];
    const { page } = await arrive();
    await openHere(page, 'odd.share.json', Buffer.from(JSON.stringify(share)));
    await page.getByText(words.imported.wrong('odd.share.json')).waitFor();
    expect(await page.locator('.jobs li').count()).toBe(4);
  });

  test('what an older catalogue says of bridged cracks stands in its form, though it came here unread', async () => {
    const share = JSON.parse((await sharedGarage()).toString()) as {
      catalogue: { id: string; products: Record<string, unknown>[] };
    };
    share.catalogue.id = 'older-stock';
    Object.assign(share.catalogue.products[0] ?? {}, { crackBridging: { class: 'A3', at: '-10 °C' } });
    const { page } = await arrive();
    await openHere(page, 'older.share.json', Buffer.from(JSON.stringify(share)));
    await page.waitForURL(/#\/job\/garage\/survey$/);
    await page.evaluate(() => {
      location.hash = '#/catalogue/older-stock/products';
    });
    await page.locator('.list .item').first().click();
    await page
      .getByText(/crack bridging.*A3.*EN 1062-7 A/)
      .first()
      .waitFor();
  });

  test('the hours go into a calendar, made without a network', async () => {
    const { page, context } = await arrive();
    await openJob(page);
    await goToStep(page, words.steps.hours);
    await page.getByRole('button', { name: words.hours.calendar }).waitFor();
    await context.setOffline(true);
    const text = (await downloaded(page, page.getByRole('button', { name: words.hours.calendar }))).toString();
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text.match(/BEGIN:VEVENT/g)?.length ?? 0).toBeGreaterThan(4);
    expect(text).toContain('BEGIN:VALARM');
  });
});

test('papers hold the pours, and their search can be stopped', async () => {
  const { page } = await arrive(inject('app'));
  await openJob(page, 'Machine workshop, 593 m²');
  await goToStep(page, words.steps.papers);
  await page.getByRole('button', { name: words.papers.stop, exact: true }).click();
  await page.getByText(words.papers.stopped).waitFor();
  expect(await page.locator('ul.papers').count()).toBe(0);
  await page.getByRole('button', { name: words.papers.again }).click();
  await papersListed(page);
});

test('another catalogue, made from nothing, and the one before again by undo', async () => {
  const { page } = await arrive();
  await openJob(page);
  await goToStep(page, words.steps.system);
  await page.getByRole('link', { name: edit.otherCatalogue }).click();
  const chosen = page.getByLabel(goodsWords.catalogue, { exact: true });
  await chosen.waitFor();
  await page.getByText(goodsWords.made).first().click();
  await page.getByLabel(goodsWords.name).first().fill('Winter stock');
  await page.getByLabel(goodsWords.begin).selectOption('copy');
  await page.getByRole('button', { name: goodsWords.makeCatalogue }).click();
  await expect.poll(() => chosen.inputValue()).toBe('winter-stock');
  await page.getByRole('button', { name: words.undo, exact: true }).click();
  await expect.poll(() => chosen.inputValue()).toBe('example-garage');
});

test('two rooms joined by a door in typed numbers are drawn together; undo parts them', async () => {
  const { page } = await arrive();
  await openJob(page);
  await page.getByRole('link', { name: edit.draw }).click();
  await page.getByRole('button', { name: draw.addRoom }).click();
  await page.getByRole('button', { name: draw.first }).press('Enter');
  for (const [way, length] of [
    ['right', '8 ft'],
    ['up', '10 ft'],
    ['left', '8 ft'],
  ] as const) {
    await page.getByLabel(draw.length).fill(length);
    await page.getByRole('button', { name: draw.directions[way] }).press('Enter');
  }
  const form = page.locator('form', { has: page.getByRole('button', { name: draw.joins.join }) });
  await form.getByLabel(draw.joins.width).fill('3 ft');
  const walls = form.getByLabel(draw.joins.inWall);
  await walls.nth(0).selectOption('1');
  await form.getByLabel(draw.joins.behind(2)).fill('2 ft');
  // The garage's left wall runs from its eighth corner back to the first.
  await walls.nth(1).selectOption('7');
  await form.getByLabel(draw.joins.behind(8)).fill('5 ft');
  await form.getByLabel(draw.joins.wall).fill('6 in');
  await form.getByRole('button', { name: draw.joins.join }).press('Enter');
  await page.getByText('door-1, to').first().waitFor();
  await page.getByRole('link', { name: edit.done }).first().click();
  await page.getByRole('img', { name: words.floor.together }).first().waitFor();
  await page.getByRole('button', { name: words.undo, exact: true }).click();
  await page.getByRole('img', { name: words.floor.together }).first().waitFor({ state: 'detached' });
});

test('from one job straight to another: nothing of the first stands under the name of the second', async () => {
  const { page } = await arrive();
  await openJob(page, 'Machine workshop, 593 m²');
  const seen = page.evaluate(
    () =>
      new Promise<string[]>((done) => {
        const found: string[] = [];
        const until = Date.now() + 4000;
        const look = (): void => {
          const title = document.querySelector('h1')?.textContent ?? '';
          const survey = document.querySelector('.steps li a small')?.textContent ?? '';
          if (title.startsWith('Two-car garage') && survey.includes('593')) found.push(survey);
          if (Date.now() > until) done(found);
          else requestAnimationFrame(look);
        };
        look();
      }),
  );
  await page.evaluate(() => {
    location.hash = '#/job/example-garage/survey';
  });
  expect(await seen).toEqual([]);
  await planShown(page);
});
