import { describe, expect, test } from 'vitest';
import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { scenario } from '../testing/scenario.ts';
import { safety } from './index.ts';

interface Files {
  readonly product?: Readonly<Record<string, unknown>>;
  readonly building?: Readonly<Record<string, unknown>>;
  readonly option?: Readonly<Record<string, unknown>>;
  readonly place?: Readonly<Record<string, unknown>>;
}

/** The garage with its clear coat, its room or its option changed. */
function run({ product = {}, building, option = {}, place = {} }: Files = {}) {
  const catalogue = structuredClone(garageCatalogue) as { products: Record<string, unknown>[] };
  catalogue.products = catalogue.products.map((one) => (one.id === 'clear-c' ? { ...one, ...product } : one));
  const job = structuredClone(garageJob) as {
    survey: Record<string, unknown>;
    place: Record<string, unknown>;
    options: Record<string, unknown>[];
  };
  job.place = { ...job.place, ...place };
  if (building) job.survey.building = building;
  job.options = job.options.map((one) => ({ ...one, ...option }));
  const made = scenario({ job: job as unknown as JobFile, catalogue: catalogue as unknown as CatalogueFile });
  const plan = safety(made.ctx, made.surveyed, made.quantities, new Trace(new Ledger(), 'safety.'));
  const clear = plan.vapour.find(({ layer }) => layer === 'clear');
  const quantity = made.quantities.layers.find(({ layer }) => layer === 'clear');
  if (!clear || !quantity) throw new Error('the garage lost its clear coat');
  return { plan, clear, quantity };
}

describe('solvent of a coat', () => {
  test('comes from the VOC where the sheet names its solvent (own arithmetic)', () => {
    const { clear, quantity } = run();
    expect(clear.from).toBe('voc');
    expect(clear.liquid?.value).toBeCloseTo((quantity.needed.value * 90) / 880, 12);
  });

  test('an exempt solvent does not hide from the VOC: everything not solid is counted', () => {
    const { clear, quantity } = run({
      place: { exempt: [{ solvent: 'n-butyl acetate', source: 'Halden air rule 2 (invented)', date: '2020-01-01' }] },
    });
    expect(clear.from).toBe('not solid');
    expect(clear.liquid?.value).toBeCloseTo(quantity.needed.value * 0.15, 12);
  });

  test('thinner goes into the air too', () => {
    const bare = run();
    const thinned = run({ option: { thinner: [{ layer: 'clear', ratio: '5 %' }] } });
    expect(thinned.quantity.thinner).toBeDefined();
    const own = (thinned.quantity.needed.value * 90) / 880;
    expect(thinned.clear.liquid?.value).toBeCloseTo(own + (thinned.quantity.thinner?.value ?? 0), 9);
    expect(thinned.clear.share?.value ?? 0).toBeGreaterThan(bare.clear.share?.value ?? 1);
  });

  test('a sheet that names no solvent gives no vapour, and says what is missing', () => {
    const { plan, clear } = run({ product: { solvent: undefined } });
    expect(clear.from).toBe('not known');
    expect(clear.vapour).toBeUndefined();
    expect(plan.missing.map(({ fact }) => fact.names?.layer)).toContain('clear coat');
  });

  test('a coat of solids alone, without VOC, gives none', () => {
    const { clear } = run({ product: { solvent: undefined, voc: undefined, volumeSolids: '100 %' } });
    expect(clear.from).toBe('none');
  });
});

describe('room and code', () => {
  test('a room of unknown height has vapour but no share of the limit', () => {
    const { plan, clear } = run({ building: { year: 2019 } });
    expect(plan.room).toBeUndefined();
    expect(clear.vapour).toBeDefined();
    expect(clear.share).toBeUndefined();
  });

  test('half the height, twice the share (own arithmetic)', () => {
    const high = run({ building: { year: 2019, height: '10 ft' } });
    const low = run({ building: { year: 2019, height: '5 ft' } });
    expect((low.clear.share?.value ?? 0) / (high.clear.share?.value ?? 1)).toBeCloseTo(2, 9);
  });

  test('amounts stand beside those the fire code names, with its edition, and without a verdict', () => {
    const { plan } = run();
    expect(plan.permit.map(({ code }) => code)).toEqual([
      'safety-permit-two-part-above',
      'safety-flash',
      'safety-permit-area-above',
      'safety-flash-not-known',
    ]);
    expect(plan.permit[0]?.names).toMatchObject({ edition: '2015', section: '2401.1' });
    expect(plan.verdict).toEqual({ word: 'go', reasons: [] });
  });
});
