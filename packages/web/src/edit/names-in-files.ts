import { listAt, type Path, type Raw, textAt } from './path.ts';
import type { Choice } from './spec.ts';

/** Names that a field may point at, from the same file or the one beside it. */

const choices = (items: readonly Raw[]): readonly Choice[] =>
  items
    .map((item) => ({ id: textAt(item, ['id']), name: textAt(item, ['name']) || textAt(item, ['id']) }))
    .filter(({ id }) => id !== '');

export const areaNames = (job: Raw): readonly Choice[] => choices(listAt(job, ['areas']));

/** Test points drawn in any room. */
export const drawnPoints = (job: Raw): readonly Choice[] =>
  listAt(job, ['areas']).flatMap((area) => choices(listAt(area, ['points'])));

export const productNames = (_: Raw, catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['products']));
export const toolNames = (_: Raw, catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['tools']));
export const systemNames = (_: Raw, catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['systems']));

/** Layers of the system that the option around this field names. */
export function layerNames(job: Raw, catalogue: Raw, path: Path): readonly Choice[] {
  const system = textAt(job, [...path.slice(0, 2), 'system']);
  const found = listAt(catalogue, ['systems']).find((one) => textAt(one, ['id']) === system);
  return choices(listAt(found, ['layers']));
}

/** Stem walls, coves and steps of the rooms an option covers. */
export const uprightNames = (job: Raw): readonly Choice[] =>
  listAt(job, ['areas']).flatMap((area) =>
    (['stemWalls', 'coves', 'steps'] as const).flatMap((kind) => choices(listAt(area, [kind]))),
  );

export const ownProducts = (catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['products']));
export const ownThinners = (catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['thinners']));

const mixesOf = (catalogue: Raw, product: string): readonly Choice[] =>
  choices(listAt(named(catalogue, 'products', product), ['mixes']));
const named = (catalogue: Raw, list: string, id: string): Raw =>
  listAt(catalogue, [list]).find((one) => textAt(one, ['id']) === id);

/** Further mixes of the product that the coat around this field names; left empty it is the first. */
export const ownMixes = (catalogue: Raw, _: Raw, path: Path): readonly Choice[] =>
  mixesOf(catalogue, textAt(catalogue, [...path.slice(0, 4), 'product']));

/** The same for a test of open time, which stands in the job. */
export const mixNames = (job: Raw, catalogue: Raw, path: Path): readonly Choice[] =>
  mixesOf(catalogue, textAt(job, [...path.slice(0, 3), 'product']));

/** All that is sold in packs of its own price: products, then thinners and fillers. */
export const pricedNames = (_: Raw, catalogue: Raw): readonly Choice[] => [
  ...choices(listAt(catalogue, ['products'])),
  ...choices(listAt(catalogue, ['thinners'])),
  ...choices(listAt(catalogue, ['fillers'])),
];

export const ownMedia = (catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['media']));

/** Components of the product around this field. */
export const componentNames = (catalogue: Raw, _: Raw, path: Path): readonly Choice[] => {
  const product = listAt(catalogue, ['products'])[Number(path[1])];
  return choices(listAt(product, ['components']));
};

export const mediaNames = (_: Raw, catalogue: Raw): readonly Choice[] => choices(listAt(catalogue, ['media']));

/** Packs of the product, thinner or filler that the price around this field names. */
export function packNames(prices: Raw, catalogue: Raw, path: Path): readonly Choice[] {
  const product = textAt(prices, [...path.slice(0, 2), 'product']);
  const found =
    named(catalogue, 'products', product) ??
    named(catalogue, 'thinners', product) ??
    named(catalogue, 'fillers', product);
  return choices(listAt(found, ['packs']));
}
