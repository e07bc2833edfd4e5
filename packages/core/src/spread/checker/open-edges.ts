import type { SpreadCase } from '../types.ts';
import type { SpreadBreak } from './break.ts';
import { look } from './look.ts';
import type { CheckFloor } from './raster.ts';

/** Ages of the edges that have to tie in, the metres closed too late and where it is worst. */
export function checkOpenEdges(
  question: SpreadCase,
  floor: CheckFloor,
  pours: readonly number[][],
  time: Float64Array,
  breaks: SpreadBreak[],
) {
  const pourOf = new Int32Array(floor.squares.length).fill(-1);
  pours.forEach((pour, k) => {
    for (const s of pour) pourOf[s] = k;
  });
  const seams: number[] = [];
  let maxAgeMin = 0;
  let cold = 0;
  let worst: SpreadBreak | undefined;
  let worstOver = 0;
  floor.squares.forEach((square, s) => {
    for (const way of [0, 1] as const) {
      const o = square.next[way];
      if (o < 0 || square.stop[way] || pourOf[s] === -1 || pourOf[o] === -1) continue;
      const age = Math.abs((time[s] as number) - (time[o] as number));
      maxAgeMin = Math.max(maxAgeMin, age);
      if (pourOf[s] !== pourOf[o]) seams.push(age);
      const openMin = look(
        question.clock.openMin,
        question.clock.startMin + Math.min(time[s] as number, time[o] as number),
      );
      if (age <= openMin + 1e-9) continue;
      cold += 1;
      if (age - openMin > worstOver) {
        worstOver = age - openMin;
        worst = {
          code: 'check/open-edge',
          pour: 1 + Math.max(pourOf[s] as number, pourOf[o] as number),
          at: [square.x, square.y],
          figures: { ageMin: age, openMin },
        };
      }
    }
  });
  const coldM = cold * question.cellM;
  if (worst) breaks.push({ ...worst, figures: { ...worst.figures, coldM } });
  seams.sort((p, q) => p - q);
  const p95AgeMin = seams[Math.min(seams.length - 1, Math.floor(0.95 * seams.length))] ?? 0;
  return { maxAgeMin, p95AgeMin, seamM: seams.length * question.cellM, coldM };
}
