import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readInstance, readSolution } from '../instance.ts';
import type { SpreadCase, SpreadSolution } from '../types.ts';
import { checkSequence } from './index.ts';

function stored(name: string): { question: SpreadCase; solution: SpreadSolution } {
  const file = JSON.parse(
    readFileSync(new URL(`../../../../../reference/spread/${name}.json`, import.meta.url), 'utf8'),
  );
  const question = readInstance(file);
  const solution = readSolution(file);
  if (!question.ok || !solution.ok) throw new Error(`unreadable ${name}`);
  return { question: question.value, solution: solution.value };
}

type Pours = { pour: number; cells: number[] }[];

/** A copy of a sequence whose pours may be changed. */
function changed(solution: SpreadSolution, change: (pours: Pours) => void): SpreadSolution {
  const pours = solution.pours.map(({ pour, cells }) => ({ pour, cells: [...cells] }));
  change(pours);
  return { ...solution, pours };
}

const first = (pours: Pours) => pours[0] as Pours[number];
const last = (pours: Pours) => pours[pours.length - 1] as Pours[number];
const codes = (question: SpreadCase, solution: SpreadSolution) =>
  checkSequence(question, solution, 'whole').breaks.map(({ code }) => code);

describe('the checker', () => {
  it('imports nothing from the planner but the types of the question', () => {
    const folder = new URL('.', import.meta.url);
    for (const file of readdirSync(folder).filter((name) => !name.endsWith('.test.ts'))) {
      const text = readFileSync(new URL(file, folder), 'utf8');
      const lines = [...text.matchAll(/(import|export)[^;]*?from\s+'([^']+)'/g)];
      for (const [whole, , from] of lines) {
        const allowed = from?.startsWith('./') || (from === '../types.ts' && whole.startsWith('import type'));
        expect(allowed, `${file}: ${whole}`).toBe(true);
      }
    }
  });

  const names = ['garage-6x6', 'u-shape', 'hall-25x24', 'two-rooms', 'trap-comb'];
  describe.each(names)('rejects damage to the sequence of %s', (name) => {
    const { question, solution } = stored(name);

    it('not the undamaged one', () => {
      expect(codes(question, solution)).toEqual([]);
    });
    it('a square left out', () => {
      expect(
        codes(
          question,
          changed(solution, (pours) => first(pours).cells.splice(0, 2)),
        ),
      ).toContain('check/left-out');
    });
    it('a square spread twice', () => {
      const damaged = changed(solution, (pours) => last(pours).cells.push(...first(pours).cells.slice(0, 2)));
      expect(codes(question, damaged)).toContain('check/square-twice');
    });
    it('a square off the floor', () => {
      expect(
        codes(
          question,
          changed(solution, (pours) => first(pours).cells.push(900, 900)),
        ),
      ).toContain('check/square-off-floor');
    });
    it('the whole sequence backwards', () => {
      const damaged = changed(solution, (pours) => {
        pours.reverse();
        for (const pour of pours) {
          const pairs = pour.cells.flatMap((_, k) =>
            k % 2 === 0 ? [[pour.cells[k], pour.cells[k + 1]] as [number, number]] : [],
          );
          pour.cells.splice(0, pour.cells.length, ...pairs.reverse().flat());
        }
      });
      expect(codes(question, damaged)).toContain('check/painted-in');
    });
    it('the last pour spread first', () => {
      const damaged = changed(solution, (pours) => {
        const moved = pours.pop();
        if (moved) pours.unshift(moved);
      });
      const found = codes(question, damaged);
      expect(found.some((code) => code === 'check/painted-in' || code === 'check/does-not-end-at-exit')).toBe(true);
    });
    it('two pours poured from one batch', () => {
      const damaged = changed(solution, (pours) => {
        const [second] = pours.splice(1, 1);
        first(pours).cells.push(...(second?.cells ?? []));
      });
      expect(codes(question, damaged)).toContain('check/pour-too-large');
    });
    it('a hot day: open time shorter than the largest age', () => {
      const openMin = [[480, checkSequence(question, solution, 'whole').maxAgeMin - 0.01]] as const;
      expect(codes({ ...question, clock: { ...question.clock, openMin } }, solution)).toContain('check/open-edge');
    });
    it('resin that sets in the pail', () => {
      const workingMin = [[480, 5]] as const;
      expect(codes({ ...question, clock: { ...question.clock, workingMin } }, solution)).toContain(
        'check/working-time',
      );
    });
    it('a slow crew', () => {
      const crew = { ...question.crew, rateM2PerMinPerPerson: question.crew.rateM2PerMinPerPerson / 12 };
      expect(codes({ ...question, crew }, solution)).toContain('check/working-time');
    });
    it('an exit at another place', () => {
      const [x, y] = question.outline[0] as readonly [number, number];
      // no square of the last pours lies in the first corner of these floors
      const exits = [{ a: [x, y + 0.2] as const, b: [x, y + 0.3] as const, outside: true }];
      const moved = codes({ ...question, exits, mixAt: { exit: 0 } }, solution);
      expect(moved.length).toBeGreaterThan(0);
    });
    it('a mixing station covered before the last pail', () => {
      const [i, j] = first([...solution.pours.map((pour) => ({ ...pour, cells: [...pour.cells] }))]).cells as [
        number,
        number,
      ];
      const xs = question.outline.map(([x]) => x);
      const ys = question.outline.map(([, y]) => y);
      const point = [
        Math.min(...xs) + (i + 0.5) * question.cellM,
        Math.min(...ys) + (j + 0.5) * question.cellM,
      ] as const;
      expect(codes({ ...question, mixAt: { point } }, solution)).toContain('check/station-covered');
    });
  });

  it('says where, in which pour and by how much', () => {
    const { question, solution } = stored('garage-6x6');
    const report = checkSequence(
      { ...question, clock: { ...question.clock, openMin: [[480, 2.5]] } },
      solution,
      'whole',
    );
    const found = report.breaks.find(({ code }) => code === 'check/open-edge');
    expect(found?.figures.ageMin).toBeCloseTo(3.003, 3);
    expect(found?.figures.openMin).toBe(2.5);
    expect(found?.figures.coldM).toBeGreaterThan(0);
    expect(found?.pour).toBeGreaterThanOrEqual(1);
    expect(report.ok).toBe(false);
  });

  it('judges an order drawn by hand: a room painted from the door inwards', () => {
    const { question } = stored('garage-6x6');
    const cells: number[] = [];
    for (let row = 0; row < 12; row++) for (let column = 0; column < 12; column++) cells.push(column, row);
    const drawn: SpreadSolution = {
      format: 'spread-solution-1',
      instance: 'garage-6x6',
      pours: [0, 1, 2].map((k) => ({ pour: k + 1, cells: cells.slice(k * 96, (k + 1) * 96) })),
    };
    expect(codes(question, drawn)).toEqual(expect.arrayContaining(['check/does-not-end-at-exit', 'check/painted-in']));
    // the same lanes drawn from the back wall to the door stand
    const turned = cells.flatMap((_, k) => (k % 2 === 0 ? [cells[k] as number, 11 - (cells[k + 1] as number)] : []));
    const good = {
      ...drawn,
      pours: [0, 1, 2].map((k) => ({ pour: k + 1, cells: turned.slice(k * 96, (k + 1) * 96) })),
    };
    expect(codes(question, good)).toEqual([]);
  });

  it('sees a gap in a wall that is narrower than a person', () => {
    const { question } = stored('two-rooms');
    const gap = (width: number): SpreadCase => ({
      ...question,
      walls: [
        [
          [7, 0],
          [7, 2.25 - width / 2],
        ],
        [
          [7, 2.25 + width / 2],
          [7, 6],
        ],
      ],
      stopLines: [],
    });
    const cells: number[] = [];
    for (let column = 0; column < 26; column++) for (let row = 0; row < 12; row++) cells.push(column, (row + 5) % 12);
    const solution = { format: 'spread-solution-1' as const, instance: 'x', pours: [{ pour: 1, cells }] };
    const narrow = checkSequence(gap(0.3), solution, 'clipped').breaks.map(({ code }) => code);
    const wide = checkSequence(gap(0.6), solution, 'clipped').breaks.map(({ code }) => code);
    expect(narrow).toContain('check/passage-too-narrow');
    expect(wide).not.toContain('check/passage-too-narrow');
  });
});
