import { describe, expect, test } from 'vitest';
import catalogueJson from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import jobJson from '../../../../../jobs/garage/job.json' with { type: 'json' };
import priceJson from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import type { CatalogueFile } from '../../catalogue.ts';
import type { JobFile } from '../../job.ts';
import type { PriceBookFile } from '../../price-book.ts';
import type { BuyingLine } from '../results.ts';
import { type Scenario, scenario } from '../testing/scenario.ts';

type ProductFile = CatalogueFile['products'][number];
type LayerFile = CatalogueFile['systems'][number]['layers'][number];
type AreaFile = JobFile['areas'][number];

interface Files {
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly area: AreaFile;
  readonly base: ProductFile;
  readonly baseLayer: LayerFile;
  readonly clearLayer: LayerFile;
  readonly prices: PriceBookFile;
}

/**
 * A bare room of 10 m by 10 m with a single coat of 0.30 mm out of kits of 6 L and 3 L, so that every sum can be done
 * in the head (own arithmetic); the change adds what a test is about.
 */
function room(change: (files: Files) => void = () => undefined, priced = false): Scenario {
  const job = structuredClone(jobJson) as unknown as JobFile;
  const catalogue = structuredClone(catalogueJson) as unknown as CatalogueFile;
  const prices = structuredClone(priceJson) as PriceBookFile;
  const area = job.areas[0] as AreaFile;
  Object.assign(area, {
    outline: [
      ['0 m', '0 m'],
      ['10 m', '0 m'],
      ['10 m', '10 m'],
      ['0 m', '10 m'],
    ],
  });
  for (const key of ['exits', 'joints', 'cracks', 'spots', 'points', 'stemWalls', 'profileDepth', 'sun'] as const)
    delete area[key];
  const base = catalogue.products[0] as ProductFile;
  const [baseLayer, clearLayer] = catalogue.systems.flatMap((one) => one.layers) as [LayerFile, LayerFile];
  Object.assign(base, {
    mix: [
      { component: 'a', parts: 2 },
      { component: 'b', parts: 1 },
    ],
    packs: [kit('six', '4 L', '2 L')],
    largestBatch: '6 L',
    smallestBatch: '1 L',
  });
  Object.assign(baseLayer, { wetFilm: '0.30 mm' });
  for (const key of ['surplus', 'broadcast', 'verticals'] as const) delete baseLayer[key];
  for (const key of ['surplus', 'textureDepth', 'wetFilmVertical', 'verticals'] as const) delete clearLayer[key];
  job.options = job.options.slice(0, 1);
  change({ job, catalogue, area, base, baseLayer, clearLayer, prices });
  return scenario({ job, catalogue, now: '2026-05-12T12:00:00-06:00', ...(priced ? { priceBook: prices } : {}) });
}

const kit = (id: string, a: string, b: string) => ({
  id,
  parts: [
    { component: 'a', volume: a },
    { component: 'b', volume: b },
  ],
});
const pail = (id: string, component: string, volume: string) => ({ id, parts: [{ component, volume }] });

const LITRE = 1e-3;
const net = (run: Scenario): number => run.value('quantities.base.net') / LITRE;
const needed = (run: Scenario): number => run.value('quantities.base.needed') / LITRE;
const line = (run: Scenario, item = 'base-b'): BuyingLine => {
  const found = run.quantities.buying.find((one) => one.item === item);
  if (!found) throw new Error(`nothing bought of ${item}`);
  return found;
};
const packs = (run: Scenario): Record<string, number> =>
  Object.fromEntries(line(run).packs.map(({ pack, count }) => [pack, count.value]));
const codes = (run: Scenario): readonly string[] => run.quantities.notes.map((note) => note.code);

test('100 m² of 0.30 mm are 30 L: five kits of 6 L, nothing left', () => {
  const run = room();
  expect(net(run)).toBeCloseTo(30, 9);
  expect(packs(run)).toEqual({ six: 5 });
  expect(line(run).left.value).toBeCloseTo(0, 9);
  expect(run.quantities.missing.map((one) => one.fact.code)).toEqual([
    'quantities-surplus-missing',
    'quantities-profile-missing',
    'quantities-surplus-missing',
  ]);
});

