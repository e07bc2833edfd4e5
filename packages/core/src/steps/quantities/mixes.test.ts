import { describe, expect, test } from 'vitest';
import catalogueJson from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import jobJson from '../../../../../jobs/garage/job.json' with { type: 'json' };
import priceJson from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import type { PriceBookFile } from '../../price-book.ts';
import { productOf } from '../context.ts';
import type { BuyingLine } from '../results.ts';
import { type Scenario, scenario } from '../testing/scenario.ts';

type ProductFile = CatalogueFile['products'][number];
type LayerFile = CatalogueFile['systems'][number]['layers'][number];
interface Files {
  readonly catalogue: CatalogueFile;
  readonly job: JobFile;
  readonly base: ProductFile;
  readonly layers: [LayerFile, LayerFile];
  readonly prices: PriceBookFile;
}

const pail = (id: string, component: string, volume: string) => ({ id, parts: [{ component, volume }] });

/**
 * 100 m² with two coats of 0.30 mm out of one part A: 2 : 1 with the standard hardener, 3 : 1 with the fast one. By
 * hand (own arithmetic): 30 L standard are 20 L of A and 10 L of B, 30 L fast 22.5 L of A and 7.5 L of C.
 */
function room(change: (files: Files) => void = () => undefined, priced = true): Scenario {
  const job = structuredClone(jobJson) as unknown as JobFile;
  const catalogue = structuredClone(catalogueJson) as unknown as CatalogueFile;
  const prices = structuredClone(priceJson) as PriceBookFile;
  const area = job.areas[0] as JobFile['areas'][number];
  area.outline = [
    ['0 m', '0 m'],
    ['10 m', '0 m'],
    ['10 m', '10 m'],
    ['0 m', '10 m'],
  ];
  for (const key of ['exits', 'joints', 'cracks', 'spots', 'points', 'stemWalls', 'profileDepth', 'sun'] as const)
    delete area[key];
  const base = catalogue.products[0] as ProductFile;
  const layers = catalogue.systems[0]?.layers as unknown as [LayerFile, LayerFile];
  Object.assign(base, {
    components: [
      { id: 'a', name: 'part A' },
      { id: 'b', name: 'standard hardener' },
      { id: 'c', name: 'fast hardener' },
    ],
    mix: [
      { component: 'a', parts: 2 },
      { component: 'b', parts: 1 },
    ],
    mixName: 'standard',
    mixes: [
      {
        id: 'fast',
        name: 'fast',
        mix: [
          { component: 'a', parts: 3 },
          { component: 'c', parts: 1 },
        ],
        volumeSolids: '95 %',
        times: [{ what: 'pot life', at: '24 °C', value: '8 min' }],
        climate: { slabLeast: '35 °F' },
      },
    ],
    packs: [pail('a15', 'a', '15 L'), pail('b5', 'b', '5 L'), pail('c5', 'c', '5 L')],
    largestBatch: '6 L',
    smallestBatch: '1 L',
  });
  prices.packs = [
    { product: 'base-b', pack: 'a15', price: '150.00' },
    { product: 'base-b', pack: 'b5', price: '60.00' },
    { product: 'base-b', pack: 'c5', price: '80.00' },
  ];
  for (const layer of layers) {
    for (const key of ['surplus', 'broadcast', 'verticals', 'textureDepth', 'wetFilmVertical'] as const)
      delete layer[key];
    Object.assign(layer, { product: 'base-b', wetFilm: '0.30 mm' });
  }
  layers[1].mix = 'fast';
  job.options = job.options.slice(0, 1);
  delete (job.options[0] as JobFile['options'][number]).thinner;
  change({ job, catalogue, base, layers, prices });
  return scenario({ job, catalogue, now: '2026-05-12T12:00:00-06:00', ...(priced ? { priceBook: prices } : {}) });
}

const line = (run: Scenario): BuyingLine => run.quantities.buying[0] as BuyingLine;
const packs = (run: Scenario, item = 'base-b') =>
  Object.fromEntries(
    run.quantities.buying
      .filter((one) => one.item === item)
      .flatMap((one) => one.packs.map(({ pack, count }) => [pack, count.value])),
  );
