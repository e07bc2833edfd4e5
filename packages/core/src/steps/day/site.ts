import { Z90 } from '../../kernel/band.ts';
import type { Series } from '../../kernel/entry.ts';
import { instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { dewMargin, dewPoint } from '../../science/air/index.ts';
import { MARK_MS, slabUnderAir } from '../../science/heat/index.ts';
import type { Conditions } from '../../science/windows/index.ts';
import type { StepContext } from '../context.ts';
import { airInside, mostOf } from '../formulas/day.ts';
import type { SitePlan } from '../results.ts';
import type { SiteState } from './site-state.ts';
import { saidOf } from './weather-rows.ts';

/** Marks between two values of a recorded series: a quarter of an hour. */
const EVERY = 3;
const SPACING = (EVERY * MARK_MS) / 1000;

/** Weather that nobody should decide by without a second look. */
const DOUBTFUL: ReadonlySet<string> = new Set([
  'weather-forecast-stale',
  'weather-typed',
  'weather-typical-year',
  'weather-other-place',
]);

/** Series keep four decimals: finer than any instrument, and the plan stays small. */
const kept = (value: number): number => Math.round(value * 1e4) / 1e4;

const thinned = (conditions: Conditions, of: (mark: number) => number): number[] =>
  Array.from({ length: Math.ceil(conditions.count / EVERY) }, (_, i) => kept(of(i * EVERY)));

/** Slab, air and dew point over the days of the weather, as series with their bands. */
export function site(ctx: StepContext, state: SiteState, trace: Trace): SitePlan | undefined {
  const { hours } = state;
  if (!hours) return undefined;
  const { conditions, calibration, forecast } = hours;
  const { zone } = ctx.job.place;
  const from = instantIn(conditions.from, zone);
  const at = (values: Float64Array) => (mark: number) => values[mark] as number;
  const series = <U extends Unit>(
    name: string,
    unit: U,
    formula: { readonly id: string; readonly source: string },
    shows: NonNullable<Series['shows']>,
    inputs: Series['inputs'],
    of: (mark: number) => number,
    deviation?: (mark: number) => number,
  ): Series<U> =>
    trace.series(name, {
      values: thinned(conditions, of),
      ...(deviation
        ? {
            low: thinned(conditions, (m) => of(m) - Z90 * deviation(m)),
            high: thinned(conditions, (m) => of(m) + Z90 * deviation(m)),
          }
        : {}),
      unit,
      formula: formula.id,
      source: formula.source,
      inputs,
      outside: [],
      from,
      step: SPACING,
      shows,
    });
  const thickness = trace.given('slab-thickness', {
    value: calibration.setup.layers[0]?.thickness ?? 0,
    unit: 'm',
    origin: ctx.job.survey.slab?.thickness ? 'reading' : 'assumed',
    ...(ctx.job.survey.slab?.thickness
      ? { typed: ctx.job.survey.slab.thickness.typed }
      : { says: 'day-slab-thickness-assumed' }),
    shows: 'small-length',
  });
  const air = series('air', '°C', airInside, 'temperature', {}, at(conditions.air));
  const humidity = series('humidity', '1', dewPoint, 'humidity', { airTemperature: air.id }, at(conditions.humidity));
  const slab = series(
    'slab',
    '°C',
    slabUnderAir,
    'temperature',
    { airTemperatures: air.id, slabThickness: thickness.id },
    at(conditions.surface),
    at(conditions.surfaceDeviation),
  );
  const dewAt = (m: number): number => (conditions.surface[m] as number) - (conditions.margin[m] as number);
  const moistureDeviation = (m: number): number =>
    Math.sqrt(
      Math.max(
        0,
        (conditions.marginDeviation[m] as number) ** 2 - forecast.model ** 2 - (forecast.fit[m] as number) ** 2,
      ),
    );
  const dew = series(
    'dew',
    '°C',
    dewPoint,
    'temperature',
    { airTemperature: air.id, relativeHumidity: humidity.id },
    dewAt,
    moistureDeviation,
  );
  const margin = series(
    'margin',
    'K',
    dewMargin,
    'difference',
    { surfaceTemperature: slab.id, airTemperature: air.id, relativeHumidity: humidity.id },
    at(conditions.margin),
    at(conditions.marginDeviation),
  );
  const readings = trace.given('readings', {
    value: calibration.readings,
    unit: '1',
    origin: 'reading',
    shows: 'count',
  });
  const worst = calibration.residuals.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  const reasons: Reason[] = state.issues
    .filter(({ code }) => DOUBTFUL.has(code))
    .map((issue) => ({ ...saidOf(issue, zone), verdict: 'caution' }));
  return {
    verdict: verdictOf(reasons),
    weather: state.weather,
    missing: [],
    notes: [
      ...state.issues.filter(({ code }) => !DOUBTFUL.has(code)).map((issue) => saidOf(issue, zone)),
      ...state.assumed,
      ...state.cautions.map((code) => ({ code })),
    ],
    from,
    until: instantIn(conditions.from + (conditions.count - 1) * MARK_MS, zone),
    slab,
    dew,
    air,
    humidity,
    margin,
    readings,
    ...(calibration.readings > 0
      ? {
          worstFit: trace.taken('worst-fit', mostOf, {
            value: worst,
            unit: 'K',
            inputs: { values: slab.id },
            shows: 'difference',
          }),
        }
      : {}),
  };
}
