import { expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import type { PriceBookFile } from '../../price-book.ts';
import type { BuyingLine } from '../results.ts';
import { type Scenario, scenario } from '../testing/scenario.ts';

/** Invented jobs worked by hand (own arithmetic): every figure below can be redone on paper from the Givens. */
const garage = scenario({
  job: garageJob as unknown as JobFile,
  catalogue: garageCatalogue as unknown as CatalogueFile,
  priceBook: garagePrices as PriceBookFile,
  option: 'flake',
});
const workshop = scenario({
  job: workshopJob as unknown as JobFile,
  catalogue: workshopCatalogue as unknown as CatalogueFile,
});

const LITRE = 1e-3;
const POUND = 0.45359237;
const line = (of: Scenario, item: string): BuyingLine => {
  const found = of.quantities.buying.find((one) => one.item === item);
  if (!found) throw new Error(`nothing bought of ${item}`);
  return found;
};
const count = (of: Scenario, item: string): number =>
  line(of, item).packs.reduce((sum, one) => sum + one.count.value, 0);

test('garage base: floor and stem walls, film and profile, 8 % surplus: 14.32 L, two kits of 2 gal', () => {
  expect(garage.value('quantities.base.needed') / LITRE).toBeCloseTo((40.41 + 3.21) * 0.304 * 1.08, 1);
  expect(garage.value('quantities.base.needed') / LITRE).toBeCloseTo(14.32, 2);
  expect(count(garage, 'base-b')).toBe(2);
  expect(line(garage, 'base-b').bought.value / LITRE).toBeCloseTo(15.14, 2);
});

test('garage clear: film 12.97 L, texture 2.42 L, with surplus 16.62 L, three kits', () => {
  // Worked with 0.305 mm for 12 mil, which is 0.3048 mm: 0.2 µm on 40.41 m² is 0.008 L, with surplus 0.009 L.
  expect(Math.abs(garage.value('quantities.clear.film-alone') / LITRE - 12.97)).toBeLessThan(0.013);
  expect(garage.value('quantities.clear.main.texture') / LITRE).toBeCloseTo(2.42, 2);
  expect(Math.abs(garage.value('quantities.clear.net') / LITRE - 15.39)).toBeLessThan(0.013);
  expect(Math.abs(garage.value('quantities.clear.needed') / LITRE - 16.62)).toBeLessThan(0.014);
  expect(count(garage, 'clear-c')).toBe(3);
});

test('garage flake: 70.4 lb on floor and stem walls, two boxes of 40 lb, about 48 lb kept', () => {
  expect(line(garage, 'flake-quarter').needed.value / POUND).toBeCloseTo(0.15 * (435 + 34.5), 1);
  expect(count(garage, 'flake-quarter')).toBe(2);
  const [thrown] = garage.quantities.broadcast;
  expect((thrown?.kept?.value ?? 0) / POUND).toBeCloseTo(47.9, 1);
});

test('garage: "texture in the clear coat" is called out: two kits would have run out 1.5 L short', () => {
  const note = garage.quantities.notes.find((one) => one.code === 'quantities-pitfall-texture');
  expect(note?.names?.layer).toBe('clear coat');
  const figure = (name: string): number => {
    const entry = garage.entries.get(note?.figures?.[name] ?? '');
    return entry && 'value' in entry ? entry.value : Number.NaN;
  };
  expect(figure('naiveCount')).toBe(2);
  expect(figure('count')).toBe(3);
  expect(Math.abs(figure('film') / LITRE - 12.97)).toBeLessThan(0.013);
  expect(figure('short') / LITRE).toBeCloseTo(1.5, 1);
  expect(garage.quantities.notes.some((one) => one.code === 'quantities-pitfall-whole-kits')).toBe(true);
});

test('garage: the count turns at a profile of 0.067 mm, and at a texture of 0.20 mm', () => {
  const at = (item: string): number => {
    const entry = garage.entries.get(line(garage, item).turns?.figures?.at ?? '');
    return entry && 'value' in entry ? entry.value : Number.NaN;
  };
  expect(line(garage, 'base-b').turns?.code).toBe('quantities-turns-profile-up');
  expect(at('base-b')).toBeCloseTo(0.0674e-3, 6);
  expect(line(garage, 'clear-c').turns?.code).toBe('quantities-turns-texture-up');
  expect(at('clear-c')).toBeCloseTo(0.2e-3, 5);
});

test('garage without stem walls takes less of everything', () => {
  const bare = scenario({
    job: garageJob as unknown as JobFile,
    catalogue: garageCatalogue as unknown as CatalogueFile,
    option: 'flake-floor-only',
  });
  expect(bare.value('quantities.base.needed') / LITRE).toBeCloseTo(40.41 * 0.304 * 1.08, 1);
  expect(line(bare, 'flake-quarter').needed.value / POUND).toBeCloseTo(0.15 * 435, 1);
  expect(bare.quantities.layers[0]?.areas[0]?.verticals).toBeUndefined();
});

test.each([
  ['mp', 311.3, 17, 321.3],
  ['eb', 311.3, 17, 321.3],
  ['es', 342.5, 19, 359.1],
  ['ut', 76.9, 7, 79.8],
] as const)('workshop %s: %f L, %i kits, %f L bought', (item, litres, kits, bought) => {
  expect(line(workshop, item).needed.value / LITRE).toBeCloseTo(litres, 0);
  expect(Math.abs(line(workshop, item).needed.value / LITRE - litres)).toBeLessThan(0.06);
  expect(count(workshop, item)).toBe(kits);
  expect(line(workshop, item).bought.value / LITRE).toBeCloseTo(bought, 1);
});

test('workshop quartz: 1,898 kg thrown, 76 bags, about 534 kg swept up', () => {
  expect(line(workshop, 'quartz').needed.value).toBeCloseTo(1898, 0);
  expect(count(workshop, 'quartz')).toBe(76);
  expect(workshop.quantities.broadcast[0]?.back?.value).toBeCloseTo(534, 0);
});

test('workshop quartz: 76 bags leave next to nothing in hand, and turn at 3.204 kg/m²', () => {
  const turns = line(workshop, 'quartz').turns;
  expect(turns?.code).toBe('quantities-turns-thrown-up');
  // 1,900 kg over 593.04 m².
  expect(workshop.value((turns?.figures?.at ?? '').slice('quartz.'.length))).toBeCloseTo(1900 / 593.04, 4);
  expect(workshop.quantities.notes.some((one) => one.code === 'quantities-broadcast-tight')).toBe(true);
});

test('workshop: the texture of the quartz in the seal turns 10 kits into 19', () => {
  const note = workshop.quantities.notes.find(
    (one) => one.code === 'quantities-pitfall-texture' && one.names?.layer === 'seal coat',
  );
  const figure = (name: string): number => workshop.value((note?.figures?.[name] ?? '').slice('quartz.'.length));
  expect(figure('naive') / LITRE).toBeCloseTo(186.8, 1);
  expect(figure('naiveCount')).toBe(10);
  expect(figure('count')).toBe(19);
  const primer = workshop.quantities.notes.find((one) => one.code === 'quantities-pitfall-profile');
  expect(workshop.value((primer?.figures?.naiveCount ?? '').slice('quartz.'.length))).toBe(14);
});

test('prices change the choice, never what is kept: no entry of the step is money', () => {
  for (const [id, entry] of garage.entries) {
    if (id.startsWith('flake.quantities')) expect(entry.unit.startsWith('money')).toBe(false);
  }
});
