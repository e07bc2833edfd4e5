import { describe, expect, test } from 'vitest';
import { clock, dateAt, dayScale, daySpan, epoch, HOUR, instantAt, offsetOf, ticks } from './scale.ts';

const at = '2026-05-13T11:45:00-06:00';

describe('the day as a line', () => {
  test('moments to pixels and back', () => {
    const start = epoch('2026-05-13T06:00:00-06:00');
    const scale = dayScale(start, start + 24 * HOUR, 216, 1056);
    expect(scale.x(start)).toBe(216);
    expect(scale.x(start + 24 * HOUR)).toBe(1056);
    expect(scale.timeAt(scale.x(epoch(at)))).toBe(epoch(at));
  });

  test('offset, clock and date are those written in the instant', () => {
    expect(offsetOf(at)).toBe(-6 * HOUR);
    expect(offsetOf('2026-05-13T11:45:00Z')).toBe(0);
    expect(clock(epoch(at), offsetOf(at))).toBe('11:45');
    expect(dateAt(epoch('2026-05-13T23:30:00-06:00'), -6 * HOUR)).toBe('2026-05-13');
    expect(instantAt(epoch(at), offsetOf(at))).toBe(at);
    expect(instantAt(0, 5.5 * HOUR)).toBe('1970-01-01T05:30:00+05:30');
    expect(instantAt(0, 0)).toBe('1970-01-01T00:00:00Z');
  });

  test('ticks stand on whole hours of that place and not closer than asked', () => {
    const start = epoch('2026-05-13T06:00:00-06:00');
    const scale = dayScale(start, start + 24 * HOUR, 0, 480);
    const found = ticks(scale, -6 * HOUR, 40).map((time) => clock(time, -6 * HOUR));
    expect(found.slice(0, 3)).toEqual(['06:00', '08:00', '10:00']);
  });

  test('the span holds everything, on whole two hours, never less than half a day', () => {
    const offset = -6 * HOUR;
    const span = daySpan([epoch(at)], offset);
    expect(span?.map((time) => clock(time, offset))).toEqual(['10:00', '22:00']);
    expect(daySpan([], offset)).toBeNull();
    const [start, end] = daySpan([epoch(at), epoch('2026-05-14T02:10:00-06:00')], offset) ?? [0, 0];
    expect(clock(start, offset)).toBe('10:00');
    expect(clock(end, offset)).toBe('04:00');
  });
});
