import type { Catalogue, Product } from '../../catalogue.ts';
import type { Field } from '../../fields.ts';
import type { Issue } from '../../kernel/issue.ts';
import { asMixed } from '../as-mixed.ts';
import { evidenceIssues } from './evidence.ts';
import { duplicates, type Path, unknownId, unknownOrNone } from './ids.ts';
import { mixesAndCoats } from './mixes-and-coats.ts';

const ids = (items: readonly { readonly id: string }[] | undefined): readonly string[] =>
  (items ?? []).map(({ id }) => id);

/** A pair of limits the wrong way round. */
function upsideDown(least: Field | undefined, most: Field | undefined, path: Path): readonly Issue[] {
  if (!least || !most || least.value <= most.value) return [];
  return [{ code: 'catalogue-limits-upside-down', path, value: least.typed, limits: [least.typed, most.typed] }];
}

function limitIssues({ film, climate, profile }: Product, path: Path): readonly Issue[] {
  const at = (name: string): Path => [...path, 'climate', name];
  const classes: readonly Issue[] =
    profile && profile.least > profile.most
      ? [
          {
            code: 'catalogue-limits-upside-down',
            path: [...path, 'profile'],
            value: `${profile.least}`,
            limits: [`${profile.least}`, `${profile.most}`],
          },
        ]
      : [];
  return [
    ...upsideDown(film?.leastDry, film?.mostDry, [...path, 'film', 'leastDry']),
    ...upsideDown(film?.leastWet, film?.mostWet, [...path, 'film', 'leastWet']),
    ...upsideDown(climate?.slabLeast, climate?.slabMost, at('slabLeast')),
    ...upsideDown(climate?.airLeast, climate?.airMost, at('airLeast')),
    ...upsideDown(climate?.humidityLeast, climate?.humidityMost, at('humidityLeast')),
    ...upsideDown(climate?.materialLeast, climate?.materialMost, at('materialLeast')),
    ...classes,
  ];
}

const VALUE = {
  'ASTM F2170': 'humidity',
  'ASTM F1869': 'emission',
  'BS 8203 hood': 'humidity',
  carbide: 'content',
} as const;

/** A moisture limit that does not state the number its method gives can never be compared. */
const moistureIssues = ({ moisture }: Product, path: Path): readonly Issue[] =>
  (moisture ?? []).flatMap((limit, i): readonly Issue[] => {
    const needs = VALUE[limit.method];
    if (limit[needs] !== undefined) return [];
    const at = [...path, 'moisture', i];
    return [{ code: 'catalogue-moisture-limit-missing', path: at, names: { method: limit.method, needs } }];
  });

function productIssues(product: Product, path: Path): readonly Issue[] {
  const components = ids(product.components);
  return [
    ...duplicates(product.components, [...path, 'components']),
    ...duplicates(product.packs, [...path, 'packs']),
    ...product.mix.flatMap(({ component }, i) =>
      unknownId('catalogue-component-unknown', component, components, [...path, 'mix', i, 'component']),
    ),
    ...duplicates(product.mixes, [...path, 'mixes']),
    ...(product.mixes ?? []).flatMap(({ id, mix }, m) => {
      const at = [...path, 'mixes', m];
      return [
        ...mix.flatMap(({ component }, i) =>
          unknownId('catalogue-component-unknown', component, components, [...at, 'mix', i, 'component']),
        ),
        ...limitIssues(asMixed(product, id), at),
      ];
    }),
    ...product.packs.flatMap(({ parts }, i) =>
      parts.flatMap(({ component }, k) =>
        unknownId('catalogue-component-unknown', component, components, [...path, 'packs', i, 'parts', k, 'component']),
      ),
    ),
    ...limitIssues(product, path),
    ...moistureIssues(product, path),
  ];
}

