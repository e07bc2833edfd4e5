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
  readonly name: 'texture' | 'profile' | 'surplus' | 'area';
  readonly value: Known;
  readonly window: Band;
  readonly at: (capacity: number) => number;
  readonly record: (trace: Trace, capacity: Known<'m³'>) => Figure;
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
  readonly other: (trace: Trace) => Known<'1'>;
}

const widened = (known: Known, low: number, high: number): Band => {
  const [bandLow, bandHigh] = known.band ?? [known.value, known.value];
  return [Math.min(bandLow, low), Math.max(bandHigh, high)];
};

function depthDriver(
  name: 'texture' | 'profile',
  { depth, area }: { readonly depth: Known<'m'>; readonly area: Known<'m²'> },
  layer: LayerMeasured,
  total: Known<'m³'>,
): Driver {
  const inputs = { depth, area, net: layer.quantity.net, toBuy: layer.toBuy, total };
  const plain = {
    depth: depth.value,
    area: area.value,
    net: layer.quantity.net.value,
    toBuy: layer.toBuy.value,
    total: total.value,
  };
  return {
    name,
    value: depth,
    window: widened(depth, depth.value / DEPTH_FACTOR, depth.value * DEPTH_FACTOR),
    at: (capacity) => evaluate(depthAtBreak, { ...plain, capacity }).value,
    record: (trace, capacity) => trace.figure('turn', depthAtBreak, { ...inputs, capacity }),
  };
}

function driversOf({ layers, total, floor }: ProductNeed): readonly Driver[] {
  const found: Driver[] = [];
  for (const layer of layers) {
    const toBuy = layer.toBuy;
    if (toBuy.value <= 0) continue;
    if (layer.texture) found.push(depthDriver('texture', layer.texture, layer, total));
    if (layer.profile) found.push(depthDriver('profile', layer.profile, layer, total));
    if (layer.surplus) {
      const surplus = layer.surplus;
      const plain = { surplus: surplus.value, toBuy: toBuy.value, total: total.value };
      found.push({
        name: 'surplus',
        value: surplus,
        window: widened(surplus, 0, surplus.value * SURPLUS_FACTOR),
        at: (capacity) => evaluate(surplusAtBreak, { ...plain, capacity }).value,
        record: (trace, capacity) => trace.figure('turn', surplusAtBreak, { surplus, toBuy, total, capacity }),
      });
    }
  }
  if (floor.band && total.value > 0) {
    found.push({
      name: 'area',
      value: floor,
      window: floor.band,
      at: (capacity) => evaluate(areaAtBreak, { area: floor.value, total: total.value, capacity }).value,
      record: (trace, capacity) => trace.figure('turn', areaAtBreak, { area: floor, total, capacity }),
    });
  }
  return found;
}

/** How far into what is believed possible the break lies: within the band of the driver below any that lies outside. */
function farness({ value, window, at }: Driver, capacity: number): number | undefined {
  const broken = at(capacity);
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
  for (const { way, capacity, other } of sides) {
    let nearest: Driver | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (const driver of drivers) {
      const far = farness(driver, capacity.value);
      if (far === undefined || far >= least) continue;
      least = far;
      nearest = driver;
    }
    if (!nearest) continue;
    const t = trace.within('turns');
    const at = nearest.record(t, capacity);
    return {
      code: `quantities-turns-${nearest.name}-${way}`,
      figures: { count: count.id, other: other(t).id, at: at.id, value: nearest.value.id },
    };
  }
  return undefined;
}
