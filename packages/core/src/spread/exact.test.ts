import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { coarseProof } from './coarse.ts';
import { EXACT_MOST_SQUARES, exactLargestAge, largestAge } from './exact.ts';
import { readInstance } from './instance.ts';
import { spreadProblem } from './problem.ts';

const folder = new URL('../../../../reference/spread/', import.meta.url);
const read = (name: string) => JSON.parse(readFileSync(new URL(`${name}.json`, folder), 'utf8'));

/** One square a minute; `stop` minutes before every pour of twelve squares. */
const minuteClock = (count: number, stop: number) =>
  Float64Array.from({ length: count }, (_, k) => k + stop * Math.floor(k / 12));

interface Row {
  readonly instance: string;
  readonly squareM: number;
  readonly squares: number;
  readonly pureMaxAge: number;
  readonly stopsMaxAge: number;
}

// Proved largest ages, published with the format (invented instances); agreement is exact.
describe.each(read('coarse-optima').values as Row[])('coarse copy $instance, $squareM m', (row) => {
  const instance = readInstance(read(row.instance));
  if (!instance.ok) throw new Error(`unreadable ${row.instance}`);
  const { squares, doorSquares } = spreadProblem({ ...instance.value, cellM: row.squareM }, 'whole');

  it.each([
    ['without stops', 0, row.pureMaxAge],
    ['with stops', 3, row.stopsMaxAge],
  ] as const)('%s reaches and proves the optimum', (_, stop, published) => {
    expect(squares.count).toBe(row.squares);
    const clock = minuteClock(squares.count, stop);
    const result = exactLargestAge({ squares, doorSquares, clock, nodes: 100_000 });
    expect(result.age).toBe(published);
    expect(result.proved).toBe(true);
    expect(largestAge(squares, result.order, clock)).toBe(published);
    expect([...result.order].sort((a, b) => a - b)).toEqual(Array.from({ length: squares.count }, (_, s) => s));
  });
});

describe('the exact search', () => {
  const instance = readInstance(read('u-shape'));
  if (!instance.ok) throw new Error('unreadable u-shape');

  it('out of steps still gives a bound that holds', () => {
    const { squares, doorSquares } = spreadProblem({ ...instance.value, cellM: 1 }, 'whole');
    const result = exactLargestAge({ squares, doorSquares, clock: minuteClock(104, 0), nodes: 300 });
    expect(result.proved).toBe(false);
    expect(result.atLeast).toBeLessThanOrEqual(9);
    expect(result.atLeast).toBeGreaterThan(2);
    expect(result.age).toBeGreaterThanOrEqual(9);
  });

  it('does not lose an age that only rounding sets apart: squares of a third of a minute', () => {
    const { squares, doorSquares } = spreadProblem({ ...instance.value, cellM: 2 }, 'whole');
    const thirds = minuteClock(26, 0).map((minutes) => minutes / 3);
    const result = exactLargestAge({ squares, doorSquares, clock: thirds, nodes: 100_000 });
    expect(result.proved).toBe(true);
    expect(result.age).toBeCloseTo(5 / 3, 9);
  });

  it('refuses floors it could not finish', () => {
    const { squares, doorSquares } = spreadProblem(instance.value, 'whole');
    expect(squares.count).toBeGreaterThan(EXACT_MOST_SQUARES);
    expect(() => exactLargestAge({ squares, doorSquares, clock: minuteClock(416, 0), nodes: 10 })).toThrow(RangeError);
  });

  it('tells how far the fast method is from the best on a coarse copy', () => {
    const shape = readInstance(read('l-shape'));
    if (!shape.ok) throw new Error('unreadable l-shape');
    const proof = coarseProof(spreadProblem(shape.value, 'clipped'), 20_000);
    expect(proof?.proved).toBe(true);
    expect(proof?.squareM).toBe(1);
    expect(proof?.methodMin).toBeGreaterThanOrEqual((proof?.atLeastMin ?? 0) - 1e-9);
    expect(proof?.within).toBeLessThan(0.15);
  });

  it('says nothing of a floor whose bays a coarse copy no longer sees', () => {
    const hall = readInstance(read('hall-25x24'));
    if (!hall.ok) throw new Error('unreadable hall');
    expect(coarseProof(spreadProblem(hall.value, 'clipped'), 1000)).toBeUndefined();
  });
});