describe('what a coat takes', () => {
  test('profile on the floor and on the faces the first coat goes up', () => {
    const run = room(({ area, baseLayer }) => {
      area.profileDepth = '0.05 mm';
      area.stemWalls = [{ id: 'wall', length: '10 m', height: '0.5 m' }];
      baseLayer.verticals = true;
    });
    expect(run.value('quantities.base.main.profile') / LITRE).toBeCloseTo(105 * 0.05, 9);
    expect(net(run)).toBeCloseTo(105 * 0.35, 9);
  });

  test('a second coat takes no profile, a coat kept off the walls no faces', () => {
    const run = room(({ area }) => {
      area.profileDepth = '0.05 mm';
      area.stemWalls = [{ id: 'wall', length: '10 m', height: '0.5 m' }];
    });
    expect(net(run)).toBeCloseTo(35, 9);
    expect(run.quantities.layers[1]?.areas[0]?.profile).toBeUndefined();
    expect(run.quantities.layers[1]?.areas[0]?.verticals).toBeUndefined();
  });

  test('texture on the floor alone, porosity on all that is coated', () => {
    const run = room(({ area, baseLayer }) => {
      area.stemWalls = [{ id: 'wall', length: '10 m', height: '0.5 m' }];
      Object.assign(baseLayer, { verticals: true, textureDepth: '0.10 mm', porosity: '0.02 mm' });
    });
    expect(run.value('quantities.base.main.texture') / LITRE).toBeCloseTo(10, 9);
    expect(run.value('quantities.base.main.porosity') / LITRE).toBeCloseTo(2.1, 9);
    expect(net(run)).toBeCloseTo(31.5 + 10 + 2.1, 9);
  });

  test('a cove: its face by the film, its fill by the first coat that goes up (Own: radius 25 mm, 40 m)', () => {
    const run = room(({ area, baseLayer, clearLayer }) => {
      area.coves = [{ id: 'cove', length: '40 m', radius: '25 mm' }];
      baseLayer.verticals = true;
      clearLayer.verticals = true;
    });
    const face = (Math.PI / 2) * 0.025 * 40;
    const fill = (1 - Math.PI / 4) * 0.025 ** 2 * 40 * 1000;
    expect(run.value('quantities.base.main.verticals') / LITRE).toBeCloseTo(face * 0.3 + fill, 9);
    expect(run.value('quantities.clear.main.verticals') / LITRE).toBeCloseTo(face * 0.3048, 9);
    expect(codes(run).filter((code) => code === 'quantities-cove-fill')).toHaveLength(1);
  });

  test('steps are coated with the rest of what stands up', () => {
    const run = room(({ area, baseLayer }) => {
      area.steps = [{ id: 'flight', risers: 3, riser: '180 mm', tread: '280 mm', width: '1 m' }];
      baseLayer.verticals = true;
    });
    const face = run.surveyed.areas[0]?.verticals[0]?.face.value ?? 0;
    expect(face).toBeGreaterThan(1);
    expect(net(run)).toBeCloseTo((100 + face) * 0.3, 9);
  });

  test('surplus multiplies, loss divides, a reserve is bought and not mixed', () => {
    const allow = (change: Partial<LayerFile>) => room(({ baseLayer }) => void Object.assign(baseLayer, change));
    expect(needed(allow({ surplus: '20 %' }))).toBeCloseTo(36, 9);
    expect(needed(allow({ loss: '20 %' }))).toBeCloseTo(37.5, 9);
    expect(needed(allow({ loss: '20 %', surplus: '20 %' }))).toBeCloseTo(45, 9);
    const kept = allow({ reserve: '10 %' });
    expect(needed(kept)).toBeCloseTo(30, 9);
    expect(line(kept).needed.value / LITRE).toBeCloseTo(33, 9);
    expect(packs(kept)).toEqual({ six: 6 });
    expect(codes(kept)).toContain('quantities-reserve');
  });
});

