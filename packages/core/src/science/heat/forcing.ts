import { vapourPressureOf } from '../air/saturation.ts';
import { coverFromShare, haurwitzAt, throughClouds } from '../sun/clear-sky.ts';
import { directOnFloor } from '../sun/diffuse-share.ts';
import { type Opening, sunReach } from '../sun/door-sun.ts';
import { sunPosition } from '../sun/position.ts';
import { dewPointAt } from '../weather/moist.ts';
import { HOUR_MS, leadOf, valueAt, type WeatherSeries } from '../weather/series.ts';
import { berdahlMartin, cloudedSkyEmissivity, skyLongWave } from './sky.ts';
import { STEP } from './time-steps.ts';

/**
 * The weather as the slab meets it, on marks every 5 min: laid out once for a stretch of time, then used by every run
 * over that stretch (a calibration makes fifty).
 */
export interface Forcing {
  /** ms since 1970 of mark 0 */
  readonly from: number;
  readonly marks: number;
  /** Outdoor air, °C. */
  readonly air: Float64Array;
  /** Mean of the outdoor air over the 24 h before the mark, °C. */
  readonly dayMean: Float64Array;
  /** Global radiation, W/m². */
  readonly radiation: Float64Array;
  /** Long-wave radiation of the sky, W/m². */
  readonly sky: Float64Array;
  /** m/s; 2 where the weather gives none */
  readonly wind: Float64Array;
  /** The radiation weighted by how much less a floor absorbs of a low sun, W/m². */
  readonly absorbable: Float64Array;
  /** Vapour pressure of the outdoor air, Pa. */
  readonly vapour: Float64Array;
  /** Rain, m/s; 0 where the weather gives none. */
  readonly rain: Float64Array;
  /** What was missing in the weather and assumed instead: codes for the caller to say. */
  readonly assumed: readonly string[];
}

export const MARK_MS = STEP * 1000;
/** Light air: what a yard has more often than not; assumed where the weather carries no wind. */
const ASSUMED_WIND = 2;
/** Under this clear-sky radiation the clearness says nothing about clouds, W/m². */
const TOO_DARK = 150;

/**
 * How much a floor absorbs of the sun at an elevation (rad), over what it absorbs at 45°: rough surfaces reflect more
 * of a low sun. Albedo ∝ 1/(1 + 0.8 sin(elevation)) (Briegleb and others 1986, from memory), 0.3 at 45°.
 */
export const lowSunFactor = (elevation: number): number => {
  const albedo = (0.3 * (1 + 0.8 * Math.SQRT1_2)) / (1 + 0.8 * Math.max(0, Math.sin(elevation)));
  return (1 - albedo) / 0.7;
};

/** Radiation and cloud by hour (mean over the hour that ends there), completed from each other or from a clear sky. */
const radiationAndCloud = (
  weather: WeatherSeries,
): { radiation: Float64Array; cloud: Float64Array; lowSun: Float64Array; assumed: string[] } => {
  const { count, start, source } = weather;
  const { latitude, longitude } = source.place;
  const clear = new Float64Array(count);
  const lowSun = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const middle = start + (i - 0.5) * HOUR_MS;
    const { elevation } = sunPosition(middle, latitude, longitude);
    clear[i] = haurwitzAt(elevation);
    lowSun[i] = lowSunFactor(elevation);
  }
  const assumed: string[] = [];
  let cloud = weather.cloud;
  if (cloud === undefined && weather.radiation !== undefined) cloud = cloudFromRadiation(weather.radiation, clear);
  if (cloud === undefined) {
    assumed.push('weather-clear-sky-assumed');
    cloud = new Float64Array(count);
  }
  let radiation = weather.radiation;
  if (radiation === undefined) {
    if (weather.cloud !== undefined) assumed.push('weather-radiation-from-clouds');
    const cover = cloud;
    radiation = clear.map((each, i) => each * throughClouds(cover[i] as number));
  }
  return { radiation, cloud, lowSun, assumed };
};

