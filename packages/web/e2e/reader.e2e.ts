import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, openJob, planShown, startField, withBrowser } from './app-page.ts';

withBrowser();

const facts = async (page: Page): Promise<string> => (await page.locator('#facts').textContent()) ?? '';

describe('the reader’s own units', () => {
  test('one press turns every number, the floor and the day, and the choice is there next time', async () => {
    const { page } = await arrive(`${inject('app')}#/job/example-garage/survey`);
    await planShown(page);
    const floor = page.getByRole('img', { name: /drawn to scale/ }).first();
    expect(await facts(page)).toMatch(/ft²/);
    expect(await floor.textContent()).toMatch(/ ft/);
    const metric = page.getByRole('button', { name: `${words.units.label}: ${words.units.imperial}` });
    await metric.click();
    await expect.poll(() => facts(page)).not.toMatch(/ft²/);
    expect(await facts(page)).toMatch(/m²/);
    expect(await floor.textContent()).toMatch(/\d m/);
    await page.reload();
    await planShown(page);
    expect(await facts(page)).toMatch(/m²/);
  });

  test('the plan is the same plan: its verdicts do not turn with the units', async () => {
    const { page } = await arrive(`${inject('app')}#/job/example-garage/quantities`);
    await planShown(page);
    const verdicts = () =>
      page
        .getByRole('navigation', { name: words.steps.nav })
        .getByRole('link')
        .evaluateAll((links) => links.map((link) => link.getAttribute('aria-label')));
    const before = await verdicts();
    await page.getByRole('button', { name: new RegExp(`^${words.units.label}`) }).click();
    await page.getByRole('button', { name: `${words.units.label}: ${words.units.metric}` }).waitFor();
    await planShown(page);
    expect(await verdicts()).toEqual(before);
  });
});

/** The garage moved to a night on which the clocks change, opened far away from it. */
async function openNight(page: Page, zone: string, at: string): Promise<void> {
  const job = JSON.parse(readFileSync(new URL('../../../jobs/garage/job.json', import.meta.url), 'utf8'));
  job.id = 'night';
  job.title = 'A night of two clocks';
  job.place.zone = zone;
  for (const option of job.options) for (const start of option.starts ?? []) start.at = at;
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles({
      name: 'night.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(job)),
    });
  await planShown(page);
}

describe('a site in another time zone', () => {
  test('its clock is shown, wherever the reader sits', async () => {
    const { page } = await arrive(inject('app'), { timezoneId: 'Asia/Tokyo' });
    await openJob(page);
    const inTokyo = await startField(page).inputValue();
    const other = await arrive(inject('app'), { timezoneId: 'America/Denver' });
    await openJob(other.page);
    expect(inTokyo).toBe(await startField(other.page).inputValue());
  });

  test('a time that comes twice that night asks which, and either can be chosen', async () => {
    const { page } = await arrive(inject('app'), { timezoneId: 'Asia/Tokyo' });
    await page.getByRole('link', { name: words.list.examples }).first().waitFor();
    await openNight(page, 'America/Denver', '2026-11-01T04:00:00-07:00');
    await startField(page).fill('01:30');
    await startField(page).press('Enter');
    await page
      .getByText(words.day.which('01:30', '01:30 -06:00', '01:30 -07:00'))
      .first()
      .waitFor();
    await page.getByRole('button', { name: '01:30 -06:00' }).first().click();
    await expect.poll(() => page.getByRole('button', { name: '01:30 -06:00' }).count()).toBe(0);
    await planShown(page);
    // One and the same clock reads on, before and after the change: the earlier of the two is an hour before the later.
    expect(['01:30', '00:30']).toContain(await startField(page).inputValue());
  });

  test('a time that does not exist that night says so', async () => {
    const { page } = await arrive(inject('app'), { timezoneId: 'Pacific/Auckland' });
    await page.getByRole('link', { name: words.list.examples }).first().waitFor();
    await openNight(page, 'America/Denver', '2026-03-08T05:00:00-06:00');
    await startField(page).fill('02:30');
    await startField(page).press('Enter');
    await page
      .getByText(/does not exist that night/)
      .first()
      .waitFor();
  });
});
