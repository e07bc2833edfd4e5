import type { Catalogue, Layer, Product } from '../../catalogue.ts';
import type { Issue } from '../../kernel/issue.ts';
import { asMixed } from '../as-mixed.ts';
import { duplicates, type Path } from './ids.ts';

/** Sense of what is mixed, bought and laid: packs that make no mix, yields above their parts, films named twice. */
export function mixesAndCoats(catalogue: Catalogue): readonly Issue[] {
  return [
    ...catalogue.products.flatMap((product, i) => productIssues(product, ['products', i])),
    ...catalogue.systems.flatMap((system, s) =>
      system.layers.flatMap((layer, i) => layerIssues(layer, ['systems', s, 'layers', i])),
    ),
  ];
}

const componentIds = (list: readonly { readonly component: string }[]): readonly { readonly id: string }[] =>
  list.map(({ component }) => ({ id: component }));

function productIssues(product: Product, path: Path): readonly Issue[] {
  const every = [product.mix, ...(product.mixes ?? []).map(({ mix }) => mix)];
  const named = new Set(every.flat().map((one) => one.component));
  const packed = new Set(product.packs.flatMap((pack) => pack.parts.map((part) => part.component)));
  const known = new Set(product.components.map((one) => one.id));
  return [
    ...duplicates(componentIds(product.mix), [...path, 'mix']),
    ...product.packs.flatMap((pack, p) => [
      ...duplicates(componentIds(pack.parts), [...path, 'packs', p, 'parts']),
      ...yieldIssues(pack, [...path, 'packs', p]),
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
    ...every.flatMap((mix, m) => {
      const at = m === 0 ? [...path, 'mix'] : [...path, 'mixes', m - 1, 'mix'];
      return mix.flatMap((one, i) =>
        !known.has(one.component) || packed.has(one.component)
          ? []
          : [{ code: 'catalogue-packs-cannot-make-mix', path: [...at, i], value: one.component }],
      );
    }),
    ...(product.mixes ?? []).flatMap(({ id, mix }, m) => [
      ...duplicates(componentIds(mix), [...path, 'mixes', m, 'mix']),
      ...batchIssues(asMixed(product, id), [...path, 'mixes', m]),
    ]),
    ...batchIssues(product, path),
    ...bondIssues(product, path),
    ...consumptionIssues(product, path),
  ];
}

function yieldIssues(pack: Product['packs'][number], path: Path): readonly Issue[] {
  const nominal = pack.parts.reduce((sum, part) => sum + part.volume.value, 0);
  // The sheet's figures are rounded: a yield a thousandth above the sum is the sum.
  if (!pack.yields || pack.yields.value <= nominal * 1.001) return [];
  const litres = `${Number((nominal * 1000).toPrecision(6))} L`;
  const code = 'catalogue-yield-above-parts';
  return [{ code, path: [...path, 'yields'], value: pack.yields.typed, limits: ['0.01 L', litres] }];
}

function batchIssues({ smallestBatch, largestBatch }: Product, path: Path): readonly Issue[] {
  if (!smallestBatch || !largestBatch || smallestBatch.value <= largestBatch.value) return [];
  const limits = [smallestBatch.typed, largestBatch.typed];
  const at = [...path, 'smallestBatch'];
  return [{ code: 'catalogue-limits-upside-down', path: at, value: smallestBatch.typed, limits }];
}

function bondIssues({ bondLeast, bondNeed }: Product, path: Path): readonly Issue[] {
  if (!bondLeast || !bondNeed || bondLeast.value <= bondNeed.value) return [];
  const limits = [bondLeast.typed, bondNeed.typed];
  return [{ code: 'catalogue-limits-upside-down', path: [...path, 'bondLeast'], value: bondLeast.typed, limits }];
}

/** A consumption that leaves out the film would say nothing about the litres of the film. */
function consumptionIssues({ consumption }: Product, path: Path): readonly Issue[] {
  if (!consumption || consumption.includes.includes('film')) return [];
  const at = [...path, 'consumption', 'includes'];
  return [{ code: 'catalogue-consumption-without-film', path: at, value: consumption.includes.join(', ') }];
}

function layerIssues(layer: Layer, path: Path): readonly Issue[] {
  const { wetFilm, dryFilm, wetFilmVertical, verticals, broadcast } = layer;
  const found: Issue[] = [];
  if (wetFilm && dryFilm) {
    found.push({ code: 'catalogue-layer-film-twice', path: [...path, 'dryFilm'], value: dryFilm.typed });
  }
  if (wetFilmVertical && !verticals) {
    const at = [...path, 'wetFilmVertical'];
    found.push({ code: 'catalogue-layer-vertical-film-unused', path: at, value: wetFilmVertical.typed });
  }
  if (!broadcast) return found;
  const { kept, thrown } = broadcast;
  if (kept && kept.value > thrown.value) {
    const at = [...path, 'broadcast', 'kept'];
    found.push({
      code: 'catalogue-broadcast-kept-above-thrown',
      path: at,
      value: kept.typed,
      limits: ['', thrown.typed],
    });
  }
  if (broadcast.verticals && !verticals) {
    found.push({ code: 'catalogue-broadcast-vertical-without-coat', path: [...path, 'broadcast', 'verticals'] });
  }
  return found;
}
