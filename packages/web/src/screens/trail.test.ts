import { expect, test } from 'vitest';
import { trailWith } from './trail.ts';

test('a number opened out of another lengthens the trail; one that is in it goes back to it', () => {
  const trail = trailWith(trailWith(trailWith([], 'a'), 'b'), 'c');
  expect(trail).toEqual(['a', 'b', 'c']);
  expect(trailWith(trail, 'b')).toEqual(['a', 'b']);
  expect(trailWith(trail, 'c')).toEqual(trail);
  expect(trailWith(trail, undefined)).toEqual([]);
});
