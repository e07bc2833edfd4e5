import { dewPointOf, frostPointOf, saturationPressureAt, vapourPressureOf } from '../air/saturation.ts';
import { STANDARD_PRESSURE } from '../constants.ts';
import type { FilmHistory } from '../cure/progress.ts';
import { MARK_MS } from '../heat/forcing.ts';
import type { SlabForecast } from '../heat/forecast.ts';
import { dewPointAt } from '../weather/moist.ts';
import { HOLE, HOUR_MS, leadOf, valueAt, type WeatherSeries } from '../weather/series.ts';
import { barometricRiseAt } from './outgassing.ts';

/** Everything a coat meets, on marks every 5 min: what the search reads. */
export interface Conditions {
  /** ms since 1970 of the first mark */
  readonly from: number;
  readonly count: number;
  /** Slab surface, °C, and its deviation, K. */
  readonly surface: Float64Array;
  readonly surfaceDeviation: Float64Array;
  /** Air over the floor, °C. */
  readonly air: Float64Array;
  /** Relative humidity of the air over the floor, 0-1. */
  readonly humidity: Float64Array;
  /** Surface less dew point (frost point below 0 °C), K, and its deviation. */
  readonly margin: Float64Array;
  readonly marginDeviation: Float64Array;
  /** Mean of the top 50 mm, the fall of the barometer counted as warming, °C. */
  readonly breathing: Float64Array;
  /** m/s and m of rain in the hour; 0 where the weather has none */
  readonly wind: Float64Array;
  readonly rain: Float64Array;
  /** 1 where the weather is known, 0 in a hole. */
  readonly known: Uint8Array;
  /** 1 where rain or its absence is known. */
  readonly rainKnown: Uint8Array;
  /** Codes of what was missing and left out. */
  readonly assumed: readonly string[];
}

/** Deviation of the forecast relative humidity (assumed, common practice). */
export const HUMIDITY_ERROR = 0.05;

/**
 * Joins slab, air and weather into what the coats meet.
 *
 * The air over the floor holds the water of the outdoor air (an open or leaky building; assumed), so its dew point is
 * the outdoor one whatever its temperature. `moisture` multiplies that water where a wet slab, a flame heater or a
 * dryer changes it: indoor vapour pressure over outdoor, from a reading inside.
 *
 * An error of the forecast air moves slab and dew point together, so only the difference counts in the margin.
 */
export const conditionsOf = (
  weather: WeatherSeries,
  slab: SlabForecast,
  humidityError = HUMIDITY_ERROR,
  moisture = 1,
): Conditions => {
  const { history } = slab;
  const { count, from } = history;
  const assumed: string[] = [];
  for (const field of ['rain', 'wind', 'pressure'] as const) {
    if (weather[field] === undefined) assumed.push(`weather-${field}-not-given`);
  }
  const hourly = vapourByHour(weather);
  const lead = leadOf(weather);
  const out = {
    from,
    count,
    surface: history.surface,
    surfaceDeviation: new Float64Array(count),
    air: history.air,
    humidity: new Float64Array(count),
    margin: new Float64Array(count),
    marginDeviation: new Float64Array(count),
    breathing: new Float64Array(count),
    wind: new Float64Array(count),
    rain: new Float64Array(count),
    known: new Uint8Array(count),
    rainKnown: new Uint8Array(count),
    assumed,
  };
  for (let m = 0; m < count; m++) {
    const instant = from + m * MARK_MS;
    const surface = history.surface[m] as number;
    const vapour = moisture * valueAt(weather, hourly.vapour, instant, lead);
    const frost = surface < 0 ? frostPointOf(vapour) : undefined;
    out.margin[m] = surface - (frost ?? dewPointOf(vapour));
    out.humidity[m] = Math.min(1, vapour / saturationPressureAt(history.air[m] as number));

    const perAir = slab.perAirKelvin[m] as number;
    const shared = slab.airError * (perAir - valueAt(weather, hourly.byAir, instant, lead));
    const apart = Math.hypot(slab.fit[m] as number, slab.sun[m] as number, slab.model);
    out.marginDeviation[m] = Math.hypot(
      apart,
      shared,
      humidityError * valueAt(weather, hourly.byHumidity, instant, lead),
    );
    out.surfaceDeviation[m] = Math.hypot(apart, slab.airError * perAir);

    const top = history.top[m] as number;
    const pressure =
      weather.pressure === undefined ? STANDARD_PRESSURE : valueAt(weather, weather.pressure, instant, lead);
    out.breathing[m] = top + barometricRiseAt(pressure - STANDARD_PRESSURE, top, STANDARD_PRESSURE);

    if (weather.wind !== undefined) out.wind[m] = valueAt(weather, weather.wind, instant, lead);
    const hour = (instant - weather.start) / HOUR_MS;
    const [before, after] = [Math.floor(hour), Math.ceil(hour)];
    const inside = before >= 0 && after < weather.count;
    if (weather.rain !== undefined && inside) {
      out.rain[m] = weather.rain[after] as number;
      out.rainKnown[m] = weather.partial?.rain?.[after] === HOLE ? 0 : 1;
    }
    out.known[m] = inside && weather.state[before] !== HOLE && weather.state[after] !== HOLE ? 1 : 0;
  }
  return out;
};

/** Vapour pressure by hour, Pa, and how the dew point moves with the air (at constant humidity) and with humidity. */
const vapourByHour = (weather: WeatherSeries) => {
  const { count } = weather;
  const out = { vapour: new Float64Array(count), byAir: new Float64Array(count), byHumidity: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const air = weather.airTemperature[i] as number;
    const humidity = weather.relativeHumidity[i] as number;
    const lower = humidity * 0.98;
    out.vapour[i] = vapourPressureOf(air, humidity);
    out.byAir[i] = dewPointAt(air + 0.5, humidity) - dewPointAt(air - 0.5, humidity);
    out.byHumidity[i] = (dewPointAt(air, humidity) - dewPointAt(air, lower)) / (humidity - lower);
  }
  return out;
};

/** The slab's temperature as the film meets it. */
export const filmHistoryOf = (conditions: Conditions): FilmHistory => ({
  from: conditions.from,
  spacing: MARK_MS / 1000,
  temperature: conditions.surface,
  deviation: conditions.surfaceDeviation,
});
