import type { Entry, Reader } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { ShownBefore } from './shown-before.ts';

const reader: Reader = { locale: 'en-US', units: 'imperial' };
const given = (id: string, value: number): Entry => ({ kind: 'given', id, value, unit: 'm', origin: 'reading' });

describe('only what changed is put into words again', () => {
  test('what stayed is the same object, what went is gone, what changed says something else', () => {
    const before = new ShownBefore();
    const first = before.all({ a: given('a', 1), b: given('b', 2) }, reader);
    expect(Object.keys(first)).toEqual(['a', 'b']);
    const next = before.all({ a: given('a', 1), c: given('c', 3) }, reader);
    expect(Object.keys(next)).toEqual(['a', 'c']);
    expect(next.a).toBe(first.a);
    expect(before.all({ a: given('a', 9), c: given('c', 3) }, reader).a?.text).not.toBe(first.a?.text);
  });

  test('another reader gets everything anew', () => {
    const before = new ShownBefore();
    const first = before.all({ a: given('a', 1) }, reader);
    const metric = before.all({ a: given('a', 1) }, { ...reader, units: 'metric' });
    expect(metric.a?.unit).toBe('m');
    expect(metric.a?.text).not.toBe(first.a?.text);
  });
});
