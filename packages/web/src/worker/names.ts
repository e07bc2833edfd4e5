import type { Catalogue } from '@slabwright/core';

/** Names the screen needs beside the plan: products, thinners, fillers, media and tools by id, packs as `product/pack`. */
export function namesOf(catalogue: Catalogue): Record<string, string> {
  const names: Record<string, string> = {};
  for (const product of catalogue.products) {
    names[product.id] = product.name;
    for (const pack of product.packs) names[`${product.id}/${pack.id}`] = pack.name ?? pack.id;
  }
  for (const tinned of [...(catalogue.thinners ?? []), ...(catalogue.fillers ?? [])]) {
    names[tinned.id] = tinned.name;
    for (const pack of tinned.packs) names[`${tinned.id}/${pack.id}`] = pack.name ?? pack.id;
  }
  for (const media of catalogue.media ?? []) {
    names[media.id] = media.name;
    names[`${media.id}/bag`] = media.bag.typed;
  }
  for (const tool of catalogue.tools ?? []) names[tool.id] = tool.name;
  for (const system of catalogue.systems) names[system.id] = system.name;
  return names;
}
