import { climate } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { guessColumns, UNITS } from './columns.ts';

describe('columns of a table', () => {
  test('are found by the words of their heading, with the unit written there', () => {
    const found = guessColumns([
      'Date time',
      'Air temp (°F)',
      'Dew point (°F)',
      'RH (%)',
      'Wind km/h',
      'Wind direction',
    ]);
    expect(found).toEqual({
      time: 'Date time',
      fields: {
        airTemperature: { column: 'Air temp (°F)', unit: '°F' },
        relativeHumidity: { column: 'RH (%)', unit: '%' },
        wind: { column: 'Wind km/h', unit: 'km/h' },
      },
    });
  });
  test('the first column is the time where none is named so, and no column is taken twice', () => {
    const { time, fields } = guessColumns(['a', 'temperature', 'humidity', 'solar radiation']);
    expect(time).toBe('a');
    expect(Object.keys(fields)).toEqual(['airTemperature', 'relativeHumidity', 'radiation']);
    expect(fields.airTemperature?.unit).toBe('°C');
  });
  // The form stands before the core is fetched, so it has a list of its own; this holds the two to one another.
  test('the units offered are those the reader of tables takes', () => {
    const sorted = (units: Readonly<Record<string, readonly string[]>>) =>
      Object.fromEntries(Object.entries(units).map(([field, list]) => [field, list.toSorted()]));
    expect(sorted(UNITS)).toEqual(sorted(climate.weatherScience.COLUMN_UNITS_OF));
  });
});
