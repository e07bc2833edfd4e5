import { HOLE, HOUR_MS, type WeatherSeries } from './series.ts';

/** More than this in an hour is rain, m: the smallest amount a gauge of 0.1 mm steps shows. */
export const LEAST_RAIN = 0.0001;

export interface RainOver {
  /** Water fallen, m. */
  readonly depth: number;
  /** False when the weather does not say for some of the hours. */
  readonly known: boolean;
}

/** Rain between two instants, ms since 1970, by whole hours that end after the first and not after the second. */
export const rainOver = (weather: WeatherSeries, from: number, to: number): RainOver => {
  const first = Math.floor((from - weather.start) / HOUR_MS) + 1;
  const last = Math.floor((to - weather.start) / HOUR_MS);
  let depth = 0;
  let known = weather.rain !== undefined && first >= 0 && last < weather.count;
  for (let i = Math.max(0, first); i <= Math.min(weather.count - 1, last); i++) {
    depth += weather.rain?.[i] ?? 0;
    if (weather.partial?.rain?.[i] === HOLE) known = false;
  }
  return { depth, known };
};
