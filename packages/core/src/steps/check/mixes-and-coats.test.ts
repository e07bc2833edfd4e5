import { expect, test } from 'vitest';
import catalogueJson from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { pathText } from '../../kernel/issue.ts';
import { voice } from '../../words/say.ts';
import { checkCatalogue } from './catalogue.ts';

type ProductFile = CatalogueFile['products'][number];
type LayerFile = CatalogueFile['systems'][number]['layers'][number];

/** Code and place of every issue of the invented catalogue after one change. */
function issues(change: (base: ProductFile, clear: ProductFile, layers: LayerFile[]) => void): readonly string[] {
  const file = structuredClone(catalogueJson) as unknown as CatalogueFile;
  const [base, clear] = file.products as [ProductFile, ProductFile];
  change(
    base,
    clear,
    file.systems.flatMap((system) => system.layers),
  );
  const read = catalogueFrom(file);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const speaker = voice('en', { locale: 'en-US', units: 'imperial' }, {});
  return checkCatalogue(read.value).map((issue) => {
    expect(speaker.sayIssue(issue)).toContain(pathText(issue.path));
    return `${issue.code} ${pathText(issue.path)}`;
  });
}

const only = (...found: string[]): string[] => found;

test('the invented catalogue has no issue', () => {
  expect(issues(() => undefined)).toEqual([]);
});

test('a mix names each component once, and every component is mixed or an addition', () => {
  expect(issues((base) => void base.mix.push({ component: 'a', parts: 1 }))).toEqual(
    only('check-id-twice products[0].mix[2].id'),
  );
  expect(issues((base) => void base.mix.pop())).toEqual(
    only('catalogue-component-not-in-mix products[0].components[1]'),
  );
  expect(
    issues((base) => {
      base.mix.pop();
      Object.assign(base.components[1] ?? {}, { addition: true });
    }),
  ).toEqual([]);
});

test('packs must make the mix; a one-component product is fine', () => {
  expect(
    issues((base) => {
      base.packs = [{ id: 'a-only', parts: [{ component: 'a', volume: '1 gal' }] }];
    }),
  ).toEqual(only('catalogue-packs-cannot-make-mix products[0].mix[1]'));
  expect(
    issues((base) => {
      base.components = [{ id: 'a', name: 'one part' }];
      base.mix = [{ component: 'a', parts: 1 }];
      base.packs = [{ id: 'pail', parts: [{ component: 'a', volume: '5 gal' }] }];
    }),
  ).toEqual([]);
});

test('a yield up to the sum of the parts is fine, above it is not', () => {
  const yields = (value: string) => issues((base) => void Object.assign(base.packs[0] ?? {}, { yields: value }));
  expect(yields('2 gal')).toEqual([]);
  expect(yields('1.9 gal')).toEqual([]);
  expect(yields('2.01 gal')).toEqual(only('catalogue-yield-above-parts products[0].packs[0].yields'));
});

test('limits the wrong way round', () => {
  expect(issues((base) => void Object.assign(base, { smallestBatch: '3 gal' }))).toEqual(
    only('catalogue-limits-upside-down products[0].smallestBatch'),
  );
  expect(issues((base) => void Object.assign(base, { bondLeast: '201 psi' }))).toEqual(
    only('catalogue-limits-upside-down products[0].bondLeast'),
  );
  expect(issues((base) => void Object.assign(base, { bondLeast: '200 psi' }))).toEqual([]);
});

test('a consumption says what the film takes', () => {
  const includes = (...parts: ('film' | 'texture')[]) =>
    issues((base) => void Object.assign(base, { consumption: { value: '0.3 L/m²', includes: parts } }));
  expect(includes('film', 'texture')).toEqual([]);
  expect(includes('texture')).toEqual(only('catalogue-consumption-without-film products[0].consumption.includes'));
});

test('a layer has one film, wet or dry, and verticals where it names them', () => {
  const layer = (index: number, change: Partial<LayerFile>) =>
    issues((_base, _clear, layers) => void Object.assign(layers[index] ?? {}, change));
  expect(layer(0, { dryFilm: '10 mil' })).toEqual(only('catalogue-layer-film-twice systems[0].layers[0].dryFilm'));
  expect(layer(1, { verticals: false })).toEqual(
    only('catalogue-layer-vertical-film-unused systems[0].layers[1].wetFilmVertical'),
  );
  expect(layer(0, { verticals: false })).toEqual(
    only('catalogue-broadcast-vertical-without-coat systems[0].layers[0].broadcast.verticals'),
  );
  const kept = (value: string) =>
    layer(0, { broadcast: { media: 'flake-quarter', thrown: '0.15 lb/ft²', kept: value } });
  expect(kept('0.15 lb/ft²')).toEqual([]);
  expect(kept('0.16 lb/ft²')).toEqual(
    only('catalogue-broadcast-kept-above-thrown systems[0].layers[0].broadcast.kept'),
  );
});

test('ids that name nothing come with the nearest one', () => {
  expect(issues((_base, _clear, layers) => void Object.assign(layers[0] ?? {}, { product: 'base-a' }))).toEqual(
    only('catalogue-product-unknown systems[0].layers[0].product'),
  );
  expect(issues((base) => void Object.assign(base.mix[1] ?? {}, { component: 'bb' }))).toEqual(
    only(
      'catalogue-component-unknown products[0].mix[1].component',
      'catalogue-component-not-in-mix products[0].components[1]',
    ),
  );
});

