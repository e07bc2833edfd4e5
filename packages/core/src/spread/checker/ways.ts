import type { Point, SpreadCase } from '../types.ts';
import type { CheckFloor } from './raster.ts';

/** Metres a person walks from one square to another while those in `wet` are closed; Infinity when there is no way. */
export type Way = (from: number, to: number, wet: Uint8Array) => number;

/** Breadth-first walks over the checker's floor; steps that are too narrow are not taken; doors may join outside. */
export function waysOver(question: SpreadCase, floor: CheckFloor, narrow: ReadonlySet<number>): Way {
  const { squares } = floor;
  const around = roundTheBuilding(question);
  const metresFrom = (from: number, to: number, wet: Uint8Array, distances: Map<number, number>): number => {
    distances.clear();
    distances.set(from, 0);
    let ring = [from];
    for (let steps = 0; ring.length > 0; steps++) {
      const outer: number[] = [];
      for (const s of ring) {
        if (s === to) return steps * question.cellM;
        squares[s]?.next.forEach((o, way) => {
          if (o < 0 || distances.has(o) || narrow.has(4 * s + way)) return;
          if (wet[o] && question.crew.spikedShoes !== true) return;
          distances.set(o, steps + 1);
          outer.push(o);
        });
      }
      ring = outer;
    }
    return Infinity;
  };
  return (from, to, wet) => {
    const seen = new Map<number, number>();
    const direct = metresFrom(from, to, wet, seen);
    if (direct < Infinity) return direct;
    const leave = byExit(seen);
    metresFrom(to, -1, wet, seen);
    const enter = byExit(seen);
    const p = squares[from];
    const q = squares[to];
    // out and in again by one wide door: at least the way across
    const across = p && q ? Math.sqrt((p.x - q.x) ** 2 + (p.y - q.y) ** 2) : 0;
    let least = Infinity;
    for (const [k, before] of leave) {
      for (const [m, after] of enter) least = Math.min(least, Math.max(across, before + around(k, m) + after));
    }
    return least;
  };

  function byExit(seen: ReadonlyMap<number, number>): Map<number, number> {
    const metres = new Map<number, number>();
    for (const [s, steps] of seen) {
      for (const k of squares[s]?.exits ?? []) {
        if (!question.exits[k]?.outside) continue;
        metres.set(k, Math.min(metres.get(k) ?? Infinity, steps * question.cellM));
      }
    }
    return metres;
  }
}

/** Way round the building from exit to exit: along the outline, whichever side is shorter. */
function roundTheBuilding(question: SpreadCase): (k: number, m: number) => number {
  const ring = question.outline;
  let total = 0;
  const place = question.exits.map(() => ({ away: Infinity, along: 0 }));
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] as Point;
    const span = Math.sqrt((q[0] - p[0]) ** 2 + (q[1] - p[1]) ** 2);
    question.exits.forEach(({ a, b }, k) => {
      const mx = (a[0] + b[0]) / 2;
      const my = (a[1] + b[1]) / 2;
      const t =
        span === 0
          ? 0
          : Math.max(0, Math.min(1, ((mx - p[0]) * (q[0] - p[0]) + (my - p[1]) * (q[1] - p[1])) / span ** 2));
      const away = Math.sqrt((mx - p[0] - t * (q[0] - p[0])) ** 2 + (my - p[1] - t * (q[1] - p[1])) ** 2);
      const best = place[k] as { away: number; along: number };
      if (away < best.away) place[k] = { away, along: total + t * span };
    });
    total += span;
  });
  return (k, m) => {
    const one = Math.abs((place[k]?.along ?? 0) - (place[m]?.along ?? 0));
    return Math.min(one, total - one);
  };
}
