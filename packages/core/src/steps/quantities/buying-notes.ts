import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { BuyingLine } from '../results.ts';
import { ratioParts } from './packs.ts';

export interface Bought {
  readonly line?: BuyingLine;
  readonly notes: readonly Said[];
  readonly missing: readonly Missing[];
  readonly reasons: readonly Reason[];
}

/** No packs of the sheet make what is needed. */
export function noPacks(product: Product, needed: Known<'m³'>, notes: readonly Said[]): Bought {
  const reason: Reason = {
    code: 'quantities-no-packs',
    verdict: 'not known',
    figures: { needed: needed.id },
    names: { product: product.name },
  };
  return { notes, missing: [], reasons: [reason] };
}

/** How the packs were chosen, where it is not plainly the cheapest of priced packs. */
export function choiceNotes(
  product: Product,
  offer: { readonly packs: readonly unknown[]; readonly unpriced: readonly string[] },
  proven: boolean,
): readonly Said[] {
  const notes: Said[] = proven ? [] : [{ code: 'quantities-packs-not-proven', names: { product: product.name } }];
  if (offer.packs.length > 1 && offer.unpriced.length > 0) {
    notes.push({
      code: 'quantities-packs-unpriced',
      names: { product: product.name, packs: offer.unpriced.join(', ') },
    });
  }
  return notes;
}

/** A tint of the kit goes whole into the kit; one sold apart without a dose in the ratio is named, never guessed. */
export function additionNotes(product: Product, counted: readonly string[]): Said[] {
  const mixed = ratioParts(product);
  return product.components
    .filter((one) => one.addition && !mixed.has(one.id))
    .map((one) => ({
      code: counted.includes(one.id) ? 'quantities-addition-with-kit' : 'quantities-addition-not-counted',
      names: { product: product.name, component: one.name },
    }));
}
