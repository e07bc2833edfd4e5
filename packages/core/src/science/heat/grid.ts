import type { Layer } from './materials.ts';

/**
 * Finite-volume grid of a layered slab: thin cells at the top, where a day's swing lives, thick ones below.
 *
 * Cell faces fall exactly on the layer interfaces, so each cell has one material and the conductance between two cell
 * centres is the two half-cells in series: heat flow stays exact across a jump of conductivity.
 */
export interface HeatGrid {
  readonly count: number;
  /** Cell thickness, m, from the top. */
  readonly thickness: Float64Array;
  /** Depth of the cell centre, m. */
  readonly centre: Float64Array;
  /** Heat capacity of the cell, J/(m² K). */
  readonly capacity: Float64Array;
  /** Half-cell resistance, m² K/W. */
  readonly halfResistance: Float64Array;
  /** Index of the layer the cell belongs to. */
  readonly layer: Uint8Array;
  /** Total depth, m. */
  readonly depth: number;
}

/** First cell, m. 8 mm would still do (0.07 K worst error against a fine grid); 4 mm leaves room for thin toppings. */
export const FIRST_CELL = 0.004;
export const CELL_GROWTH = 1.25;
/** m */
export const LARGEST_CELL = 0.4;

export interface GridChoice {
  readonly firstCell?: number;
  readonly growth?: number;
  readonly largestCell?: number;
}

/** Sizes of the cells of one layer: growing from `wanted`, then scaled so that they fill the layer exactly. */
const cellsOfLayer = (total: number, wanted: number, growth: number, largest: number): number[] => {
  const sizes: number[] = [];
  let sum = 0;
  let size = Math.min(wanted, largest);
  while (sum < total) {
    sizes.push(size);
    sum += size;
    size = Math.min(size * growth, largest);
  }
  // Dropping the last cell is nearer to the layer than keeping it when it overshoots by more than half of itself.
  const last = sizes[sizes.length - 1] ?? 0;
  if (sizes.length > 1 && sum - total > last / 2) {
    sizes.pop();
    sum -= last;
  }
  const scale = total / sum;
  return sizes.map((each) => each * scale);
};

/**
 * Grid over the given layers, from the top down.
 *
 * @throws RangeError when there is no layer or a layer has no positive thickness, conductivity or capacity: callers
 *   check user input before (`slabIssues`); reaching this is a mistake of ours.
 */
export const heatGrid = (layers: readonly Layer[], choice: GridChoice = {}): HeatGrid => {
  if (layers.length === 0) throw new RangeError('heatGrid: no layers');
  const growth = choice.growth ?? CELL_GROWTH;
  const largest = choice.largestCell ?? LARGEST_CELL;
  let next = choice.firstCell ?? FIRST_CELL;
  const sizes: number[] = [];
  const owner: number[] = [];
  for (const [index, layer] of layers.entries()) {
    const { thickness, conductivity, density, heatCapacity } = layer;
    if (!(thickness > 0 && conductivity > 0 && density > 0 && heatCapacity > 0)) {
      throw new RangeError(`heatGrid: layer ${index} is not physical`);
    }
    for (const size of cellsOfLayer(thickness, next, growth, largest)) {
      sizes.push(size);
      owner.push(index);
    }
    next = Math.min((sizes[sizes.length - 1] ?? next) * growth, largest);
  }

  const count = sizes.length;
  const grid = {
    count,
    thickness: Float64Array.from(sizes),
    centre: new Float64Array(count),
    capacity: new Float64Array(count),
    halfResistance: new Float64Array(count),
    layer: Uint8Array.from(owner),
    depth: 0,
  };
  let top = 0;
  for (let i = 0; i < count; i++) {
    const size = sizes[i] as number;
    const material = layers[owner[i] as number] as Layer;
    grid.centre[i] = top + size / 2;
    grid.capacity[i] = size * material.density * material.heatCapacity;
    grid.halfResistance[i] = size / 2 / material.conductivity;
    top += size;
  }
  grid.depth = top;
  return grid;
};
