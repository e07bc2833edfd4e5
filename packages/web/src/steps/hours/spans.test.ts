import { describe, expect, test } from 'vitest';
import { lengthText, roomShown } from './spans.ts';

const MINUTE = 60_000;

describe('room between two moments', () => {
  test('minutes, hours and minutes, whole hours', () => {
    expect(lengthText(27 * MINUTE)).toEqual({ number: '27', unit: 'min' });
    expect(lengthText(165 * MINUTE)).toEqual({ number: '2:45', unit: 'h' });
    expect(lengthText(-73 * MINUTE)).toEqual({ number: '−1:13', unit: 'h' });
    expect(lengthText(50 * 60 * MINUTE)).toEqual({ number: '50', unit: 'h' });
    expect(lengthText(-0.2 * MINUTE)).toEqual({ number: '0', unit: 'min' });
  });
  test('a figure in seconds with both ends of its band', () => {
    const shown = roomShown({ value: 60 * MINUTE, low: 30 * MINUTE, high: 90 * MINUTE });
    expect(shown).toMatchObject({ value: 3600, low: 1800, high: 5400, band: '0:30 to 1:30' });
    expect(roomShown({ value: 60 * MINUTE })).not.toHaveProperty('low');
  });
});
