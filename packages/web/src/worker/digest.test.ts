import { expect, test } from 'vitest';
import { digest } from './digest.ts';

test('the same value has the same mark, a changed sign another', () => {
  const value = { start: '2026-05-13T10:00:00-06:00', numbers: [1, 2, 3] };
  expect(digest(structuredClone(value))).toBe(digest(value));
  expect(digest({ ...value, start: '2026-05-13T10:05:00-06:00' })).not.toBe(digest(value));
});
