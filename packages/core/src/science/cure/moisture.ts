import { formula } from '../../kernel/formula.ts';
import { humidityRatioOf, vapourPressureOf } from '../air/saturation.ts';
import { STANDARD_PRESSURE } from '../constants.ts';
import type { TimeWithBand } from './law.ts';

/**
 * Systems that take part of their cure from the moisture of the air (moisture-cured and aspartic ones).
 *
 * No published function of humidity exists for them. So the centre never moves without humidity points on the sheet;
 * in air with more water than the sheet's the lower bound of the open time shrinks with the ratio, and the caution is
 * said.
 */
export interface SheetAir {
  /** °C */
  readonly temperature: number;
  /** 0-1 */
  readonly relativeHumidity: number;
}

/** Air of the usual laboratory: what a sheet means when it says nothing (assumed). */
export const LABORATORY_AIR: SheetAir = { temperature: 23, relativeHumidity: 0.5 };

/** Water in the air over the water in the sheet's air: ratio of the humidity ratios. */
export const humidityRatioToSheet = (air: SheetAir, sheet: SheetAir, pressure: number): number =>
  humidityRatioOf(vapourPressureOf(air.temperature, air.relativeHumidity), pressure) /
  humidityRatioOf(vapourPressureOf(sheet.temperature, sheet.relativeHumidity), pressure);

export const waterToSheet = formula({
  id: 'cure/water-to-sheet',
  says: 'Water in the air of the hour over the water in the air a sheet gives its times for',
  equation: 'humidityRatio(airTemperature, relativeHumidity) / humidityRatio(sheetTemperature, sheetHumidity)',
  takes: {
    airTemperature: '°C',
    relativeHumidity: '1',
    sheetTemperature: '°C',
    sheetHumidity: '1',
    pressure: 'Pa',
  },
  gives: '1',
  holds: {
    airTemperature: [0, 45],
    relativeHumidity: [0.05, 1],
    sheetTemperature: [5, 40],
    sheetHumidity: [0.1, 1],
    pressure: [60_000, 110_000],
  },
  refuses: {
    airTemperature: [-60, 60],
    relativeHumidity: [0, 1],
    sheetTemperature: [-20, 60],
    sheetHumidity: [0.01, 1],
    pressure: [50_000, 120_000],
  },
  defaults: {
    sheetTemperature: LABORATORY_AIR.temperature,
    sheetHumidity: LABORATORY_AIR.relativeHumidity,
    pressure: STANDARD_PRESSURE,
  },
  source: 'ideal-gas',
  notes:
    'For systems that take part of their cure from the air. Nobody has published how their times follow it: without humidity points on the sheet the centre stays and only the lower bound of the open time shrinks with this ratio.',
  noOutsideRow: 'A ratio of two humidity ratios, which have rows of their own (own arithmetic).',
  inputShows: { relativeHumidity: 'humidity', sheetHumidity: 'humidity', pressure: 'pressure' },
  compute: ({ airTemperature, relativeHumidity, sheetTemperature, sheetHumidity, pressure }) =>
    humidityRatioToSheet(
      { temperature: airTemperature, relativeHumidity },
      { temperature: sheetTemperature, relativeHumidity: sheetHumidity },
      pressure,
    ),
});

/** One humidity point of the sheet: in this air it takes this long, all else equal. */
export interface HumidityPoint extends SheetAir {
  /** s */
  readonly time: number;
}

/**
 * Power of the humidity ratio in time ∝ ratio^−n, out of two humidity points of the sheet; 0 without two.
 *
 * @throws RangeError when the two points hold the same water
 */
export const humidityPower = (points: readonly HumidityPoint[], pressure: number): number => {
  const [first, second] = points;
  if (first === undefined || second === undefined) return 0;
  const ratio = humidityRatioToSheet(second, first, pressure);
  if (Math.abs(Math.log(ratio)) < 1e-6) throw new RangeError('humidityPower: both points hold the same water');
  return Math.log(first.time / second.time) / Math.log(ratio);
};

/**
 * Open time (or pot life) of a moisture-cured system in the air of the hour.
 *
 * @param ratio water in the air over the sheet's
 * @param power from the sheet's humidity points; undefined when it has none
 */
export const inMoistAir = (open: TimeWithBand, ratio: number, power: number | undefined): TimeWithBand => {
  if (power !== undefined) {
    const factor = ratio ** -power;
    return { time: open.time * factor, low: open.low * factor, high: open.high * factor, cautions: open.cautions };
  }
  if (ratio <= 1) return { ...open, cautions: [...open.cautions, 'cure-humidity-unknown'] };
  return { ...open, low: open.low / ratio, cautions: [...open.cautions, 'cure-humidity-above-sheet'] };
};