test('a broadcast to refusal: 15 % in hand is enough, less is said', () => {
  const flake = (thrown: string, toRefusal: boolean) =>
    room(({ catalogue, baseLayer }) => {
      catalogue.media = [{ id: 'flake-quarter', name: 'flake', bag: '23 kg' }];
      baseLayer.broadcast = { media: 'flake-quarter', thrown, toRefusal };
    });
  // 100 m²: 80 kg out of 92 kg leave exactly 15 %.
  expect(codes(flake('0.8 kg/m²', true))).not.toContain('quantities-broadcast-tight');
  expect(codes(flake('0.801 kg/m²', true))).toContain('quantities-broadcast-tight');
  expect(codes(flake('0.9 kg/m²', false))).not.toContain('quantities-broadcast-tight');
  expect(flake('0.2 kg/m²', true).quantities.buying.find((one) => one.kind === 'media')?.turns?.code).toBe(
    'quantities-turns-thrown-up',
  );
  // 10 kg would have to become 23 kg: more than twice the rate is not believed.
  expect(flake('0.1 kg/m²', true).quantities.buying.find((one) => one.kind === 'media')?.turns).toBeUndefined();
});

test('a system with no coat on concrete says that no profile was counted', () => {
  const run = room(({ area, baseLayer }) => {
    area.profileDepth = '0.05 mm';
    delete baseLayer.onConcrete;
  });
  expect(net(run)).toBeCloseTo(30, 9);
  expect(codes(run)).toContain('quantities-no-coat-on-concrete');
});

describe('the consumption of a sheet', () => {
  const sheet = (includes: ('film' | 'profile' | 'texture' | 'loss')[], value = '0.5 L/m²') =>
    room(({ area, base, baseLayer }) => {
      area.profileDepth = '0.05 mm';
      base.consumption = { value, includes };
      Object.assign(baseLayer, { textureDepth: '0.10 mm', loss: '20 %' });
    });

  test.each([
    [['film'], 50 + 5 + 10, 65 / 0.8],
    [['film', 'profile'], 50 + 10, 60 / 0.8],
    [['film', 'texture'], 50 + 5, 55 / 0.8],
    [['film', 'profile', 'texture'], 50, 50 / 0.8],
    [['film', 'profile', 'texture', 'loss'], 50, 50],
  ] as const)('what it includes is not added again: %j', (includes, expectedNet, expectedNeeded) => {
    const run = sheet([...includes]);
    expect(net(run)).toBeCloseTo(expectedNet, 9);
    expect(needed(run)).toBeCloseTo(expectedNeeded, 9);
    expect(codes(run).filter((code) => code.startsWith('quantities-consumption'))).toHaveLength(includes.length - 1);
  });

  test('below the film that is planned it is a caution, at the film it is not', () => {
    const word = (value: string) => sheet(['film'], value).quantities.verdict.word;
    expect(word('0.3 L/m²')).toBe('go');
    expect(word('0.299 L/m²')).toBe('caution');
  });
});

