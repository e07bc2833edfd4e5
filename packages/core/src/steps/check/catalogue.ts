import type { Catalogue, Layer, Product, System } from '../../catalogue.ts';
import type { Field } from '../../fields.ts';
import type { Issue } from '../../kernel/issue.ts';

type Path = readonly (string | number)[];

/** Sense of a catalogue that its schema cannot see: ids that name nothing, limits upside down, packs that make no mix. */
export function checkCatalogue(catalogue: Catalogue): readonly Issue[] {
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const media = new Set((catalogue.media ?? []).map((one) => one.id));
  return [
    ...twice(catalogue.products, ['products']),
    ...twice(catalogue.media ?? [], ['media']),
    ...twice(catalogue.systems, ['systems']),
    ...twice(catalogue.tools ?? [], ['tools']),
    ...catalogue.products.flatMap((product, i) => checkProduct(product, ['products', i])),
    ...catalogue.systems.flatMap((system, i) => checkSystem(system, ['systems', i], products, media)),
  ];
}

/** The second of two equal ids, at its own place. */
function twice(list: readonly { readonly id: string }[], path: Path): readonly Issue[] {
  const seen = new Set<string>();
  return list.flatMap(({ id }, i) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [{ code: 'catalogue-id-twice', path: [...path, i, 'id'], value: id }];
  });
}

function unknownId(id: string, path: Path, known: Iterable<string>): Issue {
  return { code: 'catalogue-id-unknown', path, value: id, limits: [...known] };
}

function checkProduct(product: Product, path: Path): readonly Issue[] {
  const components = new Set(product.components.map((one) => one.id));
  const known = (id: string, at: Path): readonly Issue[] =>
    components.has(id) ? [] : [unknownId(id, [...path, ...at], components)];
  const named = new Set(product.mix.map((one) => one.component));
  return [
    ...twice(product.components, [...path, 'components']),
    ...twice(product.packs, [...path, 'packs']),
    ...twice(
      product.mix.map((one) => ({ id: one.component })),
      [...path, 'mix'],
    ),
    ...product.mix.flatMap((one, i) => known(one.component, ['mix', i, 'component'])),
    ...product.packs.flatMap((pack, p) => [
      ...twice(
        pack.parts.map((part) => ({ id: part.component })),
        [...path, 'packs', p, 'parts'],
      ),
      ...pack.parts.flatMap((part, i) => known(part.component, ['packs', p, 'parts', i, 'component'])),
      ...yieldIssue(pack, [...path, 'packs', p]),
    ]),
    ...product.components.flatMap((one, i) =>
      one.addition || named.has(one.id)
        ? []
        : [
            {
              code: 'catalogue-component-not-in-mix',
              path: [...path, 'components', i],
              value: one.id,
              limits: [...named],
            },
          ],
    ),
    ...product.mix.flatMap((one, i) =>
      !components.has(one.component) ||
      product.packs.some((pack) => pack.parts.some((p) => p.component === one.component))
        ? []
        : [{ code: 'catalogue-packs-cannot-make-mix', path: [...path, 'mix', i], value: one.component }],
    ),
    ...upsideDown(product, path),
    ...consumptionIssue(product, path),
    ...moistureIssues(product, path),
    ...profileIssue(product.profile, [...path, 'profile']),
  ];
}

function yieldIssue(pack: Product['packs'][number], path: Path): readonly Issue[] {
  const nominal = pack.parts.reduce((sum, part) => sum + part.volume.value, 0);
  // The sheet's figures are rounded: a yield a thousandth above the sum is the sum.
  if (!pack.yields || pack.yields.value <= nominal * 1.001) return [];
  const litres = `${Number((nominal * 1000).toPrecision(6))} L`;
  return [
    {
      code: 'catalogue-yield-above-parts',
      path: [...path, 'yields'],
      value: pack.yields.typed,
      limits: ['0.01 L', litres],
    },
  ];
}

type Ordered = readonly [at: Path, low: Field | undefined, high: Field | undefined];