test('a layer without any film, a limit without its number, limits swapped', () => {
  expect(
    issues((_base, _clear, layers) => {
      delete layers[0]?.wetFilm;
    }),
  ).toEqual(only('catalogue-layer-film-missing systems[0].layers[0]'));
  expect(
    issues((base) => void Object.assign(base, { moisture: [{ method: 'ASTM F1869', humidity: '80 %' }] })),
  ).toEqual(only('catalogue-moisture-limit-missing products[0].moisture[0]'));
  expect(issues((base) => void Object.assign(base, { film: { leastWet: '11 mil', mostWet: '10 mil' } }))).toEqual(
    only('catalogue-limits-upside-down products[0].film.leastWet'),
  );
});

/** The base with a further mix: 3 parts of A to 1 of the fast hardener. */
const withFast = (base: ProductFile): NonNullable<ProductFile['mixes']> => {
  base.components.push({ id: 'fast', name: 'fast hardener' });
  base.packs.push({ id: 'fast-pail', parts: [{ component: 'fast', volume: '1 gal' }] });
  const mixes: NonNullable<ProductFile['mixes']> = [
    {
      id: 'fast',
      name: 'fast hardener',
      mix: [
        { component: 'a', parts: 3 },
        { component: 'fast', parts: 1 },
      ],
    },
  ];
  base.mixes = mixes;
  return mixes;
};

test('further mixes: each names known components that are packed, once, and its limits stand the right way up', () => {
  expect(issues((base) => void withFast(base))).toEqual([]);
  expect(
    issues((base) => {
      withFast(base);
      base.packs.pop();
    }),
  ).toEqual(only('catalogue-packs-cannot-make-mix products[0].mixes[0].mix[1]'));
  expect(issues((base) => void withFast(base).push({ ...withFast(base)[0] } as never))).not.toEqual([]);
  expect(
    issues((base) => {
      const [fast] = withFast(base);
      fast?.mix.push({ component: 'fats', parts: 1 });
    }),
  ).toEqual(only('catalogue-component-unknown products[0].mixes[0].mix[2].component'));
  expect(
    issues((base) => {
      const [fast] = withFast(base);
      // The first mix allows no slab above 95 °F.
      Object.assign(fast ?? {}, { climate: { slabLeast: '100 °F' }, smallestBatch: '3 gal' });
    }),
  ).toEqual(
    only(
      'catalogue-limits-upside-down products[0].mixes[0].climate.slabLeast',
      'catalogue-limits-upside-down products[0].mixes[0].smallestBatch',
    ),
  );
  expect(
    issues((base, _, layers) => {
      withFast(base);
      Object.assign(layers[0] ?? {}, { mix: 'fats' });
    }),
  ).toEqual(only('catalogue-mix-unknown systems[0].layers[0].mix'));
  expect(issues((_, __, layers) => void Object.assign(layers[0] ?? {}, { mix: 'fast' }))).toEqual(
    only('catalogue-mix-none systems[0].layers[0].mix'),
  );
});

test('a thinner is one the catalogue has, and shares no id with a product', () => {
  const thinners = (change: (file: CatalogueFile) => void): readonly string[] => {
    const file = structuredClone(catalogueJson) as unknown as CatalogueFile;
    file.thinners = [{ id: 'thin', name: 'Thinner', packs: [{ id: 'tin', volume: '1 gal' }] }];
    change(file);
    const read = catalogueFrom(file);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return checkCatalogue(read.value).map(({ code, path }) => `${code} ${pathText(path)}`);
  };
  expect(thinners(() => undefined)).toEqual([]);
  expect(thinners((file) => void file.thinners?.push({ ...file.thinners[0] } as never))).toEqual(
    only('check-id-twice thinners[1].id'),
  );
  expect(
    thinners((file) => {
      for (const one of file.thinners ?? []) one.id = 'base-b';
    }),
  ).toEqual(only('catalogue-thinner-named-as-product thinners[0].id'));
  expect(thinners((file) => void Object.assign(file.products[1]?.thinner ?? {}, { thinner: 'thim' }))).toEqual(
    only('catalogue-thinner-unknown products[1].thinner.thinner'),
  );
});

test('a filler has an id that nothing else is priced by', () => {
  const found = (...ids: readonly string[]): readonly string[] => {
    const file = structuredClone(catalogueJson) as unknown as CatalogueFile;
    const packs = [{ id: 'tube', volume: '600 mL' }];
    file.thinners = [{ id: 'thin', name: 'Thinner', packs: [{ id: 'tin', volume: '1 gal' }] }];
    file.fillers = ids.map((id) => ({ id, name: 'Filler', kinds: ['rigid'], packs }));
    const read = catalogueFrom(file);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return checkCatalogue(read.value).map(({ code, path }) => `${code} ${pathText(path)}`);
  };
  expect(found('fill')).toEqual([]);
  expect(found('fill', 'fill')).toEqual(only('check-id-twice fillers[1].id'));
  expect(found('base-b', 'thin')).toEqual(
    only('catalogue-filler-id-taken fillers[0].id', 'catalogue-filler-id-taken fillers[1].id'),
  );
});