describe('packs', () => {
  test('components add up to what is mixed; masses follow the density', () => {
    const run = room();
    const parts = run.quantities.layers[0]?.components ?? [];
    expect(parts.map(({ component }) => component)).toEqual(['a', 'b']);
    expect(parts.reduce((sum, part) => sum + part.volume.value, 0)).toBeCloseTo(
      run.value('quantities.base.needed'),
      12,
    );
    expect(parts[0]?.volume.value).toBeCloseTo(0.02, 12);
    expect(parts[0]?.mass?.value).toBeCloseTo(22, 9);
  });

  test('two kit sizes without prices: least volume bought, then fewest kits', () => {
    const run = room(({ base, baseLayer }) => {
      base.packs = [kit('six', '4 L', '2 L'), kit('three', '2 L', '1 L')];
      baseLayer.wetFilm = '0.32 mm';
    });
    expect(packs(run)).toEqual({ six: 5, three: 1 });
    expect(line(run).bought.value / LITRE).toBeCloseTo(33, 9);
  });

  test('with prices: the least cost, though more is left over', () => {
    const run = room(({ base, baseLayer, prices }) => {
      base.packs = [kit('six', '4 L', '2 L'), kit('three', '2 L', '1 L')];
      baseLayer.wetFilm = '0.32 mm';
      prices.packs = [
        { product: 'base-b', pack: 'six', price: '100.00' },
        { product: 'base-b', pack: 'three', price: '101.00' },
      ];
    }, true);
    expect(packs(run)).toEqual({ six: 6 });
  });

  test('one pack without a price: chosen by volume, and said', () => {
    const run = room(({ base, baseLayer, prices }) => {
      base.packs = [kit('six', '4 L', '2 L'), kit('three', '2 L', '1 L')];
      baseLayer.wetFilm = '0.32 mm';
      prices.packs = [{ product: 'base-b', pack: 'six', price: '100.00' }];
    }, true);
    expect(packs(run)).toEqual({ six: 5, three: 1 });
    expect(codes(run)).toContain('quantities-packs-unpriced');
  });

  test('A and B in unlike packs: 20 L of A and 10 L of B, each covered by its own', () => {
    const run = room(({ base }) => {
      base.packs = [pail('a9', 'a', '9 L'), pail('b4', 'b', '4 L')];
    });
    expect(packs(run)).toEqual({ a9: 3, b4: 3 });
    // 27 L of A would make 40.5 L, 12 L of B make 36 L: the scarcer decides.
    expect(line(run).bought.value / LITRE).toBeCloseTo(36, 9);
    const left = Object.fromEntries(
      (line(run).leftByComponent ?? []).map((one) => [one.component, one.volume.value / LITRE]),
    );
    expect(left.a).toBeCloseTo(7, 9);
    expect(left.b).toBeCloseTo(2, 9);
  });

  test('a kit off its ratio is not split unless the sheet allows part kits', () => {
    const offer = (partKits: boolean) =>
      room(({ base }) => {
        base.partKits = partKits;
        base.packs = [kit('off', '4 L', '1 L'), pail('b2', 'b', '2 L')];
      });
    // Whole, the kit makes 3 L by its B; split, its four litres of A make 6 L beside pails of B.
    expect(packs(offer(false))).toEqual({ off: 10 });
    expect(packs(offer(true))).toEqual({ off: 5, b2: 3 });
  });

  test('a yield below the parts: kits of 6 L that yield 5.7 L', () => {
    const run = room(({ base }) => {
      base.packs = [{ ...kit('six', '4 L', '2 L'), yields: '5.7 L' }];
    });
    expect(packs(run)).toEqual({ six: 6 });
    expect(line(run).bought.value / LITRE).toBeCloseTo(34.2, 9);
    const left = (line(run).leftByComponent ?? []).reduce((sum, one) => sum + one.volume.value, 0);
    expect(left / LITRE).toBeCloseTo(4.2, 9);
  });

  test('a tint in the kit adds its volume; sold apart it is named and not counted', () => {
    const tint = { id: 'tint', name: 'tint', addition: true };
    const inKit = room(({ base }) => {
      base.components.push(tint);
      const six = kit('six', '4 L', '2 L');
      base.packs = [{ ...six, parts: [...six.parts, { component: 'tint', volume: '0.5 L' }] }];
    });
    expect(line(inKit).bought.value / LITRE).toBeCloseTo(32.5, 9);
    expect(packs(inKit)).toEqual({ six: 5 });
    expect(codes(inKit)).toContain('quantities-addition-with-kit');
    const parts = inKit.quantities.layers[0]?.components ?? [];
    expect(parts.map(({ component }) => component)).toEqual(['a', 'b', 'tint']);
    expect(parts.reduce((sum, part) => sum + part.volume.value, 0) / LITRE).toBeCloseTo(30, 9);
    const apart = room(({ base }) => {
      base.components.push(tint);
      base.packs.push(pail('tint-pail', 'tint', '1 L'));
    });
    expect(packs(apart)).toEqual({ six: 5 });
    expect(codes(apart)).toContain('quantities-addition-not-counted');
  });

  test('two additions in one kit keep their own shares', () => {
    const run = room(({ base }) => {
      base.components.push(
        { id: 'tint', name: 'tint', addition: true },
        { id: 'speed', name: 'accelerator', addition: true },
      );
      const six = kit('six', '4 L', '2 L');
      base.packs = [
        {
          ...six,
          parts: [...six.parts, { component: 'tint', volume: '0.5 L' }, { component: 'speed', volume: '0.1 L' }],
        },
      ];
    });
    expect(line(run).bought.value / LITRE).toBeCloseTo(33, 9);
    const volumes = (run.quantities.layers[0]?.components ?? []).map((part) => part.volume.value / LITRE);
    expect(volumes.reduce((sum, volume) => sum + volume, 0)).toBeCloseTo(30, 9);
    expect((volumes[2] as number) / (volumes[3] as number)).toBeCloseTo(5, 9);
  });

  test('one product in two coats is bought once', () => {
    const run = room(({ clearLayer }) => {
      Object.assign(clearLayer, { product: 'base-b', wetFilm: '0.33 mm' });
    });
    expect(run.quantities.buying).toHaveLength(1);
    expect(line(run).layers).toEqual(['base', 'clear']);
    expect(line(run).needed.value / LITRE).toBeCloseTo(63, 9);
    expect(packs(run)).toEqual({ six: 11 });
  });
});

