import type { DayPlan, Published } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { floorOf } from './day-hours.ts';

type Coat = Published<DayPlan>['coats'][number];

const at = (clock: string): string => `2026-05-13T${clock}:00-06:00`;
const ms = (clock: string): number => Date.parse(at(clock));
const stage = (what: string, clock: string) => {
  const span = { at: at(clock), low: at(clock), high: at(clock) };
  return { what, first: span, last: span, warm: 'x', holds: [] };
};
const coat = (layer: string, start: string, stages: readonly ReturnType<typeof stage>[]): Coat =>
  ({
    layer,
    name: layer,
    starts: [],
    best: [],
    pots: [],
    start: { at: at(start) },
    milestones: stages,
  }) as unknown as Coat;

describe('what the floor bears', () => {
  test('bare, keep off, the crew between coats, keep off again, then feet and wheels', () => {
    const base = coat('base', '10:00', [stage('recoat opens', '13:00')]);
    const clear = coat('clear', '15:00', [stage('foot', '20:00'), stage('vehicle', '23:00')]);
    const found = floorOf([base, clear], ms('06:00'), ms('23:30'));
    expect(found.map(({ bears }) => bears)).toEqual(['bare', 'off', 'crew', 'off', 'foot', 'vehicle']);
    // Nothing is left out and nothing overlaps.
    expect(found[0]?.from).toBe(ms('06:00'));
    for (const [i, one] of found.entries()) expect(one.until).toBe(found[i + 1]?.from ?? ms('23:30'));
  });
  test('a coat that follows before the one below may be walked on keeps everybody off', () => {
    const base = coat('base', '10:00', [stage('recoat opens', '13:00')]);
    const clear = coat('clear', '12:00', [stage('foot', '20:00')]);
    expect(floorOf([base, clear], ms('06:00'), ms('22:00')).map(({ bears }) => bears)).toEqual([
      'bare',
      'off',
      'off',
      'foot',
    ]);
  });
  test('without a start it stays bare', () => {
    expect(floorOf([], ms('06:00'), ms('22:00'))).toEqual([{ from: ms('06:00'), until: ms('22:00'), bears: 'bare' }]);
  });
});
