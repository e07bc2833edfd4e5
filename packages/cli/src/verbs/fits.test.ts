import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runHeard } from '../testing/run-heard.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-fits-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const garage = new URL('../../../../jobs/garage', import.meta.url).pathname;

const fits = (...args: string[]) => runHeard(['fits', ...args]);

test('prints the front, what does not fit and the change that admits it, and no score of one number', async () => {
  const { status, out } = await fits(changed('no-weather', () => undefined));
  expect(status).toBe(0);
  expect(out).toMatch(
    /Two thin coats of clear sealer[\s\S]*Base, flake to refusal, clear[\s\S]*Moisture primer, flake/,
  );
  expect(out).toMatch(/Does not fit[\s\S]*Two coats of epoxy[\s\S]*→ Start earlier, or agree cars on/);
  expect(out).not.toMatch(/NaN|undefined|\bsafe\b|compliant/);
});

test('with weather the time until use counts from now, and who finds no window in time says when', async () => {
  const { status, out } = await fits(garage);
  expect(status).toBe(0);
  expect(out).toMatch(/Worth a look[\s\S]*Base, flake to refusal, clear[\s\S]*counts from now/);
  expect(out).toMatch(/Moisture primer[\s\S]*In the weather given the first coat starts on[\s\S]*wanted by/);
});

test('as data: ids that the entries hold, down to their readings', async () => {
  const { out } = await fits(garage, '--json');
  const { systems, entries } = JSON.parse(out);
  expect(systems).toHaveLength(5);
  expect(entries[systems[0].price].value).toBeGreaterThan(0);
  expect(entries[systems[0].weakest.margin].formula).toBe('fits/weakest-margin');
  for (const { inputs = {} } of Object.values<{ inputs?: Record<string, string | string[]> }>(entries))
    for (const input of Object.values(inputs).flat()) expect(entries[input], input).toBeDefined();
});

/** The garage with its job changed, in a folder of its own. */
// biome-ignore lint/suspicious/noExplicitAny: the file is changed out of shape on purpose
function changed(name: string, change: (job: any) => void): string {
  const at = mkdtempSync(join(folder, `${name}-`));
  for (const file of ['job.json', 'catalogue.json', 'price-book.json']) {
    const data = JSON.parse(readFileSync(join(garage, file), 'utf8'));
    if (file === 'job.json') change(data);
    writeFileSync(join(at, file), JSON.stringify(data));
  }
  return at;
}

test('a job without an option is bad input, with the way out', async () => {
  const { status, err } = await fits(
    changed('no-option', (job) => {
      job.options = [];
    }),
  );
  expect(status).toBe(2);
  expect(err).toContain('Add one under "options"');
});

test('when nothing fits the exit status says so', async () => {
  const { status, out } = await fits(
    changed('wet', (job) => {
      for (const one of job.survey.moisture.tests) one.humidity = '99.5 %';
    }),
  );
  expect(status).toBe(1);
  expect(out).toContain('None fits as things stand.');
});
