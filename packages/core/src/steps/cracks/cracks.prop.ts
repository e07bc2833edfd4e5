import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BRIDGING_CLASSES, STATIC_CLASSES } from '../../data/crack-bridging.ts';
import { evaluate } from '../../kernel/formula.ts';
import { openingFromReadings, openingToBear, openingToReckonWith } from '../formulas/cracks.ts';
import { dynamicClassFor, staticClassFor, widthOfClass } from './classes.ts';
import { reachOf } from './reach.ts';

const width = fc.double({ min: 1e-6, max: 2.5e-3, noNaN: true });

test('the class needed bears the width, and the class below it does not', () => {
  fc.assert(
    fc.property(width, (w) => {
      const needed = staticClassFor(w);
      const i = (STATIC_CLASSES as readonly string[]).indexOf(needed);
      expect(i).toBeGreaterThanOrEqual(0);
      expect(widthOfClass(STATIC_CLASSES[i] as 'A1').width).toBeGreaterThanOrEqual(w * (1 - 1e-8));
      if (i > 0) expect(widthOfClass(STATIC_CLASSES[i - 1] as 'A1').width).toBeLessThan(w);
    }),
  );
});

test('more movement never needs a lower class', () => {
  const rank = (name: string): number => {
    const at = ['none', ...BRIDGING_CLASSES].indexOf(name);
    return at < 0 ? Number.POSITIVE_INFINITY : at;
  };
  const small = fc.double({ min: 1e-6, max: 6e-4, noNaN: true });
  fc.assert(
    fc.property(small, small, small, (w, change, more) => {
      expect(rank(dynamicClassFor(w, change + more))).toBeGreaterThanOrEqual(rank(dynamicClassFor(w, change)));
      expect(rank(dynamicClassFor(w + more, change))).toBeGreaterThanOrEqual(rank(dynamicClassFor(w, change)));
    }),
  );
});

test('what a film must bear is the upper end of the opening reckoned with', () => {
  fc.assert(
    fc.property(width, (opening) => {
      const { value } = evaluate(openingToReckonWith, { opening });
      const band = openingToReckonWith.band?.({ opening }, value).band;
      expect(band?.[1]).toBeCloseTo(evaluate(openingToBear, { opening }).value, 12);
      expect(band?.[0]).toBeLessThanOrEqual(value);
    }),
  );
});

test('a crack read at the season’s own ends opens by exactly the change read', () => {
  fc.assert(
    fc.property(width, width, fc.double({ min: 5, max: 60, noNaN: true }), (coldWidth, warmWidth, range) => {
      const { value } = evaluate(openingFromReadings, {
        coldWidth,
        warmWidth,
        readingsRange: range,
        temperatureRange: range,
      });
      expect(value).toBeCloseTo(Math.max(0, coldWidth - warmWidth), 12);
    }),
  );
});

test('turning the floor turns nothing about the slab beside a joint', () => {
  const size = fc.double({ min: 1, max: 40, noNaN: true });
  const turn = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
  const place = fc.double({ min: 0.1, max: 0.9, noNaN: true });
  fc.assert(
    fc.property(size, size, place, turn, (length, depth, share, angle) => {
      const at = ([x, y]: readonly [number, number]): readonly [number, number] => [
        x * Math.cos(angle) - y * Math.sin(angle),
        x * Math.sin(angle) + y * Math.cos(angle),
      ];
      const room = (
        [
          [0, 0],
          [length, 0],
          [length, depth],
          [0, depth],
        ] as const
      ).map(at);
      const joint = (
        [
          [share * length, 0],
          [share * length, depth],
        ] as const
      ).map(at);
      const reach = reachOf(joint, room, []);
      expect(reach?.[0]).toBeCloseTo(share * length, 6);
      expect(reach?.[1]).toBeCloseTo((1 - share) * length, 6);
    }),
  );
});
