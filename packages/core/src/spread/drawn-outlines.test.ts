import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkOutlines, judgeOutlines, type OutlinedPour, planSpread, readInstance, spreadProblem } from './index.ts';
import type { Point, Ring } from './types.ts';

const read = readInstance(
  JSON.parse(readFileSync(new URL('../../../../reference/spread/l-shape.json', import.meta.url), 'utf8')),
);
if (!read.ok) throw new Error('unreadable l-shape');
const question = read.value;
const problem = spreadProblem(question, 'clipped');

const box = (x0: number, y0: number, x1: number, y1: number): Ring => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
];
// 60 m² of which one batch covers 20; the only door lies at the right end of the lower part
const back: OutlinedPour = { ring: box(0, 4, 4, 9) };
const corner: OutlinedPour = { ring: box(0, 0, 5, 4) };
const front: OutlinedPour = { ring: box(5, 0, 10, 4) };

function judged(pours: readonly OutlinedPour[]) {
  const result = judgeOutlines(problem, pours);
  if (result.kind === 'issues') throw new Error(JSON.stringify(result.issues));
  return result;
}
const codes = (pours: readonly OutlinedPour[]) => judged(pours).breaks.map(({ code }) => code);

describe('pours drawn as outlines', () => {
  it('that retreat to the door stand, whichever way round they are drawn, with directions found', () => {
    const result = judged([back, { ring: [...corner.ring].reverse() }, front]);
    expect(result.breaks).toEqual([]);
    expect(result.ok).toBe(true);
    expect(result.pours.map(({ litres }) => litres)).toEqual([
      expect.closeTo(6, 9),
      expect.closeTo(6, 9),
      expect.closeTo(6, 9),
    ]);
    expect(result.pours.map(({ batchShare }) => batchShare)).toEqual([1, 1, 1].map((one) => expect.closeTo(one, 9)));
    expect(result.gapM2).toBeCloseTo(0, 6);
    expect(result.solution.pours).toHaveLength(3);
  });

  it('keep the direction they are drawn with', () => {
    const across: OutlinedPour = { ...front, towards: [0, -2] };
    const result = judged([back, corner, across]);
    expect(result.pours[2]?.towards).toEqual([0, -2]);
    // found ones are at least as good as any drawn one
    expect(judged([back, corner, front]).report.maxAgeMin).toBeLessThanOrEqual(result.report.maxAgeMin + 1e-9);
  });

  it('in another order paint somebody in', () => {
    const found = codes([front, corner, back]);
    expect(found).toContain('check/painted-in');
    expect(found).toContain('check/does-not-end-at-exit');
  });

  it('with a gap between them: how much is left out and where', () => {
    const result = judged([back, { ring: box(0, 0, 4, 4) }, front]);
    expect(result.gapM2).toBeCloseTo(4, 6);
    const left = result.breaks.find(({ code }) => code === 'check/left-out');
    expect(left?.figures.m2).toBeCloseTo(4, 9);
    expect(left?.at?.[0]).toBeGreaterThan(4);
  });

  it('with lines a hand’s breadth apart: nothing is left out', () => {
    const result = judged([back, { ring: box(0.1, 0.1, 4.8, 3.9) }, front]);
    expect(result.gapM2).toBeGreaterThan(1);
    expect(result.breaks).toEqual([]);
    expect(result.pours.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(60, 9);
  });

  it('drawn over an earlier one: by how much, over which, and it gets only what is left', () => {
    const result = judged([back, corner, { ring: box(3, 0, 10, 4) }]);
    const over = result.breaks.find(({ code }) => code === 'drawn/overlap');
    expect(over).toMatchObject({ pour: 3, figures: { earlier: 2 } });
    expect(over?.figures.m2).toBeCloseTo(8, 6);
    expect(over?.at).toEqual([expect.closeTo(4, 6), expect.closeTo(2, 6)]);
    expect(result.pours[2]?.areaM2).toBeCloseTo(20, 9);
    expect(result.ok).toBe(false);
    // a strip of a hand's breadth is no overlap
    expect(codes([back, corner, { ring: box(4.9, 0, 10, 4) }])).toEqual([]);
  });

  it('beyond the walls are cut off there, and told', () => {
    const result = judged([{ ring: box(-1, 4, 4, 10) }, corner, front]);
    expect(result.breaks).toEqual([]);
    expect(result.pours[0]?.offFloorM2).toBeCloseTo(5 * 6 - 20, 6);
    expect(result.pours[0]?.areaM2).toBeCloseTo(20, 9);
  });

  it('larger than a batch: litres and the number as drawn, also behind one with nothing inside', () => {
    const result = judged([{ ring: box(20, 20, 22, 22) }, back, { ring: box(0, 0, 10, 4) }]);
    expect(result.breaks.find(({ code }) => code === 'drawn/nothing-inside')).toMatchObject({
      pour: 1,
      figures: { m2: 4 },
    });
    const large = result.breaks.find(({ code }) => code === 'check/pour-too-large');
    expect(large).toMatchObject({ pour: 3, figures: { batchL: 6 } });
    expect(large?.figures.litres).toBeCloseTo(12, 9);
  });

  it('on a hot day: an edge that closes too late, with its age', () => {
    const hot = { ...question, clock: { ...question.clock, openMin: [[480, 2]] as const } };
    const result = judgeOutlines(spreadProblem(hot, 'clipped'), [back, corner, front]);
    if (result.kind === 'issues') throw new Error('issues');
    const edge = result.breaks.find(({ code }) => code === 'check/open-edge');
    expect(edge?.figures.openMin).toBe(2);
    expect(edge?.figures.ageMin).toBeGreaterThan(2);
  });

  it('say the same every time', () => {
    expect(judgeOutlines(problem, [back, corner, front])).toEqual(judgeOutlines(problem, [back, corner, front]));
  });
});

describe('drawings that mean nothing yet', () => {
  const issue = (pour: OutlinedPour) => checkOutlines([back, pour])[0];

  it('no pour at all', () => {
    expect(judgeOutlines(problem, [])).toEqual({
      kind: 'issues',
      issues: [{ code: 'drawn/no-pours', path: 'pours', value: 0, limits: { low: 1 } }],
    });
  });
  it('a line, two corners, a corner nowhere', () => {
    const line: Ring = [
      [0, 0],
      [1, 1],
      [2, 2],
    ];
    expect(issue({ ring: line })).toEqual({
      code: 'drawn/no-area',
      path: 'pours.1.ring',
      value: 3,
      limits: { low: 3 },
    });
    expect(issue({ ring: line.slice(0, 2) })).toMatchObject({ code: 'drawn/no-area', value: 2 });
    expect(issue({ ring: [[0, 0] as Point, [1, Number.NaN] as Point, [1, 1] as Point] })).toMatchObject({
      code: 'drawn/no-area',
    });
  });
  it('a line that crosses itself', () => {
    const bow: Ring = [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 3],
    ];
    expect(issue({ ring: bow })).toMatchObject({ code: 'drawn/crosses-itself', path: 'pours.1.ring.0' });
  });
  it('a direction that leads nowhere', () => {
    expect(issue({ ...corner, towards: [0, 0] })).toMatchObject({
      code: 'drawn/no-direction',
      path: 'pours.1.towards',
      value: '0, 0',
    });
  });
});

