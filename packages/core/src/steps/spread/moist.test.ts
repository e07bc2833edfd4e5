import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, plan } from '../../plan.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const text = (file: string): string =>
  readFileSync(new URL(`../../../../../jobs/garage/${file}.json`, import.meta.url), 'utf8');

interface Cured {
  readonly humidityCured?: boolean;
  readonly humidity?: string;
  readonly tied?: boolean;
  readonly openTime?: string;
}

/** The clear coat of the garage without weather: 26 °C in the readings nearest to its start. */
function clearCoat({ humidityCured = true, humidity = '80 %', tied = false, openTime }: Cured) {
  const job = JSON.parse(text('job'));
  const catalogue = JSON.parse(text('catalogue'));
  for (const reading of job.survey.climate) Object.assign(reading, { air: '26 °C', humidity });
  const system = catalogue.systems.find(({ id }: { id: string }) => id === job.options[0].system);
  const { product: id } = system.layers.find(({ id: layer }: { id: string }) => layer === 'clear');
  const product = catalogue.products.find((one: { id: string }) => one.id === id);
  product.humidityCured = humidityCured;
  if (openTime) for (const time of product.times) if (time.what === 'open time') time.value = openTime;
  if (tied) {
    const ties = [{ after: '9 min', vanished: true }];
    job.survey.openTimeTests = [{ product: id, on: '2026-05-12T15:00:00-06:00', slab: '21 °C', ties }];
  }
  const made = plan({
    job: must(jobFrom(job)),
    catalogue: must(catalogueFrom(catalogue)),
    now: '2026-05-12T18:00:00-06:00',
    spread: 10,
  });
  const option = made.options[0];
  if (!option?.spread || !answered(option.spread)) throw new Error('no spread');
  const coat = option.spread.coats.find(({ layer }) => layer === 'clear');
  const open = made.entries[coat?.openTime ?? ''];
  if (!open || !('value' in open)) throw new Error('no open time');
  const short = option.spread.verdict.reasons.some(
    ({ code, figures }) => code === 'spread-age-above-short-open' && figures?.age?.includes('clear'),
  );
  const codes = [...option.spread.notes, ...option.spread.verdict.reasons].map(({ code }) => code);
  return { open, codes, short };
}

/** Water over the water at 23 °C and 50 %, by the Magnus formula at 101 325 Pa (own arithmetic, WMO constants, MEM). */
function waterRatio(air: number, humidity: number): number {
  const vapour = (t: number, share: number): number => share * 611.2 * Math.exp((17.62 * t) / (243.12 + t));
  const water = (e: number): number => e / (101_325 - e);
  return water(vapour(air, humidity)) / water(vapour(23, 0.5));
}

test('in air with more water than the sheet’s the short open time of the pours shrinks with it, the centre stays', () => {
  const dry = clearCoat({ humidityCured: false }).open;
  const { open, codes } = clearCoat({});
  expect(open.value).toBe(dry.value);
  // two saturation formulas agree within half a percent at room temperature
  const low = open.band?.[0] ?? Number.NaN;
  expect(Math.abs(low / (dry.value / waterRatio(26, 0.8)) - 1)).toBeLessThan(0.005);
  expect(open.band?.[1]).toBe(dry.value);
  expect(codes).toContain('spread-water-above-sheet');
});

test('a lap that stays within the open time but not within its short bound is a caution', () => {
  // dry, the oldest lap of some open time fits; in the wet air its short bound is about half of that
  const times = ['11 min', '9 min', '7 min'];
  const dry = times.map((openTime) => clearCoat({ humidityCured: false, openTime }).short);
  const wet = times.map((openTime) => clearCoat({ openTime }).short);
  expect(dry).toEqual(times.map(() => false));
  expect(wet).toContain(true);
});

test('drier air, a coat that takes nothing from it and a lap tried here keep their open time', () => {
  const { open, codes } = clearCoat({ humidity: '30 %' });
  expect(open.band?.[0] ?? open.value).toBe(open.value);
  expect(codes).toContain('spread-humidity-not-on-sheet');
  expect(clearCoat({ humidityCured: false }).codes).not.toContain('spread-water-above-sheet');
  const tried = clearCoat({ tied: true });
  expect(tried.open.value).toBe(540);
  expect(tried.codes).not.toContain('spread-water-above-sheet');
});
