import type { SpreadCase } from '../types.ts';
import { placeOf, type SpreadBreak } from './break.ts';
import type { CheckFloor } from './raster.ts';

/** Read backwards, every square must be at an exit or touch one spread later; otherwise somebody stands on an island. */
export function checkDryReach(
  question: SpreadCase,
  floor: CheckFloor,
  sequence: readonly number[],
  narrow: ReadonlyMap<number, number>,
  breaks: SpreadBreak[],
): void {
  const last = sequence[sequence.length - 1];
  if (last === undefined) return;
  if (floor.squares[last]?.exits.length === 0) {
    breaks.push({ code: 'check/does-not-end-at-exit', at: placeOf(floor, last), figures: {} });
  }
  if (question.crew.spikedShoes === true) return;
  const later = new Uint8Array(floor.squares.length);
  for (let k = sequence.length - 1; k >= 0; k--) {
    const s = sequence[k] as number;
    const square = floor.squares[s];
    if (!square) continue;
    if (square.exits.length === 0) {
      const touching = square.next.map((o, way) => (o >= 0 && later[o] ? 4 * s + way : -1)).filter((step) => step >= 0);
      if (touching.length === 0) {
        breaks.push({ code: 'check/painted-in', at: [square.x, square.y], figures: { place: k + 1 } });
      } else if (touching.every((step) => narrow.has(step))) {
        const widthM = Math.max(...touching.map((step) => narrow.get(step) ?? 0));
        breaks.push({
          code: 'check/passage-too-narrow',
          at: [square.x, square.y],
          figures: { widthM, neededM: question.passageM ?? 0.45 },
        });
      }
    }
    later[s] = 1;
  }
}

/** A station on the floor must be dry, and joined to the pour by dry floor, whenever a batch is handed over. */
export function checkStation(
  question: SpreadCase,
  floor: CheckFloor,
  pours: readonly number[][],
  breaks: SpreadBreak[],
): void {
  if (!('point' in question.mixAt)) return;
  const [px, py] = question.mixAt.point;
  const half = question.cellM / 2;
  const at = floor.squares.findIndex(({ x, y }) => Math.abs(x - px) <= half + 1e-9 && Math.abs(y - py) <= half + 1e-9);
  const covered = pours.findIndex((pour) => pour.includes(at));
  if (at >= 0 && covered >= 0 && covered < pours.length - 1) {
    breaks.push({
      code: 'check/station-covered',
      pour: covered + 1,
      at: [px, py],
      figures: { batchesAfter: pours.length - 1 - covered },
    });
  }
}
