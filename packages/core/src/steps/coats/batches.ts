import type { Product } from '../../catalogue.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenCount, givenFact, givenField, sheetOf } from '../context.ts';
import { batchOfSplit } from '../formulas/coats.ts';
import { componentMass, componentVolume } from '../formulas/quantities-components.ts';
import { mixShares } from '../quantities/mix-shares.ts';
import type { BatchGroup, LayerQuantity } from '../results.ts';

/** Batches whose volumes differ by less than this share are one kind: a scale does not tell them apart. */
const SAME = 1e-6;

interface Run {
  readonly from: number;
  readonly count: number;
}

/** Neighbouring batches of one size, counted. */
function runs(volumes: readonly number[]): readonly Run[] {
  const found: Run[] = [];
  volumes.forEach((volume, i) => {
    const last = found.at(-1);
    const size = last && volumes[last.from];
    if (last && size !== undefined && Math.abs(volume - size) <= SAME * size) {
      found[found.length - 1] = { from: last.from, count: last.count + 1 };
    } else found.push({ from: i, count: 1 });
  });
  return found;
}

/** Batches of one coat by size, each part by volume and, where the sheet states its density, by mass. */
export function batchGroups(trace: Trace, product: Product, quantity: LayerQuantity): readonly BatchGroup[] {
  const list = quantity.batches;
  if (!list || !product.largestBatch) return [];
  const where = sheetOf(product);
  const largestBatch = givenField(trace, 'largest-batch', product.largestBatch, 'data sheet', { where });
  const smallestBatch = product.smallestBatch
    ? givenField(trace, 'smallest-batch', product.smallestBatch, 'data sheet', { where })
    : trace.given('smallest-batch', { value: 0, unit: 'm³', origin: 'assumed', shows: 'volume' });
  const shares = mixShares(trace, product);
  const densities = new Map(
    product.components.flatMap(({ id, density }) =>
      density ? [[id, givenFact(trace, `${id}.density`, density, { where })] as const] : [],
    ),
  );
  return runs(list.values).map(({ from, count }, i) => {
    const t = trace.within('batch').within(`${i + 1}`);
    const volume = t.figure('volume', batchOfSplit, {
      totalVolume: quantity.needed,
      largestBatch,
      smallestBatch,
      place: givenCount(t, 'place', from + 1, 'chosen'),
    });
    return {
      count: givenCount(t, 'count', count, 'chosen', list.id),
      volume,
      parts: shares.map(({ component, share }) => {
        const part = t.figure(`${component}.volume`, componentVolume, { mixed: volume, share });
        const density = densities.get(component);
        const name = product.components.find((one) => one.id === component)?.name ?? component;
        return {
          component,
          name,
          volume: part,
          ...(density ? { mass: t.figure(`${component}.mass`, componentMass, { volume: part, density }) } : {}),
        };
      }),
    };
  });
}
