import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { areaOf, perimeterOf, type Ring, selfCrossing, signedArea } from './index.ts';

/** A star-shaped outline: corners at growing angles around a point, so it never crosses itself. */
const star: fc.Arbitrary<Ring> = fc
  .array(fc.double({ min: 1, max: 20, noNaN: true }), { minLength: 3, maxLength: 12 })
  .map((radii) =>
    radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    }),
  );

const close = (a: number, b: number): void => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(b)));

describe('outlines', () => {
  test('twice the lengths is four times the area and twice the perimeter', () => {
    fc.assert(
      fc.property(star, (ring) => {
        const double: Ring = ring.map(([x, y]) => [2 * x, 2 * y]);
        close(areaOf(double), 4 * areaOf(ring));
        close(perimeterOf(double), 2 * perimeterOf(ring));
      }),
    );
  });

  test('moving, turning and starting at another corner change nothing', () => {
    fc.assert(
      fc.property(star, fc.double({ min: -6, max: 6, noNaN: true }), fc.nat(11), (ring, angle, shift) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const first = shift % ring.length;
        const moved: Ring = [...ring.slice(first), ...ring.slice(0, first)].map(([x, y]) => [
          c * x - s * y + 500,
          s * x + c * y - 300,
        ]);
        close(signedArea(moved), signedArea(ring));
      }),
    );
  });

  test('a star-shaped outline never crosses itself; swapping two corners apart makes it cross', () => {
    fc.assert(
      fc.property(
        star.filter((ring) => ring.length >= 5),
        (ring) => {
          expect(selfCrossing(ring)).toBeUndefined();
          const round = ring.map((_, i) => {
            const angle = (2 * Math.PI * i) / ring.length;
            return [Math.cos(angle), Math.sin(angle)] as const;
          });
          const swapped = round.with(1, round[3] as never).with(3, round[1] as never);
          expect(selfCrossing(swapped)).toBeDefined();
        },
      ),
    );
  });
});
