import { expect, test } from 'vitest';
import type { Entry } from '../kernel/entry.ts';
import { showBand } from './show.ts';

const reader = { locale: 'en-US', units: 'metric' } as const;
const volume = (low: number, high: number): Entry => ({
  kind: 'given',
  id: 'v',
  value: 0.002,
  unit: 'm³',
  origin: 'chosen',
  shows: 'volume',
  band: [low, high],
});

test('a band is told, a rounding of causes that cancel is not', () => {
  expect(showBand(volume(0.0019, 0.0021), reader)).toContain('±');
  expect(showBand(volume(0.002 - 1e-12, 0.002 + 1e-12), reader)).toBe('');
});