describe('pours that stand as planned', () => {
  const plan = planSpread(question, { areas: 'clipped', seed: 1 });
  if (plan.kind !== 'plan') throw new Error(plan.kind);
  const asPlanned = plan.solution.pours.map(({ cells }): OutlinedPour => {
    const own = Array.from({ length: cells.length / 2 }, (_, k) => [cells[2 * k], cells[2 * k + 1]] as Point);
    const { minX, minY, cellM } = problem.squares;
    const [columns, rows] = [own.map(([i]) => i), own.map(([, j]) => j)];
    const at = (low: number, k: number): number => low + k * cellM;
    // the box of a pour: what its neighbours have of it does not matter, the squares are its own
    return {
      ring: box(
        at(minX, Math.min(...columns)),
        at(minY, Math.min(...rows)),
        at(minX, Math.max(...columns) + 1),
        at(minY, Math.max(...rows) + 1),
      ),
      cells,
    };
  });

  it('are judged in the order of the plan, to the square', () => {
    const { solution, report } = judged(asPlanned);
    expect(solution.pours).toEqual(plan.solution.pours);
    expect(report.ok).toBe(true);
    expect(report.maxAgeMin).toBe(plan.check.maxAgeMin);
  });

  it('change places as a whole, and then somebody is painted in', () => {
    const { report } = judged([...asPlanned].reverse());
    expect(report.breaks.map(({ code }) => code)).toContain('check/painted-in');
  });

  it('leave to an earlier pour what it was drawn over', () => {
    const first = asPlanned[0] as OutlinedPour;
    const { pours } = judged([{ ring: first.ring }, first]);
    expect(pours[1]?.squares).toBe(0);
  });
});