const codes = (run: Scenario) => run.quantities.notes.map(({ code }) => code);

describe('coats of several mixes of one product', () => {
  test('the shared part is bought once for both: 42.5 L of A are three pails, and each hardener two', () => {
    const run = room();
    expect(run.quantities.buying).toHaveLength(1);
    expect(packs(run)).toEqual({ a15: 3, b5: 2, c5: 2 });
    expect(line(run).layers).toEqual(['base', 'clear']);
    expect(line(run).needed.value * 1000).toBeCloseTo(60, 9);
    const left = Object.fromEntries(
      (line(run).leftByComponent ?? []).map((one) => [one.component, one.volume.value * 1000]),
    );
    expect(left.a).toBeCloseTo(2.5, 9);
    expect(left.b).toBeCloseTo(0, 9);
    expect(left.c).toBeCloseTo(2.5, 9);
    // The standard hardener has nothing over, so in this proportion the packs make just what is needed.
    expect(line(run).bought.value * 1000).toBeCloseTo(60, 9);
    expect(codes(run)).toContain('quantities-bought-jointly');
  });

  test('apart, as two products, the same floor takes a pail of A more', () => {
    const apart = room(({ catalogue, base, layers, prices }) => {
      const fast = { ...structuredClone(base), id: 'base-fast', name: 'Base fast' };
      fast.mix = base.mixes?.[0]?.mix as ProductFile['mix'];
      for (const one of [base, fast]) {
        delete one.mixes;
        const own = new Set(one.mix.map(({ component }) => component));
        one.components = one.components.filter(({ id }) => own.has(id));
        one.packs = one.packs.filter(({ parts }) => parts.every(({ component }) => own.has(component)));
      }
      catalogue.products.push(fast);
      Object.assign(layers[1], { product: 'base-fast' });
      delete layers[1].mix;
      prices.packs.push(
        { product: 'base-fast', pack: 'a15', price: '150.00' },
        { product: 'base-fast', pack: 'c5', price: '80.00' },
      );
    });
    const count = (item: string) => packs(apart, item);
    expect([count('base-b'), count('base-fast')]).toEqual([
      { a15: 2, b5: 2 },
      { a15: 2, c5: 2 },
    ]);
    const cost = { a15: 150, b5: 60, c5: 80 } as const;
    const spent = (counts: Record<string, number>): number =>
      Object.entries(counts).reduce((sum, [pack, n]) => sum + n * cost[pack as keyof typeof cost], 0);
    expect(spent(count('base-b')) + spent(count('base-fast')) - spent(packs(room()))).toBe(150);
  });

  test('a kit of A and B serves the standard mix whole; its A is not taken for the fast one', () => {
    const run = room(({ base, prices }) => {
      base.packs.unshift({
        id: 'kit30',
        parts: [
          { component: 'a', volume: '20 L' },
          { component: 'b', volume: '10 L' },
        ],
      });
      prices.packs.push({ product: 'base-b', pack: 'kit30', price: '200.00' });
    });
    expect(packs(run)).toEqual({ kit30: 1, a15: 2, c5: 2 });
  });

  test('without prices: least volume', () => {
    expect(packs(room(undefined, false))).toEqual({ a15: 3, b5: 2, c5: 2 });
  });

  test('a mix alone: only its own packs are looked at', () => {
    const run = room(({ layers }) => {
      layers[0].mix = 'fast';
    });
    expect(packs(run)).toEqual({ a15: 3, c5: 3 });
    expect(codes(run)).not.toContain('quantities-bought-jointly');
  });

  test('a pack that nobody can make the mix with: not known, with the reason', () => {
    const run = room(({ base }) => {
      base.packs = base.packs.filter(({ id }) => id !== 'c5');
    });
    expect(run.quantities.verdict.reasons.map(({ code }) => code)).toContain('quantities-no-packs');
  });

  test('a reserve of one coat is bought with it', () => {
    const run = room(({ layers }) => {
      layers[1].reserve = '12 %';
    });
    // 20 + 22.5 × 1.12 = 45.2 L of A.
    expect(packs(run)).toEqual({ a15: 4, b5: 2, c5: 2 });
  });

  test('where the count turns: the coat whose mix runs short first, and at which surplus', () => {
    const run = room(({ layers }) => {
      layers[0].wetFilm = '0.20 mm';
      layers[1].surplus = '5 %';
    });
    // A: 13.33 + 23.625 = 36.96 of 45 L; C: 7.875 of 10 L reaches 40 L mixed: surplus 40 ÷ 30 − 1.
    const said = line(run).turns;
    expect(said).toBeUndefined();
    const near = room(({ layers }) => {
      layers[0].wetFilm = '0.20 mm';
      layers[1].surplus = '30 %';
    });
    const turn = line(near).turns;
    expect(turn?.code).toBe('quantities-turns-surplus-up-packs');
    const at = near.entries.get(turn?.figures?.at ?? '');
    expect(at && 'value' in at ? at.value : 0).toBeCloseTo(1 / 3, 9);
  });

  test('the coat takes ratio, solids, times and limits of its mix; the rest of its product', () => {
    const run = room();
    const [standard, fast] = run.ctx.system.layers.map((layer) => productOf(run.ctx, layer));
    expect(standard?.name).toBe('Base B');
    expect(fast?.name).toBe('Base B, fast');
    expect(fast?.volumeSolids.value).toBeCloseTo(0.95, 12);
    expect(fast?.times?.filter(({ what }) => what === 'pot life').map(({ value }) => value.value)).toEqual([480]);
    expect(fast?.climate?.slabLeast?.typed).toBe('35 °F');
    expect(fast?.climate?.slabMost?.typed).toBe('95 °F');
    expect(fast?.inherited).toContain('recoat until');
    expect(fast?.inherited).not.toContain('pot life');
    expect(run.fitted.notes.map(({ code }) => code)).toContain('system-mix-times-inherited');
    const parts = run.quantities.layers.map((one) => one.components.map(({ component }) => component));
    expect(parts).toEqual([
      ['a', 'b'],
      ['a', 'c'],
    ]);
  });
});

