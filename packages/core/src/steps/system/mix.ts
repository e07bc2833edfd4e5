import { type Coat, type Found, NOTHING } from './coat.ts';

/** Times that stand in for those a mix does not state: said, because another hardener is faster or slower. */
export function mixFit({ name, product }: Coat): Found {
  if (!product.inherited) return NOTHING;
  const names = { layer: name, product: product.name, moments: product.inherited.join(', ') };
  return { reasons: [], notes: [{ code: 'system-mix-times-inherited', names }] };
}
