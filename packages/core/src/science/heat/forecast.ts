import { type Calibration, quadraticForm } from './calibrate.ts';
import { type Forcing, MARK_MS } from './forcing.ts';
import { withParameters } from './parameters.ts';
import { type DoorOpen, runSlab, type SlabHistory } from './slab-day.ts';

/**
 * A slab's temperatures with their deviations, kept apart by cause so that a margin to the dew point can let the
 * error of the air, which both share, partly cancel.
 */
export interface SlabForecast {
  readonly history: SlabHistory;
  /** K at each mark of the history: what the fit leaves open. */
  readonly fit: Float64Array;
  /** K of surface per K of error of the forecast air, signed. */
  readonly perAirKelvin: Float64Array;
  /** K at each mark: what an error of the forecast sun makes. */
  readonly sun: Float64Array;
  /** K, the same at every mark: what the form of the model leaves out. */
  readonly model: number;
  /** Deviation of the forecast air, K. */
  readonly airError: number;
}

export interface ForecastErrors {
  /** Deviation of the forecast air temperature, K. */
  readonly air: number;
  /** Deviation of the forecast radiation, share. */
  readonly sun: number;
  /** K */
  readonly model: number;
}

/** Assumed: public forecasts of the next three days are about 1.5 K and a fifth of the sun off (common practice). */
export const FORECAST_ERRORS: ForecastErrors = { air: 1.5, sun: 0.2, model: 0.5 };
/** Weather measured on the spot. */
export const MEASURED_ERRORS: ForecastErrors = { air: 0.5, sun: 0.05, model: 0.5 };
/** Five numbers typed out of a bulletin and held for days (assumed): twice what a forecast is off. */
export const TYPED_ERRORS: ForecastErrors = { air: 3, sun: 0.4, model: 0.5 };
/** Hours of a typical year against the year that comes (assumed): the day-to-day swing of the weather itself. */
export const TYPICAL_YEAR_ERRORS: ForecastErrors = { air: 5, sun: 0.5, model: 0.5 };

const DERIVATIVE_SHARE = 0.05;

/**
 * Runs the calibrated slab and lays its uncertainty along it.
 *
 * @param now ms since 1970: before it the weather is known, after it it carries the forecast's error
 */
export const forecastSlab = (
  calibration: Calibration,
  forcing: Forcing,
  doors: readonly DoorOpen[],
  reportFrom: number,
  now: number,
  errors: ForecastErrors,
  strip?: Float64Array,
): SlabForecast => {
  const { setup, names, covariance, deviations } = calibration;
  const run = (moved: typeof setup, weather: Forcing): SlabHistory => runSlab(moved, weather, doors, reportFrom, strip);
  const history = run(setup, forcing);
  const slopes = names.map((_, j) => {
    const step = DERIVATIVE_SHARE * Math.max(deviations[j] as number, 1e-3);
    const values = names.map((__, i) => (i === j ? step : 0));
    const moved = run(withParameters(setup, names, values), forcing);
    return moved.surface.map((each, m) => (each - (history.surface[m] as number)) / step);
  });
  const fit = new Float64Array(history.count);
  const vector = names.map(() => 0);
  for (let m = 0; m < history.count; m++) {
    for (let j = 0; j < names.length; j++) vector[j] = (slopes[j] as Float64Array)[m] as number;
    fit[m] = Math.sqrt(quadraticForm(covariance, vector));
  }

  const known = Math.max(0, Math.ceil((now - forcing.from) / MARK_MS));
  const later = (values: Float64Array, change: (each: number, mark: number) => number): Float64Array =>
    values.map((each, mark) => (mark < known ? each : change(each, mark)));
  const day = 288;
  const warmer = run(setup, {
    ...forcing,
    air: later(forcing.air, (each) => each + 1),
    // The mean of the last 24 h follows a lasting error over a day.
    dayMean: later(forcing.dayMean, (each, mark) => each + Math.min(1, (mark - known) / day)),
  });
  const perAirKelvin = warmer.surface.map((each, m) => each - (history.surface[m] as number));
  let sun = new Float64Array(history.count);
  if (setup.exposure.kind === 'patio') {
    const sunnier = run(setup, { ...forcing, radiation: later(forcing.radiation, (each) => each * (1 + errors.sun)) });
    sun = sunnier.surface.map((each, m) => Math.abs(each - (history.surface[m] as number)));
  }
  return { history, fit, perAirKelvin, sun, model: errors.model, airError: errors.air };
};

/** Deviation of the surface at a mark, all causes together, K. */
export const surfaceDeviation = (forecast: SlabForecast, mark: number): number => {
  const air = forecast.airError * (forecast.perAirKelvin[mark] as number);
  return Math.hypot(forecast.fit[mark] as number, air, forecast.sun[mark] as number, forecast.model);
};