describe('thinner', () => {
  const thinned = (change: (files: Files) => void = () => undefined, priced = true) =>
    room((files) => {
      files.base.thinner = { allowed: 'yes', most: '10 %', thinner: 'sheet-thinner', name: 'its own thinner' };
      files.catalogue.thinners = [{ id: 'sheet-thinner', name: 'Thinner T', packs: [{ id: 'tin', volume: '2 L' }] }];
      const [option] = files.job.options;
      if (option) option.thinner = files.layers.map(({ id: layer }) => ({ layer, ratio: '5 %' }));
      change(files);
    }, priced);
  const tins = (run: Scenario) => run.quantities.buying.find(({ kind }) => kind === 'thinner');

  test('5 % in 60 L of two coats are 3 L: two tins of 2 L, 1 L left', () => {
    const found = tins(thinned());
    expect(found?.layers).toEqual(['base', 'clear']);
    expect((found?.needed.value ?? 0) * 1000).toBeCloseTo(3, 9);
    expect(found?.packs.map(({ pack, count }) => [pack, count.value])).toEqual([['tin', 2]]);
    expect((found?.left.value ?? 0) * 1000).toBeCloseTo(1, 9);
  });

  test('several tins: the cheapest that hold it', () => {
    const run = thinned(({ catalogue, prices }) => {
      catalogue.thinners?.[0]?.packs.push({ id: 'can', volume: '5 L' });
      prices.packs.push(
        { product: 'sheet-thinner', pack: 'tin', price: '30.00' },
        { product: 'sheet-thinner', pack: 'can', price: '45.00' },
      );
    });
    expect(tins(run)?.packs.map(({ pack, count }) => [pack, count.value])).toEqual([['can', 1]]);
  });

  test('a thinner nobody sells here is said, never left out in silence', () => {
    const run = thinned(({ base }) => {
      delete base.thinner?.thinner;
    });
    expect(tins(run)).toBeUndefined();
    expect(codes(run).filter((code) => code === 'quantities-thinner-not-sold')).toHaveLength(2);
  });
});
