import { localUnit, turns } from './area-turns.ts';
import { areaCentres, areasBetween, type LineFamily } from './areas.ts';
import { sweepField } from './fields.ts';
import type { SpreadProblem } from './problem.ts';
import type { Idea } from './sketch.ts';

/** Bay by bay: strip after strip, in each strip one bay after the other, swept along or across the strip. */
export function baySketches(problem: SpreadProblem, family: LineFamily): Idea[] {
  const { squares } = problem;
  const strips = areasBetween(squares, (line) => family.lines.includes(line));
  const bays = areasBetween(squares, () => true);
  if (bays.count <= strips.count || strips.count < 2) return [];
  const across: readonly [number, number] = [-family.along[1], family.along[0]];
  const stripCentres = areaCentres(squares, strips);
  const bayCentres = areaCentres(squares, bays);
  const stripOf = new Int32Array(bays.count);
  bays.areaOf.forEach((bay, s) => {
    stripOf[bay] = strips.areaOf[s] as number;
  });
  const sketches: Idea[] = [];
  for (const lanes of ['to and fro', 'one way', 'other way'] as const) {
    for (const sign of [1, -1]) {
      const offset = stripCentres.x.map((x, a) => sign * (x * across[0] + (stripCentres.y[a] as number) * across[1]));
      const stripTurn = turns(strips, offset);
      const turnOfStrip = new Int32Array(strips.count);
      strips.areaOf.forEach((strip, s) => {
        turnOfStrip[strip] = stripTurn[s] as number;
      });
      for (const first of [1, -1]) {
        const offsets = bayCentres.x.map((x, bay) => {
          const strip = turnOfStrip[stripOf[bay] as number] as number;
          const way = first * ((strip & 1) === 0 ? 1 : -1);
          return strip * 1e6 + way * (x * family.along[0] + (bayCentres.y[bay] as number) * family.along[1]);
        });
        const turn = turns(bays, offsets);
        for (const [name, sweep, tangent] of [
          ['across', across, family.along],
          ['along', family.along, across],
        ] as const) {
          for (const way of [1, -1]) {
            sketches.push(() => ({
              name: `bays ${sign} ${first}, ${name} ${way}, ${lanes}`,
              turn,
              field: sweepField(squares, [sweep[0] * way, sweep[1] * way]),
              along: localUnit(turn, sweepField(squares, tangent)),
              lanes,
            }));
          }
        }
      }
    }
  }
  return sketches;
}
