import type { Dot } from '../worker/api.ts';
import type { CoatCells } from './api.ts';
import { joined, type Side } from './lines.ts';

/** The floor at one moment of its day: where the film still waits to be tied in, and how the crew gets out. */

type Front = Pick<CoatCells, 'x' | 'y' | 'size' | 'beside' | 'free'>;

/** Sides where film lies against floor that is still bare and must tie in; ends on a joint or tape do not wait. */
export function wetEdge({ x, y, size, beside, free }: Front, down: number): readonly (readonly [Dot, Dot])[] {
  const sides: Side[] = [];
  for (let k = 0; k < down; k++) {
    for (let side = 0; side < 4; side++) {
      const other = beside[4 * k + side] as number;
      if (other < down || free[4 * k + side]) continue;
      const upright = side % 2 === 0;
      const out = side < 2 ? size / 2 : -size / 2;
      const [across, along] = upright ? [x, y] : [y, x];
      sides.push({ upright, line: (across[k] as number) + out, from: (along[k] as number) - size / 2 });
    }
  }
  return joined(sides, size);
}

type Way = Pick<CoatCells, 'x' | 'y' | 'beside' | 'narrow' | 'doors'>;

/** The shortest dry way from a square to a door, corners only; none where every way is wet. */
export function wayOut({ x, y, beside, narrow, doors }: Way, from: number, down: number): readonly Dot[] {
  const leads = new Set(doors);
  const before = new Map<number, number>([[from, -1]]);
  const reached = [from];
  let end = -1;
  for (const here of reached) {
    if (leads.has(here)) {
      end = here;
      break;
    }
    for (let side = 4 * here; side < 4 * here + 4; side++) {
      const next = beside[side] as number;
      // the square the crew stands on may be wet already; what it walks over may not
      if (next < down || narrow[side] || before.has(next)) continue;
      before.set(next, here);
      reached.push(next);
    }
  }
  const dots: Dot[] = [];
  for (let k = end; k >= 0; k = before.get(k) ?? -1) dots.push([x[k] as number, y[k] as number]);
  return corners(dots.reverse());
}

/** Only the places where a way turns, and its two ends. */
function corners(dots: readonly Dot[]): readonly Dot[] {
  return dots.filter(([x, y], i) => {
    const [before, after] = [dots[i - 1], dots[i + 1]];
    if (!before || !after) return true;
    return Math.abs((x - before[0]) * (after[1] - y) - (y - before[1]) * (after[0] - x)) > 1e-9;
  });
}
