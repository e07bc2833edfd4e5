import type { Issue } from '../../kernel/issue.ts';
import { type AnnualWave, roughAnnualWave } from '../heat/annual-wave.ts';
import { type Calibration, calibrate, type SlabReading } from '../heat/calibrate.ts';
import { type SlabDescription, slabIssues } from '../heat/check.ts';
import type { Exposure } from '../heat/exposure.ts';
import { type Forcing, forcingOf, MARK_MS, stripSun } from '../heat/forcing.ts';
import {
  FORECAST_ERRORS,
  type ForecastErrors,
  forecastSlab,
  MEASURED_ERRORS,
  type SlabForecast,
  TYPED_ERRORS,
  TYPICAL_YEAR_ERRORS,
} from '../heat/forecast.ts';
import { slabOnGround } from '../heat/materials.ts';
import type { DoorOpen } from '../heat/slab-day.ts';
import type { Opening } from '../sun/door-sun.ts';
import { freshness } from '../weather/build.ts';
import { withPast } from '../weather/past.ts';
import { DAY_MS, endOf, type WeatherSeries } from '../weather/series.ts';
import { type Conditions, conditionsOf, HUMIDITY_ERROR } from './conditions.ts';

/** All that the hours of a site are worked out from. */
export interface SiteHoursRequest {
  readonly weather: WeatherSeries;
  /** ms since 1970: the moment of planning, from which the hours are told. */
  readonly now: number;
  /** Last moment of interest, ms since 1970. */
  readonly until: number;
  readonly slab: SlabDescription;
  readonly exposure: Exposure;
  /** Yearly wave of the ground, from a typical year; a rough one by latitude otherwise. */
  readonly ground?: AnnualWave;
  readonly doors: readonly DoorOpen[];
  readonly readings: readonly SlabReading[];
  /** A spot behind an opening that the sun reaches, at its depth in the room, m. */
  readonly sunlit?: { readonly opening: Opening; readonly depth: number };
  readonly errors?: ForecastErrors;
  /** Vapour pressure inside over outside, from a reading; 1 where nobody read it. */
  readonly moisture?: number;
  /** First moment told, ms since 1970, where it lies before `now`. */
  readonly from?: number;
  /** The fit to the same readings, from an earlier call: a moved start or a later `now` needs no new one. */
  readonly calibration?: Calibration;
}

export interface SiteHours {
  readonly conditions: Conditions;
  readonly forecast: SlabForecast;
  readonly calibration: Calibration;
  readonly forcing: Forcing;
}

export interface SiteHoursResult {
  /** Absent when an issue makes the slab impossible. */
  readonly hours?: SiteHours;
  readonly issues: readonly Issue[];
  /** What was assumed or cannot be trusted, as codes. */
  readonly cautions: readonly string[];
}

/** How far each kind of weather is to be believed. */
const ERRORS: Readonly<Record<WeatherSeries['source']['kind'], ForecastErrors>> = {
  forecast: FORECAST_ERRORS,
  measured: MEASURED_ERRORS,
  typed: TYPED_ERRORS,
  'typical year': TYPICAL_YEAR_ERRORS,
};

/** Past weather that a slab still remembers, ms. */
export const SPIN_UP = 10 * DAY_MS;

/**
 * Slab, dew point and weather of a site over the days ahead, from the weather, the slab's description and the readings
 * on hand: what `findWindows`, the cure and the ribbon of the day read.
 */
export const siteHours = (request: SiteHoursRequest): SiteHoursResult => {
  const { weather, now, slab, exposure, doors, readings, sunlit } = request;
  const issues = [...slabIssues(slab), ...freshness(weather, now, request.until)];
  const cautions: string[] = [];
  if (slabIssues(slab).length > 0 || endOf(weather) <= now) return { issues, cautions };

  const earliest = readings.reduce((least, each) => Math.min(least, each.time), Math.min(now, request.from ?? now));
  const from = Math.floor((earliest - SPIN_UP) / MARK_MS) * MARK_MS;
  const { series, added } = withPast(weather, from);
  if (added > 0) cautions.push('slab-past-weather-assumed');
  const { latitude, elevation } = weather.source.place;
  if (request.ground === undefined && exposure.kind !== 'room') cautions.push('slab-ground-assumed');
  const setup = {
    layers: slabOnGround(slab.slabThickness, slab.baseThickness, slab),
    ground: request.ground ?? roughAnnualWave(latitude, elevation ?? 0),
    groundShift: 0,
    exposure,
  };
  const to = Math.min(endOf(weather), Math.max(request.until, now + DAY_MS));
  const forcing = forcingOf(series, from, to);
  cautions.push(...forcing.assumed);
  const strip = sunlit === undefined ? undefined : stripSun(series, forcing, sunlit.opening, sunlit.depth);
  const calibration =
    request.calibration ?? calibrate({ setup, forcing, doors, readings, ...(strip === undefined ? {} : { strip }) });
  cautions.push(...calibration.cautions);
  if (calibration.readings === 0) cautions.push('slab-not-read');
  const { kind } = weather.source;
  const errors = request.errors ?? ERRORS[kind];
  const start = Math.floor(Math.min(now, request.from ?? now) / MARK_MS) * MARK_MS;
  const forecast = forecastSlab(calibration, forcing, doors, start, now, errors, strip);
  const humidityError = kind === 'typed' || kind === 'typical year' ? 2 * HUMIDITY_ERROR : HUMIDITY_ERROR;
  const conditions = conditionsOf(series, forecast, humidityError, request.moisture ?? 1);
  cautions.push(...conditions.assumed);
  return { hours: { conditions, forecast, calibration, forcing }, issues, cautions: [...new Set(cautions)] };
};
