import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changesBetween, same, withChanges } from './changes.ts';

const plain = fc.jsonValue({ maxDepth: 4 });

test('what was before and what changed give what is now, whatever both were', () => {
  fc.assert(
    fc.property(plain, plain, (before, after) => {
      const changes = changesBetween(before, after);
      expect(changes ? withChanges(before, changes) : before).toEqual(after);
      expect(same(before, after)).toBe(changes === null);
      expect(same(before, structuredClone(before))).toBe(true);
    }),
  );
});

test('the same said twice is no change, and a change of one part leaves the others the same objects', () => {
  fc.assert(
    fc.property(plain, plain, plain, (kept, old, now) => {
      const before = { kept: { inner: kept }, other: [{ old }, { kept }] };
      expect(changesBetween(before, structuredClone(before))).toBeNull();
      const changes = changesBetween(before, { ...structuredClone(before), other: [{ old: { now } }, { kept }] });
      if (!changes) return;
      const after = withChanges(before, changes);
      expect(after.kept).toBe(before.kept);
      expect(after.other[1]).toBe(before.other[1]);
    }),
  );
});
