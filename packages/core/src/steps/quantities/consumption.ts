import type { Product } from '../../catalogue.ts';
import { round9 } from '../../kernel/canonical.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact, sheetOf } from '../context.ts';

export interface SheetConsumption {
  readonly consumption?: { readonly value: Given<'m'>; readonly includes: readonly string[] };
  readonly notes: readonly Said[];
  readonly reasons: readonly Reason[];
}

/**
 * What the sheet itself says is used per area, with what that counts in. It stands in place of the film; profile,
 * texture and loss are added only where the sheet does not already include them.
 */
export function consumptionOf(trace: Trace, product: Product, name: string, film: Known<'m'>): SheetConsumption {
  if (!product.consumption) return { notes: [], reasons: [] };
  const { value: fact, includes } = product.consumption;
  const value = givenFact(trace, 'consumption', fact, { where: sheetOf(product) });
  const notes = includes
    .filter((part) => part !== 'film')
    .map(
      (part): Said => ({
        code: `quantities-consumption-includes-${part}`,
        figures: { consumption: value.id },
        names: { layer: name },
      }),
    );
  const short = round9(value.value) < round9(film.value);
  const reasons: Reason[] = short
    ? [
        {
          code: 'quantities-consumption-below-film',
          verdict: 'caution',
          figures: { consumption: value.id, film: film.id },
          names: { layer: name },
          source: value.id,
        },
      ]
    : [];
  return { consumption: { value, includes }, notes, reasons };
}
