import { describe, expect, test } from 'vitest';
import type { Shown } from '../worker/api.ts';
import { order, placeOf } from './limit-scale.ts';

const shown = (value: number, low?: number, high?: number): Shown => ({
  kind: 'figure',
  text: '',
  number: '',
  unit: '',
  band: '',
  in: 'K',
  outside: false,
  value,
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
});

describe('place on the limit line', () => {
  test('one band is one width, whatever the unit', () => {
    const near = placeOf({ value: shown(5, 4, 6), limit: shown(3), side: 'least' });
    expect(near).toEqual({ bands: 1, past: false, touches: false, sure: true, at: false });
  });

  test('a band over the limit touches; a dot past it is past', () => {
    expect(placeOf({ value: shown(3.5, 2.5, 4.5), limit: shown(3), side: 'least' })?.touches).toBe(true);
    expect(placeOf({ value: shown(2.5, 1.5, 3.5), limit: shown(3), side: 'least' })?.past).toBe(true);
    expect(placeOf({ value: shown(2.5, 1.5, 3.5), limit: shown(3), side: 'most' })?.touches).toBe(true);
    expect(placeOf({ value: shown(3.5, 3, 4), limit: shown(3), side: 'most' })?.past).toBe(true);
  });

  test('at the limit is not past it', () => {
    expect(placeOf({ value: shown(3, 2.5, 3.5), limit: shown(3), side: 'least' })?.past).toBe(false);
  });

  test('without a band only the side is known, or that it lies on the limit', () => {
    expect(placeOf({ value: shown(2), limit: shown(3), side: 'least' })).toMatchObject({ past: true, sure: false });
    expect(placeOf({ value: shown(3), limit: shown(3), side: 'most' })).toMatchObject({
      at: true,
      touches: true,
      past: false,
    });
  });

  test('other units have no place', () => {
    expect(placeOf({ value: shown(3), limit: { ...shown(2), in: '1' }, side: 'least' })).toBeNull();
  });

  test('order: past, touching, near, unsure, far', () => {
    const places = [
      placeOf({ value: shown(1), limit: shown(3), side: 'least' }),
      placeOf({ value: shown(2, 1, 3), limit: shown(3), side: 'least' }),
      placeOf({ value: shown(3.5, 2.5, 4.5), limit: shown(3), side: 'least' }),
      placeOf({ value: shown(5, 4, 6), limit: shown(3), side: 'least' }),
      placeOf({ value: shown(4), limit: shown(3), side: 'least' }),
      placeOf({ value: shown(9, 8, 10), limit: shown(3), side: 'least' }),
      null,
    ];
    const orders = places.map(order);
    expect([...orders].sort((a, b) => a - b)).toEqual(orders);
  });
});
