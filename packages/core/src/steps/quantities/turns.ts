import type { Band, Figure, Known } from '../../kernel/entry.ts';
import { evaluate } from '../../kernel/formula.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { areaAtBreak, depthAtBreak, surplusAtBreak } from '../formulas/quantities-breaks.ts';
import type { LayerMeasured } from './layer.ts';

/**
 * Where the count turns. A depth of profile or texture is believed to within a factor of four (common practice, no
 * source), a surplus to within its own size; an area only within the band of its tape.
 */
const DEPTH_FACTOR = 4;
const SURPLUS_FACTOR = 2;

interface Driver {
  /** The coat it belongs to; a driver of all coats names none. */
  readonly layer?: LayerMeasured;
  readonly name: 'texture' | 'profile' | 'surplus' | 'area';
  readonly value: Known;
  readonly window: Band;
  readonly at: (reach: Reach) => number;
  readonly record: (trace: Trace, reach: Reach) => Figure;
}

export interface ProductNeed {
  readonly layers: readonly LayerMeasured[];
  readonly total: Known<'m³'>;
  readonly floor: Known<'m²'>;
}

/** One side on which the count turns: what the packs make there, and the count beyond. */
export interface Side {
  readonly way: 'up' | 'down';
  readonly capacity: Known<'m³'>;
  /** Where coats of several mixes share packs: what one coat's mix needs, and how far it reaches alone. */
  readonly ofLayer?: (layer: LayerMeasured) => Reach;
  readonly other: (trace: Trace, layer: LayerMeasured | undefined) => Known<'1'>;
  /** Which words count: `kits` where nothing else is said. */
  readonly words?: 'packs';
}

export interface Reach {
  readonly total: Known<'m³'>;
  readonly capacity: Known<'m³'>;
}

const widened = (known: Known, low: number, high: number): Band => {
  const [bandLow, bandHigh] = known.band ?? [known.value, known.value];
  return [Math.min(bandLow, low), Math.max(bandHigh, high)];
};

const valuesOf = ({ total, capacity }: Reach): { readonly total: number; readonly capacity: number } => ({
  total: total.value,
  capacity: capacity.value,
});

function depthDriver(
  name: 'texture' | 'profile',
  { depth, area }: { readonly depth: Known<'m'>; readonly area: Known<'m²'> },
  layer: LayerMeasured,
): Driver {
  const inputs = { depth, area, net: layer.quantity.net, toBuy: layer.toBuy };
  const plain = {
    depth: depth.value,
    area: area.value,
    net: layer.quantity.net.value,
    toBuy: layer.toBuy.value,
  };
  return {
    layer,
    name,
    value: depth,
    window: widened(depth, depth.value / DEPTH_FACTOR, depth.value * DEPTH_FACTOR),
    at: (reach) => evaluate(depthAtBreak, { ...plain, ...valuesOf(reach) }).value,
    record: (trace, reach) => trace.figure('turn', depthAtBreak, { ...inputs, ...reach }),
  };
}

function driversOf({ layers, total, floor }: ProductNeed): readonly Driver[] {
  const found: Driver[] = [];
  for (const layer of layers) {
    const toBuy = layer.toBuy;
    if (toBuy.value <= 0) continue;
    if (layer.texture) found.push(depthDriver('texture', layer.texture, layer));
    if (layer.profile) found.push(depthDriver('profile', layer.profile, layer));
    if (layer.surplus) {
      const surplus = layer.surplus;
      const plain = { surplus: surplus.value, toBuy: toBuy.value };
      found.push({
        layer,
        name: 'surplus',
        value: surplus,
        window: widened(surplus, 0, surplus.value * SURPLUS_FACTOR),
        at: (reach) => evaluate(surplusAtBreak, { ...plain, ...valuesOf(reach) }).value,
        record: (trace, reach) => trace.figure('turn', surplusAtBreak, { surplus, toBuy, ...reach }),
      });
    }
  }
  if (floor.band && total.value > 0) {
    found.push({
      name: 'area',
      value: floor,
      window: floor.band,
      at: (reach) => evaluate(areaAtBreak, { area: floor.value, ...valuesOf(reach) }).value,
      record: (trace, reach) => trace.figure('turn', areaAtBreak, { area: floor, ...reach }),
    });
  }
  return found;
}

/** How far into what is believed possible the break lies: within the band of the driver below any that lies outside. */
function farness({ value, window, at }: Driver, reach: Reach): number | undefined {
  const broken = at(reach);
  const up = broken >= value.value;
  const room = up ? window[1] - value.value : value.value - window[0];
  const move = Math.abs(broken - value.value);
  if (room <= 0 || move > room) return undefined;
  const inBand = value.band !== undefined && broken >= value.band[0] && broken <= value.band[1];
  return move / room + (inBand ? 0 : 1);
}

/**
 * The fact whose value turns the count, and at which value: the sides are tried in order, upward first, because
 * running short stops a floor.
 */
export function turnsOf(trace: Trace, need: ProductNeed, count: Known<'1'>, sides: readonly Side[]): Said | undefined {
  const drivers = driversOf(need);
  for (const { way, capacity, ofLayer, other, words } of sides) {
    const reachOf = ({ layer }: Driver): Reach => (layer && ofLayer?.(layer)) ?? { total: need.total, capacity };
    let nearest: Driver | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const driver of drivers) {
      const far = farness(driver, reachOf(driver));
      if (far === undefined || far >= least) continue;
      least = far;
      nearest = driver;
    }
    if (!nearest) continue;
    const t = trace.within('turns');
    const at = nearest.record(t, reachOf(nearest));
    return {
      code: `quantities-turns-${nearest.name}-${way}${words ? `-${words}` : ''}`,
      figures: { count: count.id, other: other(t, nearest.layer).id, at: at.id, value: nearest.value.id },
    };
  }
  return undefined;
}
