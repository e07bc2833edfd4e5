import { expect, test } from 'vitest';
import { changesBetween, withChanges } from './changes.ts';

test('only what changed travels', () => {
  const before = { starts: [{ at: '10:00', name: 'base' }], texts: { a: 'x', b: 'y' }, curve: [1, 2, 3] };
  const after = { starts: [{ at: '10:05', name: 'base' }], texts: { a: 'x', c: 'z' }, curve: [1, 2, 4] };
  const changes = changesBetween(before, after);
  expect(changes).toEqual({
    at: [
      ['starts', { at: [['0', { at: [['at', { to: '10:05' }]], gone: [] }]], gone: [] }],
      ['texts', { at: [['c', { to: 'z' }]], gone: ['b'] }],
      ['curve', { to: [1, 2, 4] }],
    ],
    gone: [],
  });
  expect(changes && withChanges(before, changes)).toEqual(after);
});

test('a thing named like a part of the language is only a name', () => {
  const after = JSON.parse('{"__proto__": {"odd": 1}, "toString": 2}') as object;
  const changes = changesBetween({}, after);
  const applied = changes ? withChanges({}, changes) : {};
  expect(Object.keys(applied)).toEqual(['__proto__', 'toString']);
  expect(Object.getPrototypeOf(applied)).toBe(Object.prototype);
});
