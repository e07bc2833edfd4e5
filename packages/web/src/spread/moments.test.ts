import { describe, expect, test } from 'vitest';
import { momentOf, squaresDown, stateOf, turnAfter, turnBefore, turns, typedMoment, weightOf } from './moments.ts';

const at = (clock: string): number => Date.parse(`2026-05-13T${clock}:00-06:00`);
const pour = (mixFrom: string, start: string, end: string) => ({
  mixFrom: `2026-05-13T${mixFrom}:00-06:00`,
  start: `2026-05-13T${start}:00-06:00`,
  end: `2026-05-13T${end}:00-06:00`,
});
const POURS = [pour('11:45', '11:51', '12:03'), pour('12:01', '12:08', '12:22')] as const;

describe('what a pour is at a moment', () => {
  test.each([
    ['11:44', 'bare'],
    ['11:45', 'mixing'],
    ['11:51', 'being spread'],
    ['12:02', 'being spread'],
    ['12:03', 'wet'],
  ] as const)('at %s it is %s', (clock, state) => {
    expect(stateOf(POURS[0], at(clock))).toBe(state);
  });
});

describe('the coat at a moment', () => {
  test('a person who only mixes mixes the next pour while one is spread', () => {
    expect(momentOf(POURS, at('12:02'))).toEqual({
      states: ['being spread', 'mixing'],
      spreading: 0,
      mixing: 1,
      next: null,
      done: false,
    });
  });
  test('before anything is mixed the first pour is next', () => {
    expect(momentOf(POURS, at('11:00'))).toMatchObject({ spreading: null, mixing: null, next: 0, done: false });
  });
  test('it is done when the last pour is down', () => {
    expect(momentOf(POURS, at('12:21')).done).toBe(false);
    expect(momentOf(POURS, at('12:22')).done).toBe(true);
  });
  test('no pours are never done', () => {
    expect(momentOf([], at('12:00')).done).toBe(false);
  });
});

describe('squares down', () => {
  const cells = { begun: at('11:45'), minute: Float32Array.from([6, 6.5, 6.5, 9]) };
  test.each([
    ['11:50', 0],
    ['11:51', 1],
    ['11:52', 3],
    ['11:54', 4],
    ['13:00', 4],
  ] as const)('at %s: %i', (clock, count) => {
    expect(squaresDown(cells, at(clock))).toBe(count);
  });
});

describe('turns of the day', () => {
  test('each moment stands once, rising', () => {
    const all = turns([pour('11:45', '11:51', '12:03'), pour('12:03', '12:08', '12:22')]);
    expect(all).toEqual(['11:45', '11:51', '12:03', '12:08', '12:22'].map(at));
    expect(turnAfter(all, at('11:51'))).toBe(at('12:03'));
    expect(turnBefore(all, at('11:51'))).toBe(at('11:45'));
    expect(turnAfter(all, at('12:22'))).toBeNull();
    expect(turnBefore(all, at('11:45'))).toBeNull();
  });
});

describe('a typed time', () => {
  const from = '2026-05-13T23:30:00-06:00';
  test('is on the day of the coat', () =>
    expect(typedMoment('23:45', from)).toBe(Date.parse('2026-05-13T23:45:00-06:00')));
  test('after midnight is on the next day', () =>
    expect(typedMoment('0:20', from)).toBe(Date.parse('2026-05-14T00:20:00-06:00')));
  test.each(['', 'noon', '25:00', '11:75', '7'])('“%s” is none', (text) => expect(typedMoment(text, from)).toBeNull());
});

test('the weight of an edge goes by the share of its open time', () => {
  expect([0, 0.5, 0.51, 0.8, 0.81, 1.2].map(weightOf)).toEqual(['easy', 'easy', 'half', 'half', 'tight', 'tight']);
});
