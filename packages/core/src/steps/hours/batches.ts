import type { Product } from '../../catalogue.ts';
import { tabled } from '../../data/tabled.ts';
import type { Figure, Given } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, sheetOf } from '../context.ts';
import { batchCount } from '../formulas/hours-tasks.ts';
import type { LayerQuantity } from '../results.ts';
import { assumed } from './assumed.ts';

/** Above this a batch takes the longer mixing cycle of the table. */
const SMALL_BATCH = tabled('10 L', 'm³');

export interface Batches {
  readonly count: Figure<'1'>;
  /** Line of the table of rates for one mixing. */
  readonly row: 'mix' | 'mix-large';
}

/** Largest batch: that of the mixing list where there is one, else the sheet's, else an assumption. */
function largestBatch(trace: Trace, product: Product, quantity: LayerQuantity): Given<'m³'> {
  const listed = quantity.batches;
  if (listed && listed.values.length > 0) {
    const value = Math.max(...listed.values);
    return trace.given('largest-batch', { value, unit: 'm³', origin: 'chosen', where: listed.id, shows: 'volume' });
  }
  const sheet = product.largestBatch;
  if (sheet) return givenField(trace, 'largest-batch', sheet, 'data sheet', { where: sheetOf(product) });
  return assumed(trace, 'largest-batch', 'largestBatch', 'm³', 'hours-largest-batch-assumed', 'volume');
}

export function batchesOf(trace: Trace, product: Product, quantity: LayerQuantity): Batches {
  const largest = largestBatch(trace, product, quantity);
  const count = trace.figure('batches', batchCount, { volume: quantity.needed, largestBatch: largest });
  return { count, row: largest.value > SMALL_BATCH + 1e-9 ? 'mix-large' : 'mix' };
}
