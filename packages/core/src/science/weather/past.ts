import { FILLED, HOLE, HOUR_MS, OPTIONAL_FIELDS, type OptionalField, type WeatherSeries } from './series.ts';

export interface WithPast {
  readonly series: WeatherSeries;
  /** Hours put before the given ones. */
  readonly added: number;
}

/**
 * The series begun earlier: a forecast starts now, but a slab remembers ten days. The hours before are taken to be like
 * the first day given, hour for hour, and without rain; the caller says so.
 *
 * @param from ms since 1970 at which the series must begin
 */
export const withPast = (series: WeatherSeries, from: number): WithPast => {
  const added = Math.max(0, Math.ceil((series.start - from) / HOUR_MS));
  if (added === 0) return { series, added };
  const day = Math.min(24, series.count);
  const count = series.count + added;
  const before = (values: Float64Array): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => {
      if (i >= added) return values[i - added] as number;
      // The same hour of the first day given: `added - i` hours earlier, a whole number of days later.
      return values[(((i - added) % day) + day) % day] as number;
    });
  const optional: { [K in OptionalField]?: Float64Array } = {};
  for (const field of OPTIONAL_FIELDS) {
    const values = series[field];
    if (values === undefined) continue;
    const longer = before(values);
    if (field === 'rain') longer.fill(0, 0, added);
    optional[field] = longer;
  }
  const stateBefore = (state: Uint8Array, past: number): Uint8Array => {
    const longer = new Uint8Array(count).fill(past);
    longer.set(state, added);
    return longer;
  };
  const partial: Partial<Record<OptionalField, Uint8Array>> = {};
  for (const [field, state] of Object.entries(series.partial ?? {}) as [OptionalField, Uint8Array][]) {
    partial[field] = stateBefore(state, FILLED);
  }
  // Rain that nobody measured is not known.
  if (optional.rain !== undefined)
    partial.rain = stateBefore(series.partial?.rain ?? new Uint8Array(series.count), HOLE);
  return {
    added,
    series: {
      ...series,
      ...optional,
      start: series.start - added * HOUR_MS,
      count,
      airTemperature: before(series.airTemperature),
      relativeHumidity: before(series.relativeHumidity),
      state: stateBefore(series.state, FILLED),
      ...(Object.keys(partial).length > 0 ? { partial } : {}),
    },
  };
};
