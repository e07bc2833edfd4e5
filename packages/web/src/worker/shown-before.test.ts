import type { Entry, Reader } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { ShownBefore } from './shown-before.ts';

const reader: Reader = { locale: 'en-US', units: 'imperial' };
const given = (id: string, value: number): Entry => ({ kind: 'given', id, value, unit: 'm', origin: 'reading' });

describe('only what changed is put into words again', () => {
  test('the first answer carries everything, the next the difference', () => {
    const before = new ShownBefore();
    const first = before.change({ a: given('a', 1), b: given('b', 2) }, reader, true);
    expect(first.afresh).toBe(true);
    expect(Object.keys(first.shown)).toEqual(['a', 'b']);
    const next = before.change({ a: given('a', 1), c: given('c', 3) }, reader, false);
    expect(next).toMatchObject({ afresh: false, gone: ['b'] });
    expect(Object.keys(next.shown)).toEqual(['c']);
    expect(before.change({ a: given('a', 9), c: given('c', 3) }, reader, false).shown.a?.text).not.toBe(
      first.shown.a?.text,
    );
  });

  test('another reader, or a screen that starts anew, gets everything', () => {
    const before = new ShownBefore();
    before.change({ a: given('a', 1) }, reader, true);
    const metric = before.change({ a: given('a', 1) }, { ...reader, units: 'metric' }, false);
    expect(metric.afresh).toBe(true);
    expect(metric.shown.a?.unit).toBe('m');
    expect(Object.keys(before.change({ a: given('a', 1) }, { ...reader, units: 'metric' }, true).shown)).toEqual(['a']);
  });
});
