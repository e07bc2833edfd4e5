import { type Forcing, MARK_MS } from './forcing.ts';
import { leastSquares } from './least-squares.ts';
import { type ParameterName, PRIOR_DEVIATION, parametersOf, withParameters } from './parameters.ts';
import { type DoorOpen, runSlab, type SlabHistory, type SlabSetup } from './slab-day.ts';

/** A temperature read on the slab's surface. */
export interface SlabReading {
  /** ms since 1970 */
  readonly time: number;
  /** °C */
  readonly temperature: number;
}

export interface Calibration {
  readonly setup: SlabSetup;
  readonly names: readonly ParameterName[];
  /** Move of each parameter from its prior, and its deviation afterwards. */
  readonly values: readonly number[];
  readonly deviations: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Reading less model at each reading used, K. */
  readonly residuals: readonly number[];
  /** Codes to be said: readings outside the stretch of weather, readings that no slab explains. */
  readonly cautions: readonly string[];
  /** Number of readings used. */
  readonly readings: number;
}

export interface CalibrationRequest {
  readonly setup: SlabSetup;
  readonly forcing: Forcing;
  readonly doors: readonly DoorOpen[];
  readonly readings: readonly SlabReading[];
  readonly strip?: Float64Array;
  /** Deviations that replace the usual priors. */
  readonly priors?: Partial<Readonly<Record<ParameterName, number>>>;
}

/** What separates a reading from the model beside its own error: instrument 0.5 K, spot and model 0.5 K. */
export const READING_DEVIATION = 0.7;
/** A reading this many deviations off after the fit is not explained by any slab of this kind. */
const UNEXPLAINED = 3;

/** Surface of a history at an instant, straight line between marks. */
export const surfaceAt = (history: SlabHistory, time: number): number => {
  const x = Math.min(history.count - 1, Math.max(0, (time - history.from) / MARK_MS));
  const i = Math.min(Math.floor(x), history.count - 2);
  const a = history.surface[i] as number;
  return a + ((history.surface[i + 1] as number) - a) * (x - i);
};

/**
 * Fits the slab to the readings on hand, each parameter held by its prior.
 *
 *   minimise Σ((model − reading)/0.7 K)² + Σ(move/prior deviation)²
 *
 * Never one constant offset by day: outdoors that made the next day worse than no calibration at all. With a single
 * reading only the gain moves (where there is one); the spread of everything else stays. Readings over the day, one
 * of them after sunset, teach most.
 */
export const calibrate = (request: CalibrationRequest): Calibration => {
  const { setup, forcing, doors, strip } = request;
  const names = parametersOf(setup);
  const priors = names.map((name) => request.priors?.[name] ?? PRIOR_DEVIATION[name]);
  const end = forcing.from + (forcing.marks - 1) * MARK_MS;
  const readings = request.readings.filter((each) => each.time >= forcing.from && each.time <= end);
  const cautions: string[] = [];
  if (readings.length < request.readings.length) cautions.push('slab-reading-outside-weather');

  if (readings.length === 0) {
    const covariance = priors.map((each, i) => priors.map((_, j) => (i === j ? each * each : 0)));
    return {
      setup,
      names,
      values: names.map(() => 0),
      deviations: priors,
      covariance,
      residuals: [],
      cautions,
      readings: 0,
    };
  }

  const reportFrom = readings.reduce((least, each) => Math.min(least, each.time), end);
  // Only the stretch up to the last reading matters here.
  const lastReading = readings.reduce((most, each) => Math.max(most, each.time), forcing.from);
  const marks = Math.min(forcing.marks, Math.ceil((lastReading - forcing.from) / MARK_MS) + 2);
  const stretch: Forcing = { ...forcing, marks };
  const from = forcing.from + Math.max(0, Math.floor((reportFrom - forcing.from) / MARK_MS) - 1) * MARK_MS;
  const model = (values: ArrayLike<number>): SlabHistory =>
    runSlab(withParameters(setup, names, values), stretch, doors, from, strip);
  const evaluate = (values: Float64Array, residuals: Float64Array): void => {
    const history = model(values);
    for (const [i, reading] of readings.entries()) {
      residuals[i] = (surfaceAt(history, reading.time) - reading.temperature) / READING_DEVIATION;
    }
    for (const [j, prior] of priors.entries()) residuals[readings.length + j] = (values[j] as number) / prior;
  };

  const fit = leastSquares({
    start: names.map(() => 0),
    scale: priors,
    residuals: readings.length + names.length,
    evaluate,
    mostPasses: 6,
  });
  const gain = names.indexOf('gain');
  let values = fit.values;
  if (readings.length === 1 && gain >= 0) {
    values = onlyGain(names.length, gain, priors, readings.length, evaluate);
  }
  const history = model(values);
  const residuals = readings.map((reading) => reading.temperature - surfaceAt(history, reading.time));
  if (residuals.some((each) => Math.abs(each) > UNEXPLAINED * READING_DEVIATION))
    cautions.push('slab-readings-unexplained');
  return {
    setup: withParameters(setup, names, values),
    names,
    values: Array.from(values),
    deviations: fit.covariance.map((row, i) => Math.sqrt(row[i] as number)),
    covariance: fit.covariance,
    residuals,
    cautions,
    readings: readings.length,
  };
};

/** The best move of the gain alone, all other parameters at their priors. */
const onlyGain = (
  count: number,
  gain: number,
  priors: readonly number[],
  readings: number,
  evaluate: (values: Float64Array, residuals: Float64Array) => void,
): Float64Array<ArrayBuffer> => {
  const all = new Float64Array(readings + count);
  const spread = (value: number): Float64Array<ArrayBuffer> => {
    const values = new Float64Array(count);
    values[gain] = value;
    return values;
  };
  const fit = leastSquares({
    start: [0],
    scale: [priors[gain] as number],
    residuals: all.length,
    evaluate: ([value], residuals) => evaluate(spread(value as number), residuals),
    mostPasses: 4,
  });
  return spread(fit.values[0] as number);
};

/** Variance of a quantity that moves with the parameters as `vector` says. */
export const quadraticForm = (covariance: readonly (readonly number[])[], vector: readonly number[]): number => {
  let sum = 0;
  for (const [i, row] of covariance.entries()) {
    for (const [j, each] of row.entries()) sum += (vector[i] as number) * each * (vector[j] as number);
  }
  return Math.max(0, sum);
};
