import type { FloorGeometry } from './floor-geometry.ts';

/**
 * Arrays that every candidate of a floor fills anew and nobody keeps: a search grows hundreds of orders, and handing out
 * fresh arrays for each costs as much as growing them.
 */
export interface Scratch {
  readonly growth: {
    readonly due: Float64Array;
    readonly chain: Float64Array;
    readonly next: Int32Array;
    readonly previous: Int32Array;
    readonly state: Uint8Array;
    readonly loose: Int32Array;
  };
  readonly heap: { readonly square: Int32Array; readonly key: Float64Array; readonly seen: Uint8Array };
  /** Neighbours in pairs, each pair once: those that must tie in, and those with a stop line between them. */
  readonly pairs: { readonly tied: Int32Array; readonly free: Int32Array };
  readonly clock: { readonly time: Float64Array; readonly pourOf: Int32Array; readonly ages: Float64Array };
}

/** By the links: the coats of one floor share them. */
const kept = new WeakMap<Int32Array, Scratch>();

/** The arrays of a floor, made when first asked for. */
export function scratchOf(squares: FloorGeometry): Scratch {
  const before = kept.get(squares.link);
  if (before) return before;
  const { count } = squares;
  const made: Scratch = {
    growth: {
      due: new Float64Array(count),
      chain: new Float64Array(count),
      next: new Int32Array(count + 1),
      previous: new Int32Array(count + 1),
      state: new Uint8Array(count),
      loose: new Int32Array(count + 1),
    },
    heap: { square: new Int32Array(count + 1), key: new Float64Array(count + 1), seen: new Uint8Array(count) },
    pairs: pairsOf(squares),
    clock: { time: new Float64Array(count), pourOf: new Int32Array(count), ages: new Float64Array(2 * count) },
  };
  kept.set(squares.link, made);
  return made;
}

function pairsOf({ count, link, free }: FloorGeometry): Scratch['pairs'] {
  const tied: number[] = [];
  const parted: number[] = [];
  for (let s = 0; s < count; s++) {
    for (let side = 4 * s; side < 4 * s + 2; side++) {
      const other = link[side] as number;
      if (other >= 0) (free[side] ? parted : tied).push(s, other);
    }
  }
  return { tied: Int32Array.from(tied), free: Int32Array.from(parted) };
}
