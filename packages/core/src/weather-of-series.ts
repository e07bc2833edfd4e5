import { type Instant, instantIn } from './kernel/instant.ts';
import type { Result } from './kernel/issue.ts';
import { HOLE, HOUR_MS, type OptionalField, type WeatherSeries } from './science/weather/index.ts';
import { WEATHER_SCHEMA, WEATHER_VERSION, type WeatherDocument, type WeatherFile, weatherFrom } from './weather.ts';

/** Optional quantities as the file names and writes them. */
const WRITTEN: Readonly<Record<OptionalField, readonly [field: string, write: (value: number) => string]>> = {
  wind: ['wind', (value) => `${value.toFixed(2)} m/s`],
  cloud: ['cloud', (value) => `${(value * 100).toFixed(0)} %`],
  radiation: ['sun', (value) => `${value.toFixed(0)} W/m²`],
  rain: ['rain', (value) => `${(value * 1000).toFixed(2)} mm`],
  pressure: ['pressure', (value) => `${(value / 100).toFixed(1)} hPa`],
};

export interface SeriesToFile {
  readonly source: string;
  /** Zone of the clock the rows are written by. */
  readonly zone: string;
  readonly name?: string;
  /** First and last hour kept, ms since 1970. */
  readonly from?: number;
  readonly to?: number;
}

/** The hours of a series as a weather file, read and checked. */
export const weatherFileOf = (series: WeatherSeries, asked: SeriesToFile): Result<WeatherFile> =>
  weatherFrom(weatherDocumentOf(series, asked));

/**
 * The hours of a series in the published form, to be kept; hours without data are left out, the plan names them where
 * it needs them.
 */
export function weatherDocumentOf(series: WeatherSeries, asked: SeriesToFile): WeatherDocument {
  const { source, zone, name, from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY } = asked;
  const { latitude, longitude } = series.source.place;
  const issued: Instant | undefined =
    series.source.issued === undefined ? undefined : instantIn(series.source.issued, zone);
  const rows = Array.from({ length: series.count }, (_, i) => i).flatMap((i) => {
    const time = series.start + i * HOUR_MS;
    if (series.state[i] === HOLE || time < from || time > to) return [];
    const others = (Object.keys(WRITTEN) as OptionalField[]).flatMap((field) => {
      const value = series.partial?.[field]?.[i] === HOLE ? undefined : series[field]?.[i];
      const [written, write] = WRITTEN[field];
      return value === undefined ? [] : [[written, write(value)]];
    });
    return [
      {
        at: instantIn(time, zone),
        air: `${(series.airTemperature[i] as number).toFixed(2)} °C`,
        humidity: `${Math.max(1, (series.relativeHumidity[i] as number) * 100).toFixed(1)} %`,
        ...Object.fromEntries(others),
      },
    ];
  });
  return {
    schema: `${WEATHER_SCHEMA}/${WEATHER_VERSION}`,
    source: source.slice(0, 200),
    kind: series.source.kind,
    ...(issued ? { issued } : {}),
    place: { ...(name ? { name } : {}), latitude, longitude, zone },
    rows,
  };
}
