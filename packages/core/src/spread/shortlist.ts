import { lineFamilies } from './areas.ts';
import { baySketches } from './bay-sketches.ts';
import { distanceField } from './fields.ts';
import type { SpreadProblem } from './problem.ts';
import type { Idea } from './sketch.ts';
import { stripSketches } from './strip-sketches.ts';
import { areaSketches, wholeFields, wholeSketches } from './whole-sketches.ts';

/**
 * At most `most` sketches worth growing. The ones that cut the floor at its stop lines come first, since on a wide floor
 * joints matter more than the shape of the sweep; of the rest an even sample is taken.
 */
export function shortlist(problem: SpreadProblem, most: number): Idea[] {
  const { squares, question } = problem;
  const families = lineFamilies(question.stopLines);
  const doors = distanceField(squares, problem.doorSquares);
  const fields = wholeFields(problem, doors);
  const rest: Idea[] = families.length > 0 ? areaSketches(problem, fields, doors) : [];
  rest.push(...wholeSketches(problem, fields));
  const wanted = Math.max(most - rest.length, Math.ceil(most * 0.75));
  const cut: Idea[] = [];
  for (const every of [1, 2, 3]) {
    for (const family of families) {
      if (cut.length < wanted) cut.push(...stripSketches(problem, family, families, doors, every));
    }
    if (every > 1 || families.length < 2) continue;
    for (const family of families) if (cut.length < wanted) cut.push(...baySketches(problem, family));
  }
  const chosen = cut.slice(0, wanted);
  const room = Math.min(rest.length, most - chosen.length);
  for (let k = 0; k < room; k++) chosen.push(rest[Math.floor((k * rest.length) / room)] as Idea);
  return chosen;
}
