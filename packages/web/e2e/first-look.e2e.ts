import { describe, expect, inject, test } from 'vitest';
import { words } from '../src/words.ts';
import { arrive, GARAGE, goToStep, openJob, planShown, stepLink, withBrowser, workingShown } from './app-page.ts';

withBrowser();

describe('the first look', () => {
  test('from the address to the planned garage in well under a minute, without an account', async () => {
    const started = performance.now();
    const { page } = await arrive();
    await openJob(page);
    expect(performance.now() - started).toBeLessThan(60_000);
    await expect(page.title()).resolves.toContain(GARAGE);
    expect(
      await page
        .getByRole('img', { name: /The floor of .*, drawn to scale/ })
        .first()
        .isVisible(),
    ).toBe(true);
    expect(await page.getByRole('region', { name: words.day.title }).isVisible()).toBe(true);
    expect(await stepLink(page, words.steps.quantities).textContent()).not.toContain(words.waits.planning);
  });

  test('every step of the desk opens and says its verdict', async () => {
    const { page } = await arrive();
    await openJob(page);
    const titles = ['preparation', 'system', 'quantities', 'hours', 'price', 'survey'] as const;
    for (const title of titles) {
      await goToStep(page, words.steps[title]);
      await planShown(page);
      expect(await stepLink(page, words.steps[title]).getAttribute('aria-current')).toBe('step');
    }
  });

  test('a number opens its working, down to the reading it came from', async () => {
    const { page } = await arrive(`${inject('app')}#/job/example-garage/quantities`);
    await planShown(page);
    await page.locator('#facts table a').first().click();
    const working = page.getByRole('region', { name: words.working.label });
    const given = working.getByRole('heading', { name: words.working.from, exact: true });
    for (let depth = 0; depth < 12; depth++) {
      await working.locator('h2').waitFor();
      if (await given.isVisible()) break;
      const before = page.url();
      // Readings are the leaves of the tree; a computed number is opened further.
      const leaf = working.locator('.tree li.in a');
      const next = (await leaf.count()) > 0 ? leaf.first() : working.locator('.tree li a').first();
      await next.click();
      await page.waitForFunction((url) => location.href !== url, before);
      await workingShown(page);
    }
    await given.waitFor();
    expect(await working.textContent()).toMatch(/data sheet|read on the floor|table|own/);
    await working.getByRole('link', { name: words.close }).click();
    await page.getByRole('region', { name: words.steps.quantities, exact: true }).waitFor();
  });

  test('the page obeys the server’s policy: nothing inline, nothing from elsewhere', async () => {
    const { page } = await arrive(null);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event) =>
        console.error(`policy: ${event.violatedDirective} ${event.blockedURI}`),
      );
    });
    await page.goto(inject('app'));
    await openJob(page);
    const elsewhere = asked.filter((url) => !url.startsWith(inject('app')) && !/^(blob|data):/.test(url));
    expect(elsewhere).toEqual([]);
  });
});
