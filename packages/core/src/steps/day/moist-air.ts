import type { Product } from '../../catalogue.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { STANDARD_PRESSURE } from '../../science/constants.ts';
import {
  type HumidityPoint,
  humidityPower,
  inMoistAir,
  LABORATORY_AIR,
  type Milestone,
  waterToSheet,
} from '../../science/cure/index.ts';
import type { Conditions } from '../../science/windows/index.ts';
import { givenField, sheetOf } from '../context.ts';
import { valueAt } from '../formulas/day.ts';
import type { SitePlan } from '../results.ts';
import { valueNear } from './series-values.ts';

/** Open time of a system that takes part of its cure from the air, in the air of its hour. */
export interface InAir {
  readonly of: (dry: Milestone, laid: number) => Milestone;
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
 * Air of the hour against the sheet's, for what cures by humidity; undefined for everything else. The two points of a
 * sheet move the whole time; without them only the lower bound shrinks where the air holds more water than the sheet's.
 */
export function inAir(
  conditions: Conditions,
  product: Product,
  start: number,
  site: SitePlan,
  trace: Trace,
): InAir | undefined {
  if (product.humidityCured !== true) return undefined;
  const t = trace.within('water');
  const where = sheetOf(product);
  const sheet = (product.times ?? []).find(({ what, humidity }) => what === 'open time' && humidity);
  const taken = <U extends '°C' | '1'>(name: string, unit: U, value: number, series: string) =>
    t.taken<U>(name, valueAt, {
      value,
      unit,
      shows: unit === '1' ? 'humidity' : 'temperature',
      inputs: { before: series, after: series },
    });
  const assumed = { origin: 'assumed', says: 'day-sheet-air-assumed' } as const;
  const ratio = t.figure('ratio', waterToSheet, {
    airTemperature: taken('air', '°C', valueNear(conditions, conditions.air, start), site.air.id),
    relativeHumidity: taken('humidity', '1', valueNear(conditions, conditions.humidity, start), site.humidity.id),
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
    of: (dry, laid) => {
      const { at, low, high = at } = dry;
      const open = { time: at - laid, low: low - laid, high: high - laid, cautions: dry.cautions };
      const moist = inMoistAir(open, ratio.value, power);
      return {
        at: laid + moist.time,
        low: laid + moist.low,
        ...(dry.high === undefined ? {} : { high: laid + moist.high }),
        cautions: moist.cautions,
      };
    },
    holds: above
      ? [{ code: 'day-water-above-sheet', figures: { ratio: ratio.id } }]
      : power === undefined
        ? [{ code: 'cure-humidity-unknown' }]
        : [],
  };
}