function systemIssues(catalogue: Catalogue): readonly Issue[] {
  return catalogue.systems.flatMap((system, i) => {
    const path = ['systems', i];
    const { profile } = system;
    const upside: readonly Issue[] =
      profile && profile.least > profile.most
        ? [
            {
              code: 'catalogue-limits-upside-down',
              path: [...path, 'profile'],
              value: `${profile.least}`,
              limits: [`${profile.least}`, `${profile.most}`],
            },
          ]
        : [];
    const layers = system.layers.flatMap((layer, k): readonly Issue[] => {
      const at = [...path, 'layers', k];
      const films = layer.wetFilm || layer.dryFilm;
      return [
        ...unknownId('catalogue-product-unknown', layer.product, ids(catalogue.products), [...at, 'product']).map(
          (issue) => ({
            ...issue,
            names: { ...issue.names, system: system.id },
          }),
        ),
        ...unknownOrNone(
          'catalogue-mix-unknown',
          'catalogue-mix-none',
          layer.mix,
          ids(catalogue.products.find(({ id }) => id === layer.product)?.mixes),
          [...at, 'mix'],
        ).map((issue) => ({ ...issue, names: { ...issue.names, product: layer.product } })),
        ...unknownId('catalogue-media-unknown', layer.broadcast?.media, ids(catalogue.media), [
          ...at,
          'broadcast',
          'media',
        ]),
        ...(films ? [] : [{ code: 'catalogue-layer-film-missing', path: at, value: layer.name ?? layer.id }]),
      ];
    });
    return [...duplicates(system.layers, [...path, 'layers']), ...upside, ...layers];
  });
}

/** Thinners are priced beside products, so one id may not name both; and a product names only a thinner there is. */
function thinnerIssues(catalogue: Catalogue): readonly Issue[] {
  const products = new Set(ids(catalogue.products));
  const thinners = ids(catalogue.thinners);
  return [
    ...(catalogue.thinners ?? []).flatMap((thinner, i): readonly Issue[] => [
      ...duplicates(thinner.packs, ['thinners', i, 'packs']),
      ...(products.has(thinner.id)
        ? [{ code: 'catalogue-thinner-named-as-product', path: ['thinners', i, 'id'], value: thinner.id }]
        : []),
    ]),
    ...catalogue.products.flatMap((product, i) =>
      unknownOrNone('catalogue-thinner-unknown', 'catalogue-thinner-none', product.thinner?.thinner, thinners, [
        'products',
        i,
        'thinner',
        'thinner',
      ]),
    ),
  ];
}

/** Fillers are priced by their id beside products and thinners, so none may share one. */
function fillerIssues({ products, thinners = [], fillers = [] }: Catalogue): readonly Issue[] {
  const taken = new Set([...ids(products), ...ids(thinners)]);
  return fillers.flatMap(({ id, packs }, i): readonly Issue[] => [
    ...duplicates(packs, ['fillers', i, 'packs']),
    ...(taken.has(id) ? [{ code: 'catalogue-filler-id-taken', path: ['fillers', i, 'id'], value: id }] : []),
  ]);
}

/** Sense of a catalogue that its schema cannot see: ids that name nothing, limits the wrong way round. */
export function checkCatalogue(catalogue: Catalogue): Issue[] {
  const tasks = (catalogue.rates ?? []).map(({ task }) => ({ id: task }));
  const twice = duplicates(tasks, ['rates']).map((issue) => ({ ...issue, path: [...issue.path.slice(0, -1), 'task'] }));
  return [
    ...duplicates(catalogue.products, ['products']),
    ...duplicates(catalogue.media, ['media']),
    ...duplicates(catalogue.thinners, ['thinners']),
    ...thinnerIssues(catalogue),
    ...duplicates(catalogue.fillers, ['fillers']),
    ...fillerIssues(catalogue),
    ...duplicates(catalogue.systems, ['systems']),
    ...duplicates(catalogue.tools, ['tools']),
    ...twice,
    ...catalogue.products.flatMap((product, i) => productIssues(product, ['products', i])),
    ...systemIssues(catalogue),
    ...mixesAndCoats(catalogue),
    ...evidenceIssues(catalogue),
  ];
}
