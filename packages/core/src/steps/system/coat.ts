import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import type { MixedProduct } from '../as-mixed.ts';

/** One coat as every check of the fit sees it. */
export interface Coat {
  readonly layer: Layer;
  readonly product: MixedProduct;
  /** What people call it: the layer's own name, else the product's. */
  readonly name: string;
  /** Where its sheet is named. */
  readonly sheet: string;
  readonly trace: Trace;
  readonly wet: Known<'m'>;
  readonly dry: Known<'m'>;
  readonly wetVertical?: Known<'m'>;
  readonly solids: Known<'1'>;
  readonly thinnerRatio?: Known<'1'>;
  /** It goes up stem walls, coves or steps that are there. */
  readonly climbs: boolean;
}

/** What a check found; several are joined in the order of the checks. */
export interface Found {
  readonly reasons: readonly Reason[];
  readonly notes?: readonly Said[];
  readonly missing?: readonly Missing[];
}

export const NOTHING: Found = { reasons: [] };

export const join = (found: readonly Found[]): Required<Found> => ({
  reasons: found.flatMap((one) => one.reasons),
  notes: found.flatMap((one) => one.notes ?? []),
  missing: found.flatMap((one) => one.missing ?? []),
});

/** A fact of a data sheet that is not in the catalogue: it may never be assumed for a go. */
export function sheetSilent(coat: Coat, code: string, field: string): Found {
  const names = { layer: coat.name, product: coat.product.name };
  return {
    reasons: [{ code, verdict: 'not known', names }],
    missing: [
      {
        path: `catalogue.products.${coat.product.id}.${field}`,
        fact: { code, names },
        changes: { code: 'system-sheet-decides', names },
        meanwhile: 'held',
      },
    ],
  };
}
