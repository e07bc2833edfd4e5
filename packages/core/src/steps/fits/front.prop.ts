import fc from 'fast-check';
import { expect, test } from 'vitest';
import { beatenBy, type Compared } from './front.ts';

const criterion = fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined });
const systems = fc
  .array(
    fc.record({ known: fc.boolean(), price: criterion, hours: criterion, untilUse: criterion, margin: criterion }),
    {
      minLength: 1,
      maxLength: 25,
    },
  )
  .map((rows) =>
    rows.map(
      (row, i): Compared =>
        Object.fromEntries([
          ['id', `s${i}`],
          ...Object.entries(row).filter(([, value]) => value !== undefined),
        ]) as unknown as Compared,
    ),
  );

const KEYS = ['price', 'hours', 'untilUse', 'margin'] as const;

/** Written out again, the plain way: never worse, once better, and no criterion that only one of them has. */
function plainlyBeats(a: Compared, b: Compared): boolean {
  if (!a.known && b.known) return false;
  const gains = KEYS.map((key): number => {
    const [x, y] = [a[key], b[key]];
    if (x === undefined && y === undefined) return 0;
    if (x === undefined || y === undefined) return Number.NaN;
    return key === 'margin' ? x - y : y - x;
  });
  return gains.every((gain) => gain >= 0) && gains.some((gain) => gain > 0);
}

test('the front is what nothing beats, and each of the others names one of the front that beats it', () => {
  fc.assert(
    fc.property(systems, (all) => {
      const beaten = beatenBy(all);
      for (const one of all) {
        expect(beaten.has(one.id)).toBe(all.some((other) => plainlyBeats(other, one)));
        const by = beaten.get(one.id);
        if (by === undefined) continue;
        expect(beaten.has(by)).toBe(false);
        expect(plainlyBeats(all.find(({ id }) => id === by) as Compared, one)).toBe(true);
      }
    }),
  );
});

test('there is always a front, whatever the order of the catalogue', () => {
  fc.assert(
    fc.property(systems, (all) => {
      const front = (list: readonly Compared[]) => {
        const beaten = beatenBy(list);
        return list
          .map(({ id }) => id)
          .filter((id) => !beaten.has(id))
          .sort();
      };
      expect(front(all).length).toBeGreaterThan(0);
      expect(front([...all].reverse())).toEqual(front(all));
    }),
  );
});