describe('where the count turns', () => {
  const turn = (run: Scenario) => {
    const said = line(run).turns;
    const entry = run.entries.get(said?.figures?.at ?? '');
    return said && entry && 'value' in entry ? { code: said.code, at: entry.value } : undefined;
  };

  test('put back, the value holds the count; a hair beyond, it turns', () => {
    const with_ = (texture: string) =>
      room(
        ({ baseLayer }) => void Object.assign(baseLayer, { textureDepth: texture, wetFilm: '0.25 mm', surplus: '5 %' }),
      );
    const first = turn(with_('0.03 mm'));
    // (36 − 29.4 L) ÷ 1.05 ÷ 100 m² above 0.03 mm.
    expect(first?.code).toBe('quantities-turns-texture-up');
    expect(first?.at).toBeCloseTo(0.03e-3 + (30 - 29.4) / 1.05 / 1e5, 9);
    const at = (first?.at ?? 0) * 1000;
    expect(packs(with_(`${at} mm`))).toEqual({ six: 5 });
    expect(packs(with_(`${at + 0.0001} mm`))).toEqual({ six: 6 });
  });

  test('down where nothing turns it up: 30.5 L take six kits, five if the texture is no deeper than 0.01 mm', () => {
    const run = room(({ baseLayer }) => {
      Object.assign(baseLayer, { textureDepth: '0.015 mm', wetFilm: '0.29 mm' });
    });
    expect(turn(run)?.code).toBe('quantities-turns-texture-down');
    expect(turn(run)?.at).toBeCloseTo(0.01e-3, 9);
  });

  test('the area turns it only within the band of its tape', () => {
    const film = (wetFilm: string) => turn(room(({ baseLayer }) => void Object.assign(baseLayer, { wetFilm })));
    expect(film('0.29 mm')).toBeUndefined();
    expect(film('0.2995 mm')?.code).toBe('quantities-turns-area-up');
    expect(film('0.2995 mm')?.at).toBeCloseTo(30 / 0.2995, 6);
    expect(film('0.3005 mm')?.code).toBe('quantities-turns-area-down');
  });

  test('several kit sizes: the count beyond is chosen anew', () => {
    const run = room(({ base, baseLayer }) => {
      base.packs = [kit('six', '4 L', '2 L'), kit('three', '2 L', '1 L')];
      Object.assign(baseLayer, { wetFilm: '0.29 mm', surplus: '2 %' });
    });
    const said = line(run).turns;
    const other = run.entries.get(said?.figures?.other ?? '');
    expect(said?.code).toBe('quantities-turns-surplus-up');
    expect(other && 'value' in other ? other.value : 0).toBe(6);
  });
});