function upsideDown(product: Product, path: Path): readonly Issue[] {
  const { film, climate, smallestBatch, largestBatch } = product;
  const pairs: readonly Ordered[] = [
    [['film', 'leastDry'], film?.leastDry, film?.mostDry],
    [['film', 'leastWet'], film?.leastWet, film?.mostWet],
    [['climate', 'slabLeast'], climate?.slabLeast, climate?.slabMost],
    [['climate', 'airLeast'], climate?.airLeast, climate?.airMost],
    [['climate', 'humidityLeast'], climate?.humidityLeast, climate?.humidityMost],
    [['climate', 'materialLeast'], climate?.materialLeast, climate?.materialMost],
    [['smallestBatch'], smallestBatch, largestBatch],
    [['bondLeast'], product.bondLeast, product.bondNeed],
  ];
  return pairs.flatMap(([at, low, high]) =>
    low && high && low.value > high.value
      ? [{ code: 'catalogue-limits-upside-down', path: [...path, ...at], value: low.typed, limits: ['', high.typed] }]
      : [],
  );
}

function profileIssue(
  profile: { readonly least: number; readonly most: number } | undefined,
  path: Path,
): readonly Issue[] {
  if (!profile || profile.least <= profile.most) return [];
  return [
    {
      code: 'catalogue-limits-upside-down',
      path: [...path, 'least'],
      value: `${profile.least}`,
      limits: ['1', `${profile.most}`],
    },
  ];
}

/** A consumption that leaves out the film would say nothing about the litres of the film. */
function consumptionIssue({ consumption }: Product, path: Path): readonly Issue[] {
  if (!consumption || consumption.includes.includes('film')) return [];
  return [
    {
      code: 'catalogue-consumption-without-film',
      path: [...path, 'consumption', 'includes'],
      value: consumption.includes.join(', '),
    },
  ];
}

const FIELD_OF = {
  'ASTM F2170': 'humidity',
  'BS 8203 hood': 'humidity',
  'ASTM F1869': 'emission',
  carbide: 'content',
} as const;

/** A limit must be in the quantity its method reads. */
function moistureIssues(product: Product, path: Path): readonly Issue[] {
  return (product.moisture ?? []).flatMap((limit, i) => {
    const wanted = FIELD_OF[limit.method];
    return limit[wanted]
      ? []
      : [
          {
            code: 'catalogue-moisture-limit-missing',
            path: [...path, 'moisture', i, wanted],
            value: limit.method,
            limits: [wanted],
          },
        ];
  });
}

function checkSystem(
  system: System,
  path: Path,
  products: ReadonlyMap<string, Product>,
  media: ReadonlySet<string>,
): readonly Issue[] {
  return [
    ...twice(system.layers, [...path, 'layers']),
    ...profileIssue(system.profile, [...path, 'profile']),
    ...system.layers.flatMap((layer, i) => checkLayer(layer, [...path, 'layers', i], products, media)),
  ];
}

function checkLayer(
  layer: Layer,
  path: Path,
  products: ReadonlyMap<string, Product>,
  media: ReadonlySet<string>,
): readonly Issue[] {
  const found: Issue[] = [];
  if (!products.has(layer.product)) found.push(unknownId(layer.product, [...path, 'product'], products.keys()));
  if (layer.wetFilm && layer.dryFilm) {
    found.push({ code: 'catalogue-layer-film-twice', path: [...path, 'dryFilm'], value: layer.dryFilm.typed });
  }
  if (!layer.wetFilm && !layer.dryFilm)
    found.push({ code: 'catalogue-layer-film-missing', path: [...path, 'wetFilm'] });
  if (layer.wetFilmVertical && !layer.verticals) {
    found.push({
      code: 'catalogue-layer-vertical-film-unused',
      path: [...path, 'wetFilmVertical'],
      value: layer.wetFilmVertical.typed,
    });
  }
  const { broadcast } = layer;
  if (!broadcast) return found;
  const at = [...path, 'broadcast'];
  if (!media.has(broadcast.media)) found.push(unknownId(broadcast.media, [...at, 'media'], media));
  if (broadcast.kept && broadcast.kept.value > broadcast.thrown.value) {
    found.push({
      code: 'catalogue-broadcast-kept-above-thrown',
      path: [...at, 'kept'],
      value: broadcast.kept.typed,
      limits: ['', broadcast.thrown.typed],
    });
  }
  if (broadcast.verticals && !layer.verticals)
    found.push({ code: 'catalogue-broadcast-vertical-without-coat', path: [...at, 'verticals'] });
  return found;
}
