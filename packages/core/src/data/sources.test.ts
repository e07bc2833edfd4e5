import { expect, test } from 'vitest';
import { SOURCES, sourceOf } from './sources.ts';

const MARKS = new Set(['READ', 'MEM', 'CALC', 'PRACTICE']);

test('every source has a title and says how it was seen', () => {
  expect(SOURCES.size).toBeGreaterThan(0);
  for (const [key, source] of SOURCES) {
    expect(key).toMatch(/^[a-z0-9.-]+$/);
    expect(source.title.length, key).toBeGreaterThan(5);
    expect(MARKS.has(source.mark), `${key}: ${source.mark}`).toBe(true);
    if (source.year !== undefined) expect(source.year, key).toBeGreaterThan(1800);
  }
});

test('a key that is not there is a mistake, not an empty citation', () => {
  expect(() => sourceOf('nobody-1900')).toThrow(/nobody-1900/);
});
