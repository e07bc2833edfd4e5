import type { Product } from '../catalogue.ts';
import type { Known } from '../kernel/entry.ts';
import type { Said } from '../kernel/said.ts';
import type { Trace } from '../kernel/trace.ts';
import { STANDARD_PRESSURE } from '../science/constants.ts';
import {
  type HumidityPoint,
  humidityPower,
  inMoistAir,
  LABORATORY_AIR,
  type TimeWithBand,
  waterToSheet,
} from '../science/cure/index.ts';
import { givenField, sheetOf } from './context.ts';

type SheetTime = NonNullable<Product['times']>[number];

/** Air over the floor, of a reading or of an hour of the weather. */
export interface AirOfHour {
  readonly air: Known<'°C'>;
  readonly humidity: Known<'1'>;
}

/** What moist air does to the open time of a system that takes part of its cure from it. */
export interface MoistOpen {
  readonly ratio: Known<'1'>;
  readonly of: (open: TimeWithBand) => TimeWithBand;
  readonly holds: readonly Said[];
}

/** Two open times of the sheet at one temperature and two humidities; fewer say nothing of the humidity. */
function humidityPoints(product: Product): readonly HumidityPoint[] {
  const points = (product.times ?? []).flatMap(({ what, at, humidity, value }) =>
    what === 'open time' && humidity
      ? [{ temperature: at.value, relativeHumidity: humidity.value, time: value.value }]
      : [],
  );
  const [first] = points;
  const same = points.filter(({ temperature }) => temperature === first?.temperature);
  const humidities = new Set(same.map(({ relativeHumidity }) => relativeHumidity));
  return humidities.size > 1 ? same : [];
}

/**
 * Air against the sheet's, for what cures by humidity; undefined for everything else. The two points of a sheet move
 * the whole time; without them only the lower bound shrinks where the air holds more water than the sheet's.
 *
 * @param point open time of the sheet that is changed; its first with a humidity where the time is fitted to all
 */
export function moistOpen(
  product: Product,
  airOf: (water: Trace) => AirOfHour,
  trace: Trace,
  point?: SheetTime,
): MoistOpen | undefined {
  if (product.humidityCured !== true) return undefined;
  const t = trace.within('water');
  const where = sheetOf(product);
  const first = (product.times ?? []).find(({ what, humidity }) => what === 'open time' && humidity);
  const sheet = point?.humidity ? point : first;
  const { air, humidity } = airOf(t);
  const assumed = { origin: 'assumed', says: 'day-sheet-air-assumed' } as const;
  const ratio = t.figure('ratio', waterToSheet, {
    airTemperature: air,
    relativeHumidity: humidity,
    sheetTemperature: sheet
      ? givenField(t, 'sheet-air', sheet.at, 'data sheet', { where })
      : t.given('sheet-air', { value: LABORATORY_AIR.temperature, unit: '°C', shows: 'temperature', ...assumed }),
    sheetHumidity: sheet?.humidity
      ? givenField(t, 'sheet-humidity', sheet.humidity, 'data sheet', { where })
      : t.given('sheet-humidity', {
          value: LABORATORY_AIR.relativeHumidity,
          unit: '1',
          shows: 'humidity',
          ...assumed,
        }),
  });
  const points = humidityPoints(product);
  const power = points.length > 1 ? humidityPower(points, STANDARD_PRESSURE) : undefined;
  const above = power === undefined && ratio.value > 1;
  return {
    ratio,
    of: (open) => inMoistAir(open, ratio.value, power),
    holds: above
      ? [{ code: 'day-water-above-sheet', figures: { ratio: ratio.id } }]
      : power === undefined
        ? [{ code: 'cure-humidity-unknown' }]
        : [],
  };
}
