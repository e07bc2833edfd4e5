import { type FloorGeometry, floorGeometry } from './floor-geometry.ts';
import { insideRing } from './geometry.ts';
import { handsOf, minutesOnPiece } from './hands.ts';
import type { SpreadCase } from './types.ts';

/** Squares of a floor with what a coat puts on them. */
export interface FloorSquares extends FloorGeometry {
  readonly litres: Float64Array;
  /** Minutes the front stands on the square. */
  readonly minutes: Float64Array;
}

/**
 * Squares of a case. `whole`: the instance format's rule, every square counts its full area. `clipped`: each square
 * counts the floor inside it, so that litres add up to the drawn area; edges and narrow passages are measured too.
 */
export function floorSquares(question: SpreadCase, areas: 'whole' | 'clipped'): FloorSquares {
  const geometry = floorGeometry(question, areas);
  const { count, x, y, areaM2, edgeM } = geometry;
  const hands = handsOf(question.crew);
  const litres = new Float64Array(count);
  const minutes = new Float64Array(count);
  for (let s = 0; s < count; s++) {
    let perM2 = question.batch.litresPerM2;
    for (const { poly, factor } of question.batch.zones ?? []) {
      if (insideRing(x[s] as number, y[s] as number, poly)) perM2 *= factor;
    }
    litres[s] = (areaM2[s] as number) * perM2;
    minutes[s] = minutesOnPiece(hands, areaM2[s] as number, edgeM[s] as number);
  }
  return { ...geometry, litres, minutes };
}
