import { expect, test } from 'vitest';
import { inputName, placeName } from './names.ts';

test('names of inputs and places read as words', () => {
  expect(inputName('relativeHumidityError')).toBe('relative humidity error');
  expect(placeName('flake.quantities.base.needed~loss')).toBe('flake, quantities, base, needed, loss');
  const called = new Map([
    ['flake', ''],
    ['base-b', 'Base B'],
  ]);
  expect(placeName('flake.quantities.buying.base-b.needed', called)).toBe('quantities, buying, Base B, needed');
  expect(placeName('survey.moisture-test.probe-1.reading')).toBe('survey, moisture test, probe 1, reading');
});
