import { describe, expect, test } from 'vitest';
import { cornerName, emptyTape, solveTape } from './tape.ts';

const measure = (from: string, to: string, length: string) => ({ from, to, length });

describe('a room of sides and diagonals while it is typed', () => {
  const sides = [
    measure('a', 'b', '4 m'),
    measure('b', 'c', '3 m'),
    measure('c', 'd', '4 m'),
    measure('d', 'a', '3 m'),
  ];
  const corners = ['a', 'b', 'c', 'd'];

  test('3-4-5: both diagonals fit, nothing is off', () => {
    const solved = solveTape({
      tape: { corners, measures: [...sides, measure('a', 'c', '5 m'), measure('b', 'd', '5 m')] },
    });
    if (solved.is !== 'room') throw new Error(solved.is);
    expect(solved.room.area).toBeCloseTo(12, 6);
    for (const residual of solved.residuals.values()) expect(Math.abs(residual)).toBeLessThan(1e-6);
  });

  test('a diagonal read 4 cm too long shows in the residuals', () => {
    const solved = solveTape({
      tape: { corners, measures: [...sides, measure('a', 'c', '5.04 m'), measure('b', 'd', '5 m')] },
    });
    if (solved.is !== 'room') throw new Error(solved.is);
    const most = Math.max(...[...solved.residuals.values()].map(Math.abs));
    expect(most).toBeGreaterThan(0.003);
    expect(most).toBeLessThan(0.04);
  });

  test('four sides alone leave the room loose, and the missing diagonals are named', () => {
    const solved = solveTape({ tape: { corners, measures: sides } });
    expect(solved.is === 'trouble' && solved.trouble.code).toBe('tape-room-is-loose');
  });

  test('half typed is no trouble', () => {
    expect(solveTape({ tape: emptyTape(4) }).is).toBe('typing');
    expect(solveTape({}).is).toBe('none');
  });

  test('corners are named in order', () => {
    expect([0, 25, 26].map(cornerName)).toEqual(['a', 'z', 'a1']);
  });
});
