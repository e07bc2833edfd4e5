import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkSequence, type DrawnPour, drawnSolution, readInstance, reordered, spreadProblem } from './index.ts';

const read = readInstance(
  JSON.parse(readFileSync(new URL('../../../../reference/spread/l-shape.json', import.meta.url), 'utf8')),
);
if (!read.ok) throw new Error('unreadable l-shape');
const question = read.value;
const problem = spreadProblem(question, 'clipped');

// 60 m² of which one batch covers 20; the only door lies at the right end of the lower part
const pours: DrawnPour[] = [
  {
    ring: [
      [0, 4],
      [4, 4],
      [4, 9],
      [0, 9],
    ],
    towards: [0, -1],
  },
  {
    ring: [
      [0, 0],
      [5, 0],
      [5, 4],
      [0, 4],
    ],
    towards: [1, 0],
  },
  {
    ring: [
      [5, 0],
      [10, 0],
      [10, 4],
      [5, 4],
    ],
    towards: [1, 0],
  },
];

describe('pours drawn by hand', () => {
  it('that retreat to the door pass', () => {
    const report = checkSequence(question, drawnSolution(problem, pours), 'clipped');
    expect(report.breaks).toEqual([]);
    expect(report.pours).toBe(3);
  });

  it('in another order paint somebody in, and the checker says in which', () => {
    const report = checkSequence(question, reordered(drawnSolution(problem, pours), [3, 2, 1]), 'clipped');
    const codes = report.breaks.map(({ code }) => code);
    expect(codes).toContain('check/painted-in');
    expect(codes).toContain('check/does-not-end-at-exit');
    expect(report.ok).toBe(false);
  });

  it('that leave a corner out are told how much', () => {
    const report = checkSequence(question, drawnSolution(problem, pours.slice(0, 2)), 'clipped');
    expect(report.breaks.find(({ code }) => code === 'check/left-out')?.figures.m2).toBeCloseTo(20, 9);
  });

  it('larger than a batch are told by how much', () => {
    const large: DrawnPour[] = [
      {
        ring: [
          [0, 4],
          [4, 4],
          [4, 9],
          [0, 9],
        ],
        towards: [0, -1],
      },
      { ring: question.outline, towards: [1, 0] },
    ];
    const found = checkSequence(question, drawnSolution(problem, large), 'clipped').breaks;
    expect(found.find(({ code }) => code === 'check/pour-too-large')?.figures).toMatchObject({ batchL: 6 });
  });
});
