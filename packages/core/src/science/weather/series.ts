/**
 * Hourly weather at a place, as data.
 *
 * One grid for every source: whole hours from `start`. Temperature, humidity, wind, cloud and pressure hold at the
 * hour; radiation is the mean and rain the sum over the hour that ends there. All numbers are finite: what was not
 * given is filled across by a straight line and marked in `state`, so that no law downstream meets a hole unawares.
 */
export interface WeatherSeries {
  readonly source: WeatherSource;
  /** Milliseconds since 1970 (UTC) of the first hour. */
  readonly start: number;
  readonly count: number;
  /** °C */
  readonly airTemperature: Float64Array;
  /** 0-1 */
  readonly relativeHumidity: Float64Array;
  /** m/s */
  readonly wind?: Float64Array;
  /** Share of the sky that is cloud, 0-1. */
  readonly cloud?: Float64Array;
  /** Global radiation on the horizontal, W/m². */
  readonly radiation?: Float64Array;
  /** m of water in the hour */
  readonly rain?: Float64Array;
  /** At the station, Pa. */
  readonly pressure?: Float64Array;
  /** True when temperature, humidity, wind, cloud and pressure too are means over the hour that ends at the stamp. */
  readonly hourMeans?: boolean;
  /** By hour: `GIVEN`, `FILLED` or `HOLE`. */
  readonly state: Uint8Array;
  /** The same for a quantity that may be absent, where it is given for a part of the hours only. */
  readonly partial?: Readonly<Partial<Record<OptionalField, Uint8Array>>>;
}

export interface Place {
  /** °, north positive, −90 to 90 */
  readonly latitude: number;
  /** °, east positive, −180 to 180 */
  readonly longitude: number;
  /** m above the sea */
  readonly elevation?: number;
}

export interface WeatherSource {
  readonly kind: 'forecast' | 'measured' | 'typical year' | 'typed';
  /** Key of the service or the name of the file as the user gave it. */
  readonly name: string;
  readonly place: Place;
  /** When the service issued it, ms since 1970; absent where it has no issue time. */
  readonly issued?: number;
  /** Terms under which the service gives it: key into the bibliography. */
  readonly terms?: string;
}

export const HOUR_MS = 3_600_000;
export const DAY_MS = 24 * HOUR_MS;

export const GIVEN = 0;
/** Between two given hours no further apart than the longest gap allowed. */
export const FILLED = 1;
/** No data near: the number there only keeps the arithmetic whole. No hour that needs it may be a go. */
export const HOLE = 2;

/** The names of the quantities that may be absent. */
export const OPTIONAL_FIELDS = ['wind', 'cloud', 'radiation', 'rain', 'pressure'] as const;
export type OptionalField = (typeof OPTIONAL_FIELDS)[number];
export type WeatherField = 'airTemperature' | 'relativeHumidity' | OptionalField;

/** Last hour of the series, ms since 1970. */
export const endOf = (series: WeatherSeries): number => series.start + (series.count - 1) * HOUR_MS;

/** True when every hour from `from` to `to` (ms) is given or filled across a short gap. */
export const isCovered = (series: WeatherSeries, from: number, to: number): boolean => {
  const first = Math.floor((from - series.start) / HOUR_MS);
  const last = Math.ceil((to - series.start) / HOUR_MS);
  if (first < 0 || last >= series.count) return false;
  for (let i = first; i <= last; i++) if (series.state[i] === HOLE) return false;
  return true;
};

/** How far what "holds at the hour" leads its stamp, hours: `shift` of `valueAt` for everything but sun and rain. */
export const leadOf = (series: WeatherSeries): number => (series.hourMeans === true ? 0.5 : 0);

/**
 * Value of an hourly array at any instant: straight line between the hours, the nearest end outside.
 *
 * @param shift hours by which the values lead their stamp: 0 for instants, 0.5 for means over the hour that ends
 */
export const valueAt = (series: WeatherSeries, values: Float64Array, instant: number, shift = 0): number => {
  const x = (instant - series.start) / HOUR_MS + shift;
  if (x <= 0) return values[0] as number;
  const last = series.count - 1;
  if (x >= last) return values[last] as number;
  const i = Math.floor(x);
  const a = values[i] as number;
  return a + ((values[i + 1] as number) - a) * (x - i);
};
