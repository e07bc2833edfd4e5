import { formula, type Values } from '../../kernel/formula.ts';
import { dewPointOf, frostPointOf, vapourPressureOf } from './saturation.ts';

interface Reading {
  readonly airTemperature: number;
  readonly relativeHumidity: number;
  readonly surfaceTemperature: number;
}

/** What settles on the surface first: water above 0 °C, ice below. */
function settlingPoint({ airTemperature, relativeHumidity, surfaceTemperature }: Reading): number {
  const pressure = vapourPressureOf(airTemperature, relativeHumidity);
  const frost = surfaceTemperature < 0 ? frostPointOf(pressure) : undefined;
  return frost ?? dewPointOf(pressure);
}

const marginOf = (reading: Reading): number => reading.surfaceTemperature - settlingPoint(reading);

/** Change of the margin per unit of one input, by a central difference that stays inside the humidity's range. */
function slope(reading: Reading, key: 'airTemperature' | 'relativeHumidity', half: number): number {
  const most = key === 'relativeHumidity' ? 1 : Number.POSITIVE_INFINITY;
  const high = Math.min(reading[key] + half, most);
  const low = reading[key] - half;
  return (marginOf({ ...reading, [key]: high }) - marginOf({ ...reading, [key]: low })) / (high - low);
}

const takes = {
  airTemperature: '°C',
  relativeHumidity: '1',
  surfaceTemperature: '°C',
  airTemperatureError: 'K',
  relativeHumidityError: '1',
  surfaceTemperatureError: 'K',
} as const;

/** Signed standard deviations of the margin by instrument, K. */
const causesOf = (values: Values<typeof takes>) => ({
  'air thermometer': slope(values, 'airTemperature', 0.05) * values.airTemperatureError,
  hygrometer: slope(values, 'relativeHumidity', values.relativeHumidity / 200) * values.relativeHumidityError,
  'slab thermometer': values.surfaceTemperatureError,
});

/**
 * How far the surface lies above the dew point, K; above the frost point where the surface is below 0 °C.
 *
 * Negative when water or ice settles. The band comes from the standard deviations of the three instruments, each a
 * cause of its own name. Readings that already carry causes should be given errors of 0, or they count twice.
 */
export const dewMargin = formula({
  id: 'air/dew-margin',
  says: 'How far the surface is warmer than the dew point of the air',
  equation: 'surfaceTemperature − dewPoint(airTemperature, relativeHumidity); frostPoint where surfaceTemperature < 0',
  takes,
  gives: 'K',
  holds: {
    airTemperature: [-40, 100],
    relativeHumidity: [0.01, 1],
    surfaceTemperature: [-40, 100],
    airTemperatureError: [0, 2],
    relativeHumidityError: [0, 0.1],
    surfaceTemperatureError: [0, 2],
  },
  refuses: {
    airTemperature: [-100, 200],
    relativeHumidity: [1e-6, 1],
    surfaceTemperature: [-100, 200],
    airTemperatureError: [0, 20],
    relativeHumidityError: [0, 0.5],
    surfaceTemperatureError: [0, 20],
  },
  defaults: { airTemperatureError: 0.5, relativeHumidityError: 0.03, surfaceTemperatureError: 0.5 },
  source: 'ashrae-fundamentals-2017',
  locator: 'chapter 1, equations 5, 6 and 22',
  notes:
    'The assumed instrument errors (standard deviations 0.5 K, 3 % humidity, 0.5 K) are common practice for hand instruments, without a source. The customary limits, 3 K and 5 °F, are two limits, not one: 5 °F is 2.78 K.',
  shows: 'difference',
  inputShows: { relativeHumidity: 'humidity', relativeHumidityError: 'humidity' },
  compute: marginOf,
  band: (values) => ({ causes: causesOf(values) }),
});

/**
 * Coldest surface that keeps a wanted margin above the dew point, °C.
 *
 * Above 0 °C only: on colder surfaces ice settles first, at the frost point.
 */
export const leastSurfaceTemperature = formula({
  id: 'air/least-surface-temperature',
  says: 'Coldest surface that still keeps the wanted margin above the dew point',
  equation: 'dewPoint(airTemperature, relativeHumidity) + margin',
  takes: { airTemperature: '°C', relativeHumidity: '1', margin: 'K' },
  gives: '°C',
  holds: { airTemperature: [0.01, 100], relativeHumidity: [0.01, 1], margin: [0, 10] },
  refuses: { airTemperature: [-100, 200], relativeHumidity: [1e-6, 1], margin: [0, 50] },
  source: 'dew-point-chart-us-units',
  notes: 'The margin comes from the data sheet or the firm; the chart read uses 5 °F.',
  shows: 'temperature',
  inputShows: { relativeHumidity: 'humidity' },
  compute: ({ airTemperature, relativeHumidity, margin }) =>
    dewPointOf(vapourPressureOf(airTemperature, relativeHumidity)) + margin,
});
