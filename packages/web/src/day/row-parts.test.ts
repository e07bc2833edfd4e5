import { describe, expect, test } from 'vitest';
import type { DayData } from './day-data.ts';
import { fitting, shownPart } from './row-parts.tsx';
import { dayScale } from './scale.ts';

describe('text that fits', () => {
  test('whole where it fits, whole words and an ellipsis where it does not, nothing where none fits', () => {
    expect(fitting('open', 60)).toBe('open');
    expect(fitting('with care: the slab warms', 100)).toBe('with care: the…');
    expect(fitting('broadcast', 30)).toBe('');
  });
});

describe('the part that is shown', () => {
  const frame = {
    scale: dayScale(0, 100, 10, 110),
    tail: null,
    data: {} as DayData,
    axis: [],
    gutter: 10,
    width: 120,
    small: false,
    dense: false,
  };
  test('cut at both ends of the day', () => {
    expect(shownPart(frame, -50, 40)).toEqual({ x: 10, width: 40 });
    expect(shownPart(frame, 90, 400)).toEqual({ x: 100, width: 10 });
  });
  test('none outside of it', () => {
    expect(shownPart(frame, 200, 300)).toBeNull();
    expect(shownPart(frame, -90, -10)).toBeNull();
  });
});