/** Cloud from the clearness of each bright hour, carried across the night by a straight line. */
const cloudFromRadiation = (radiation: Float64Array, clear: Float64Array): Float64Array => {
  const cloud = new Float64Array(clear.length);
  let lastBright = -1;
  for (let i = 0; i < clear.length; i++) {
    const possible = clear[i] as number;
    if (possible < TOO_DARK) continue;
    cloud[i] = coverFromShare(Math.min(1, (radiation[i] as number) / possible));
    const from = lastBright < 0 ? (cloud[i] as number) : (cloud[lastBright] as number);
    for (let j = lastBright + 1; j < i; j++) {
      cloud[j] = from + (((cloud[i] as number) - from) * (j - lastBright)) / (i - lastBright);
    }
    lastBright = i;
  }
  if (lastBright >= 0) cloud.fill(cloud[lastBright] as number, lastBright + 1);
  return cloud;
};

/**
 * Forcing over a stretch of weather.
 *
 * Outside the weather the nearest end counts; whether the weather covers the stretch is the caller's question
 * (`isCovered`).
 *
 * @param from first mark, ms since 1970
 * @param to last mark, ms since 1970; rounded up to a whole number of 5-min marks
 */
export const forcingOf = (weather: WeatherSeries, from: number, to: number): Forcing => {
  const marks = Math.max(2, Math.ceil((to - from) / MARK_MS) + 1);
  const { radiation, cloud, lowSun, assumed } = radiationAndCloud(weather);
  if (weather.wind === undefined) assumed.push('weather-wind-assumed');
  const hourly = {
    vapour: new Float64Array(weather.count),
    sky: new Float64Array(weather.count),
    sum: new Float64Array(weather.count + 1),
  };
  for (let i = 0; i < weather.count; i++) {
    const air = weather.airTemperature[i] as number;
    const dew = dewPointAt(air, weather.relativeHumidity[i] as number);
    hourly.vapour[i] = vapourPressureOf(air, weather.relativeHumidity[i] as number);
    // Cloud from radiation belongs to the middle of the hour; half an hour is nothing to a cloud cover so uncertain.
    hourly.sky[i] = cloudedSkyEmissivity(berdahlMartin(dew), cloud[i] as number);
    hourly.sum[i + 1] = (hourly.sum[i] as number) + air;
  }
  const forcing = {
    from,
    marks,
    air: new Float64Array(marks),
    dayMean: new Float64Array(marks),
    radiation: new Float64Array(marks),
    sky: new Float64Array(marks),
    wind: new Float64Array(marks),
    absorbable: new Float64Array(marks),
    vapour: new Float64Array(marks),
    rain: new Float64Array(marks),
    assumed,
  };
  const lead = leadOf(weather);
  for (let m = 0; m < marks; m++) {
    const instant = from + m * MARK_MS;
    const air = valueAt(weather, weather.airTemperature, instant, lead);
    forcing.air[m] = air;
    forcing.vapour[m] = valueAt(weather, hourly.vapour, instant, lead);
    forcing.radiation[m] = Math.max(0, valueAt(weather, radiation, instant, 0.5));
    forcing.absorbable[m] = (forcing.radiation[m] as number) * valueAt(weather, lowSun, instant, 0.5);
    const hour = Math.ceil((instant - weather.start) / HOUR_MS);
    if (weather.rain !== undefined && hour >= 0 && hour < weather.count)
      forcing.rain[m] = (weather.rain[hour] as number) / 3600;
    forcing.sky[m] = skyLongWave(valueAt(weather, hourly.sky, instant, lead), air);
    forcing.wind[m] = weather.wind === undefined ? ASSUMED_WIND : valueAt(weather, weather.wind, instant, lead);
    const last = Math.min(weather.count, Math.max(1, Math.floor((instant - weather.start) / HOUR_MS) + 1));
    const first = Math.max(0, last - 24);
    forcing.dayMean[m] = ((hourly.sum[last] as number) - (hourly.sum[first] as number)) / (last - first);
  }
  return forcing;
};

/**
 * Direct sun on a strip of floor behind an opening, at each mark, W/m²: 0 where the sun does not reach it.
 *
 * @param depth distance of the strip from the opening, m
 */
export const stripSun = (weather: WeatherSeries, forcing: Forcing, opening: Opening, depth: number): Float64Array => {
  const { latitude, longitude } = weather.source.place;
  const out = new Float64Array(forcing.marks);
  for (let m = 0; m < forcing.marks; m++) {
    const global = forcing.radiation[m] as number;
    if (global <= 0) continue;
    const sun = sunPosition(forcing.from + m * MARK_MS, latitude, longitude);
    if (sunReach(sun, opening) >= depth) out[m] = directOnFloor(global, sun.elevation);
  }
  return out;
};
