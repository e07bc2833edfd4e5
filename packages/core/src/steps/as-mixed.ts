import type { Moment, OtherMix, Product } from '../catalogue.ts';

/** A product as one of its mixes makes it; `mixed` names that mix, and is absent for the first. */
export type MixedProduct = Product & {
  readonly mixed?: string;
  /** Times that this mix does not state, so that those of the first mix stand in for them. */
  readonly inherited?: readonly Moment[];
};

const made = new WeakMap<Product, Map<string, MixedProduct>>();

/**
 * The product with the ratio, times and limits of one of its mixes. A product without that mix is a mistake of ours:
 * the check of the catalogue refuses it. Asked twice it is the same object.
 */
export function asMixed(product: Product, mix: string | undefined): MixedProduct {
  if (mix === undefined) return product;
  const known = made.get(product) ?? new Map<string, MixedProduct>();
  made.set(product, known);
  const before = known.get(mix);
  if (before) return before;
  const other = product.mixes?.find(({ id }) => id === mix);
  if (!other) throw new Error(`product ${product.id} has no mix that the check let through: ${mix}`);
  const mixed = merged(product, other);
  known.set(mix, mixed);
  return mixed;
}

function merged(product: Product, other: OtherMix): MixedProduct {
  const { id, name, sheet, mix, volumeSolids, film, times, climate, ...stated } = other;
  const own = new Set((times ?? []).map(({ what }) => what));
  const rest = (product.times ?? []).filter(({ what }) => !own.has(what));
  const inherited = [...new Set(rest.map(({ what }) => what))];
  return {
    ...product,
    ...stated,
    name: `${product.name}, ${name}`,
    sheet: sheet ?? product.sheet,
    mix,
    volumeSolids: volumeSolids ?? product.volumeSolids,
    ...(film ? { film: { ...product.film, ...film } } : {}),
    ...(times ? { times: [...times, ...rest] } : {}),
    ...(climate ? { climate: { ...product.climate, ...climate } } : {}),
    mixed: id,
    ...(inherited.length > 0 ? { inherited } : {}),
  };
}
