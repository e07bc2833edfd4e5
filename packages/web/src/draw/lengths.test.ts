import { describe, expect, test } from 'vitest';
import { dotsOf, FOOT, INCH, lengthText, metres } from './lengths.ts';

describe('lengths a hand drew, as a tape reads them', () => {
  test.each([
    [20 * FOOT, '20 ft'],
    [12 * FOOT + 6.5 * INCH, '12 ft 6 1/2 in'],
    [3.25 * INCH, '3 1/4 in'],
    [0, '0 ft'],
    [-(3 * FOOT + 2 * INCH), '-3 ft 2 in'],
    [11.99 * INCH, '1 ft'],
  ])('%f m is %s', (value, text) => expect(lengthText(value, 'imperial')).toBe(text));

  test('metric goes to the half centimetre', () => {
    expect(lengthText(3.2549, 'metric')).toBe('3.255 m');
    expect(lengthText(-0.5, 'metric')).toBe('-0.5 m');
  });

  // Own arithmetic: what is written is read back within half of the last mark.
  test.each(['imperial', 'metric'] as const)('%s text is read back', (units) => {
    for (let i = -10; i < 60; i++) {
      const value = i * 0.5837;
      const read = metres(lengthText(value, units));
      expect(read).not.toBeNull();
      expect(Math.abs((read ?? 0) - value)).toBeLessThanOrEqual(
        units === 'imperial' ? INCH / 16 + 1e-9 : 0.0025 + 1e-9,
      );
    }
  });

  test('a half-typed corner is left out of the drawing', () => {
    expect(
      dotsOf([
        ['0 ft', '0 ft'],
        ['12 f', ''],
        ['2 m', '1 m'],
      ]),
    ).toEqual([
      [0, 0],
      [2, 1],
    ]);
  });
});
