import { PASSAGE_M } from './passage.ts';
import type { SpreadProblem } from './problem.ts';
import type { SpreadIssue } from './types.ts';

/** Squares a walk from any door gets to; `wide`: through passages a person fits only. */
export function reachedFromDoors(problem: SpreadProblem, wide: boolean): Uint8Array {
  const { link, narrow, count } = problem.squares;
  const reached = new Uint8Array(count);
  const stack: number[] = [];
  for (const s of problem.doorSquares) {
    reached[s] = 1;
    stack.push(s);
  }
  while (stack.length > 0) {
    const s = stack.pop() as number;
    for (let side = 4 * s; side < 4 * s + 4; side++) {
      const other = link[side] as number;
      if (other < 0 || reached[other] || (wide && narrow[side])) continue;
      reached[other] = 1;
      stack.push(other);
    }
  }
  return reached;
}

/** Why no plan can cover the floor: no square at all, a door no square lies at, floor no door leads to. */
export function checkReach(problem: SpreadProblem): SpreadIssue[] {
  const { squares, question } = problem;
  if (squares.count === 0) {
    return [
      { code: 'spread/floor-smaller-than-lane', path: 'outline', value: 0, limits: { low: 1, laneM: squares.cellM } },
    ];
  }
  const issues: SpreadIssue[] = [];
  squares.doors.forEach((door, k) => {
    // a door of floor that is not spread today has no square of its own
    if (door.length > 0 || (question.done ?? []).length > 0) return;
    issues.push({
      code: 'spread/exit-off-floor',
      path: `exits.${k}`,
      value: 0,
      limits: { high: 0.75 * squares.cellM, unit: 'm' },
    });
  });
  if (problem.doorSquares.length === 0) {
    return issues.length > 0 ? issues : [{ code: 'spread/no-exit', path: 'exits', value: 0, limits: { low: 1 } }];
  }
  const reached = reachedFromDoors(problem, false);
  const fits = reachedFromDoors(problem, true);
  let apart = 0;
  let behind = 0;
  for (let s = 0; s < squares.count; s++) {
    if (!reached[s]) apart += squares.areaM2[s] as number;
    else if (!fits[s]) behind += squares.areaM2[s] as number;
  }
  if (apart > 0)
    issues.push({ code: 'spread/floors-not-joined', path: 'exits', value: apart, limits: { high: 0, unit: 'm²' } });
  if (behind > 0) {
    const low = question.passageM ?? PASSAGE_M;
    issues.push({
      code: 'spread/passage-too-narrow',
      path: 'walls',
      value: behind,
      limits: { low, unit: 'm', behind: 'm²' },
    });
  }
  issues.push(...checkStation(problem));
  return issues;
}

/** A station on the floor must stay dry until the last pail: the way to it has to fit into the last pour. */
function checkStation(problem: SpreadProblem): SpreadIssue[] {
  const { lastWay, squares, batchLitres, leastBatches } = problem;
  let way = 0;
  for (const s of lastWay) way += squares.litres[s] as number;
  let total = 0;
  for (const own of squares.litres) total += own;
  const last = total - batchLitres * (leastBatches - 1);
  if (way <= last + 1e-9) return [];
  return [{ code: 'spread/station-too-deep', path: 'mixAt.point', value: way, limits: { high: last, unit: 'L' } }];
}
