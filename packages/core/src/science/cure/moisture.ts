import { humidityRatioOf, vapourPressureOf } from '../air/saturation.ts';
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
