import { describe, expect, test } from 'vitest';
import { type Turns, untilSettled } from './hours-and-spread.ts';
import { Ledger, Trace } from './kernel/trace.ts';
import type { CoatDay } from './steps/results.ts';

/** A coat that starts so many minutes after eight. */
const coat = (minutes: number): CoatDay =>
  ({
    layer: 'base',
    start: { at: new Date(Date.UTC(2026, 4, 13, 8) + minutes * 60_000).toISOString() },
  }) as unknown as CoatDay;

/** A day that gives the start of the round, and pours that take the minutes of the round. */
function turns(starts: readonly number[]): Turns<readonly CoatDay[], number> & { readonly told: string[] } {
  const told: string[] = [];
  let round = 0;
  return {
    told,
    fixed: false,
    place(poured, recorder) {
      const start = starts[round] ?? 0;
      new Trace(recorder).given('start', { value: start, unit: '1', origin: 'chosen' });
      told.push(`place ${poured.get('base') ?? 'by rates'}`);
      return [coat(start)];
    },
    coatsOf: (placed) => placed,
    pour(_, rough, recorder) {
      new Trace(recorder).given('pours', { value: round, unit: '1', origin: 'chosen' });
      told.push(rough ? 'rough' : 'careful');
      round += 1;
      return 100 * round;
    },
    pouredBy: (spread) => new Map([['base', spread]]),
  };
}

describe('rounds of hours and spread', () => {
  test('a start that stands still needs two: one for the minutes, one with them', () => {
    const asked = turns([0, 4]);
    const ledger = new Ledger();
    const found = untilSettled(asked, ledger);
    expect(found).toMatchObject({ rounds: 2, moved: 240 });
    expect(asked.told).toEqual(['place by rates', 'rough', 'place 100', 'careful', 'place 200']);
    // only the round that stands is in the table
    expect(Object.keys(ledger.table).sort()).toEqual(['pours', 'start']);
    expect(ledger.table.start).toMatchObject({ value: 4 });
  });

  test('the minutes of the careful pours are taken over where they move no start', () => {
    const asked = turns([0, 0, 0]);
    const found = untilSettled(asked, new Ledger());
    expect(asked.told.at(-1)).toBe('place 200');
    expect(found.rounds).toBe(2);
  });

  test('starts that somebody chose cannot move: one careful round, and the day takes its minutes over', () => {
    const asked = { ...turns([0, 0]), fixed: true };
    expect(untilSettled(asked, new Ledger())).toMatchObject({ rounds: 1, moved: 0 });
    expect(asked.told).toEqual(['place by rates', 'careful', 'place 100']);
  });

  test('five minutes are a move', () => {
    const asked = turns([0, 5, 6]);
    expect(untilSettled(asked, new Ledger())).toMatchObject({ rounds: 3, moved: 60 });
    expect(asked.told).toEqual(['place by rates', 'rough', 'place 100', 'rough', 'place 200', 'careful', 'place 300']);
  });

  test('three rounds at most: the last is kept with what it still moved', () => {
    expect(untilSettled(turns([0, 30, 90, 0]), new Ledger())).toMatchObject({ rounds: 3, moved: 3600 });
  });

  test('pours that take what the round before said are not placed again', () => {
    const asked = { ...turns([0, 0, 0]), pouredBy: () => new Map([['base', 100]]) };
    expect(untilSettled(asked, new Ledger()).rounds).toBe(2);
    expect(asked.told).toEqual(['place by rates', 'rough', 'place 100', 'careful']);
  });

  test('a coat that loses its start has moved', () => {
    const asked = { ...turns([0, 0, 0]) };
    let round = 0;
    const found = untilSettled(
      { ...asked, coatsOf: () => (round++ === 0 ? [coat(0)] : [{ layer: 'base' } as CoatDay]) },
      new Ledger(),
    );
    expect(found.rounds).toBe(3);
    expect(found.moved).toBe(0);
  });
});
