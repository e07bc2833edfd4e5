import type { Issue } from '../../kernel/issue.ts';
import { LIMITS, OVERSHOOT } from './limits.ts';
import {
  FILLED,
  GIVEN,
  HOLE,
  HOUR_MS,
  OPTIONAL_FIELDS,
  type OptionalField,
  type WeatherField,
  type WeatherSeries,
  type WeatherSource,
} from './series.ts';

/** One moment of weather in SI as an adapter read it; what is absent was not given. */
export interface WeatherRow {
  /** ms since 1970 */
  readonly time: number;
  readonly airTemperature?: number;
  readonly relativeHumidity?: number;
  readonly wind?: number;
  readonly cloud?: number;
  readonly radiation?: number;
  readonly rain?: number;
  readonly pressure?: number;
}

export interface BuildOptions {
  /** Longest gap filled by a straight line, hours. Default 3; a service whose later steps are six-hourly says 6. */
  readonly longestFill?: number;
  /** The rows hold means over the hour that ends at their time, as many loggers write them. */
  readonly hourMeans?: boolean;
  /** Path of the rows in the document, for the issues. */
  readonly path?: readonly (string | number)[];
}

export interface Built {
  /** Absent when too little is left to make a series. */
  readonly series?: WeatherSeries;
  readonly issues: readonly Issue[];
}

const FIELDS: readonly WeatherField[] = ['airTemperature', 'relativeHumidity', ...OPTIONAL_FIELDS];
/** At most this many issues of one code: a file in a wrong unit has thousands of equal ones. */
const MOST_OF_A_KIND = 5;
const MOST_HOURS = 2 * 366 * 24;

/** Collects issues, at most a handful of each code; the rest are counted in `weather-more-of-these`. */
class Complaints {
  readonly found: Issue[] = [];
  private readonly seen = new Map<string, number>();
  add(issue: Issue): void {
    const count = (this.seen.get(issue.code) ?? 0) + 1;
    this.seen.set(issue.code, count);
    if (count <= MOST_OF_A_KIND) this.found.push(issue);
  }
  closed(path: readonly (string | number)[]): readonly Issue[] {
    for (const [code, count] of this.seen) {
      if (count <= MOST_OF_A_KIND) continue;
      const names = { code, more: String(count - MOST_OF_A_KIND) };
      this.found.push({ code: 'weather-more-of-these', path, names });
    }
    return this.found;
  }
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

const timeText = (time: number): string => new Date(time).toISOString();

/** Whole columns in a wrong unit: said once, and the column is not used. */
const wrongUnits = (
  rows: readonly WeatherRow[],
  path: readonly (string | number)[],
  out: Complaints,
): Set<WeatherField> => {
  const unusable = new Set<WeatherField>();
  const check = (field: WeatherField, code: string, wrong: (middle: number, most: number) => boolean): void => {
    const values = rows.map((row) => row[field]).filter((each) => each !== undefined);
    if (values.length === 0) return;
    const middle = median(values);
    const most = values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
    if (!wrong(middle, most)) return;
    unusable.add(field);
    out.add({ code, path: [...path, field], value: String(middle), limits: LIMITS[field].said });
  };
  // A fraction read as a percentage has a hundredth of a real humidity: its largest value is 1 %.
  check('relativeHumidity', 'weather-humidity-looks-like-fraction', (_, most) => most <= 0.0101);
  check('relativeHumidity', 'weather-humidity-looks-like-percent', (middle) => middle > 1.05);
  check('airTemperature', 'weather-temperature-looks-like-kelvin', (middle) => middle > 200);
  check('airTemperature', 'weather-temperature-looks-like-fahrenheit', (middle) => middle > 46 && middle <= 200);
  check('pressure', 'weather-pressure-looks-like-hectopascal', (middle) => middle > 300 && middle < 1200);
  return unusable;
};

/** Rows by time, each once. Says when they were out of order or doubled; the first of two equals is kept. */
const ordered = (rows: readonly WeatherRow[], path: readonly (string | number)[], out: Complaints): WeatherRow[] => {
  const kept: WeatherRow[] = [];
  for (const [index, row] of rows.entries()) {
    if (Number.isFinite(row.time)) kept.push(row);
    else out.add({ code: 'weather-time-unreadable', path: [...path, index, 'time'] });
  }
  for (let i = 1; i < kept.length; i++) {
    const [before, here] = [kept[i - 1] as WeatherRow, kept[i] as WeatherRow];
    if (here.time < before.time) {
      out.add({ code: 'weather-times-out-of-order', path: [...path, i, 'time'], value: timeText(here.time) });
    }
  }
  kept.sort((a, b) => a.time - b.time);
  return kept.filter((row, i) => {
    const twice = i > 0 && (kept[i - 1] as WeatherRow).time === row.time;
    if (twice) out.add({ code: 'weather-time-twice', path: [...path, i, 'time'], value: timeText(row.time) });
    return !twice;
  });
};

const withinLimits = (field: WeatherField, value: number): number | undefined => {
  const { least, most } = LIMITS[field];
  const slack = OVERSHOOT[field];
  if (!(value >= least - slack && value <= most + slack)) return undefined;
  return Math.min(most, Math.max(least, value));
};

/** One quantity on the hourly grid, with the state of each hour. */
const onGrid = (
  times: readonly number[],
  values: readonly number[],
  start: number,
  count: number,
  longestFill: number,
): { readonly values: Float64Array; readonly state: Uint8Array } => {
  const out = new Float64Array(count);
  const state = new Uint8Array(count).fill(HOLE);
  let right = 0;
  for (let i = 0; i < count; i++) {
    const time = start + i * HOUR_MS;
    while (right < times.length && (times[right] as number) < time) right++;
    const after = times[right];
    const before = times[right - 1];
    if (after === time) {
      out[i] = values[right] as number;
      state[i] = GIVEN;
    } else if (after === undefined || before === undefined) {
      out[i] = values[after === undefined ? times.length - 1 : 0] as number;
    } else {
      const share = (time - before) / (after - before);
      const [a, b] = [values[right - 1] as number, values[right] as number];
      // Held between the two, so that rounding never leaves the limits both keep.
      out[i] = Math.min(Math.max(a, b), Math.max(Math.min(a, b), a + (b - a) * share));
      const gap = (after - before) / HOUR_MS;
      if (gap <= 1) state[i] = GIVEN;
      else if (gap <= longestFill + 1) state[i] = FILLED;
    }
  }
  return { values: out, state };
};

/**
 * Hourly series out of the rows of any source, with every fault named.
 *
 * Values outside `LIMITS` are dropped, not clipped: a −80 °C becomes a gap that is said. Gaps up to `longestFill` hours
 * are filled by a straight line; longer ones stay marked as holes.
 */
export const buildWeather = (rows: readonly WeatherRow[], source: WeatherSource, options: BuildOptions = {}): Built => {
  const path = options.path ?? ['weather'];
  const out = new Complaints();
  const { latitude, longitude } = source.place;
  if (!(latitude >= -90 && latitude <= 90)) {
    out.add({
      code: 'weather-latitude-outside',
      path: [...path, 'latitude'],
      value: String(latitude),
      limits: ['-90°', '90°'],
    });
  }
  if (!(longitude >= -180 && longitude <= 180)) {
    out.add({
      code: 'weather-longitude-outside',
      path: [...path, 'longitude'],
      value: String(longitude),
      limits: ['-180°', '180°'],
    });
  }
  if (out.found.length > 0) return { issues: out.found };

  const unusable = wrongUnits(rows, path, out);
  const sorted = ordered(rows, path, out);
  const columns = new Map<WeatherField, { times: number[]; values: number[] }>();
  for (const field of FIELDS) {
    const column = { times: [] as number[], values: [] as number[] };
    if (!unusable.has(field)) {
      for (const [index, row] of sorted.entries()) {
        const raw = row[field];
        if (raw === undefined) continue;
        const value = withinLimits(field, raw);
        if (value === undefined) {
          const where = [...path, index, field];
          out.add({
            code: 'weather-value-outside',
            path: where,
            value: LIMITS[field].unit === '1' ? String(raw) : `${raw} ${LIMITS[field].unit}`,
            limits: LIMITS[field].said,
            names: { field, time: timeText(row.time) },
          });
          continue;
        }
        column.times.push(row.time);
        column.values.push(value);
      }
    }
    if (column.values.length > 0) columns.set(field, column);
  }

  const air = columns.get('airTemperature');
  const humidity = columns.get('relativeHumidity');
  for (const [field, column] of [
    ['airTemperature', air],
    ['relativeHumidity', humidity],
  ] as const) {
    if (column === undefined || column.values.length < 2)
      out.add({ code: 'weather-column-missing', path: [...path, field], names: { field } });
  }
  if (air === undefined || humidity === undefined || air.times.length < 2 || humidity.times.length < 2) {
    return { issues: out.closed(path) };
  }

  const first = Math.max(air.times[0] as number, humidity.times[0] as number);
  const last = Math.min(air.times.at(-1) as number, humidity.times.at(-1) as number);
  const start = Math.ceil(first / HOUR_MS) * HOUR_MS;
  const count = Math.floor((last - start) / HOUR_MS) + 1;
  if (count < 2 || count > MOST_HOURS) {
    out.add({
      code: 'weather-length-outside',
      path,
      value: String(Math.max(0, count)),
      limits: ['2 h', `${MOST_HOURS} h`],
    });
    return { issues: out.closed(path) };
  }

  const longestFill = options.longestFill ?? 3;
  const state = new Uint8Array(count);
  const grids: { -readonly [K in WeatherField]?: Float64Array } = {};
  const partial: Partial<Record<OptionalField, Uint8Array>> = {};
  for (const [field, column] of columns) {
    const grid = onGrid(column.times, column.values, start, count, longestFill);
    const required = field === 'airTemperature' || field === 'relativeHumidity';
    // Sums and means over the hour have none that ends at the first hour.
    if (grid.state[0] === HOLE && grid.state[1] !== HOLE) grid.state[0] = FILLED;
    if (!required && grid.state.includes(HOLE)) {
      out.add({ code: 'weather-column-incomplete', path: [...path, field], names: { field } });
      // Held noon sun would heat the night: a clear sky by the clock is the better stand-in.
      if (field === 'radiation') continue;
      partial[field] = grid.state;
    }
    grids[field] = grid.values;
    if (required) for (let i = 0; i < count; i++) state[i] = Math.max(state[i] as number, grid.state[i] as number);
  }
  for (let i = 0; i < count; ) {
    const kind = state[i];
    let j = i;
    while (j < count && state[j] === kind) j++;
    if (kind !== GIVEN) {
      const names = {
        from: timeText(start + i * HOUR_MS),
        to: timeText(start + (j - 1) * HOUR_MS),
        hours: String(j - i),
      };
      out.add({ code: kind === HOLE ? 'weather-gap' : 'weather-gap-filled', path, names });
    }
    i = j;
  }
  const { airTemperature, relativeHumidity, ...optional } = grids;
  const series: WeatherSeries = {
    source,
    start,
    count,
    airTemperature: airTemperature as Float64Array,
    relativeHumidity: relativeHumidity as Float64Array,
    ...optional,
    state,
    ...(options.hourMeans === true ? { hourMeans: true } : {}),
    ...(Object.keys(partial).length > 0 ? { partial } : {}),
  };
  return { series, issues: out.closed(path) };
};

/** A forecast older than this at the moment of planning is named, ms: services renew theirs every 1 to 6 hours. */
export const STALE_AFTER = 12 * HOUR_MS;

/** Issues of a series that depend on the moment it is used at and on how far ahead it must reach, both ms since 1970. */
export const freshness = (series: WeatherSeries, now: number, neededUntil: number): readonly Issue[] => {
  const issues: Issue[] = [];
  const { issued, kind } = series.source;
  if (kind === 'forecast' && issued === undefined)
    issues.push({ code: 'weather-issue-time-unknown', path: ['weather', 'issued'] });
  if (kind === 'forecast' && issued !== undefined && now - issued > STALE_AFTER) {
    const hours = Math.floor((now - issued) / HOUR_MS);
    issues.push({
      code: 'weather-forecast-stale',
      path: ['weather', 'issued'],
      value: timeText(issued),
      limits: [`${STALE_AFTER / HOUR_MS} h`],
      names: { hours: String(hours) },
    });
  }
  if (kind === 'typed') issues.push({ code: 'weather-typed', path: ['weather'] });
  if (kind === 'typical year') issues.push({ code: 'weather-typical-year', path: ['weather'] });
  const end = series.start + (series.count - 1) * HOUR_MS;
  if (end < neededUntil) {
    issues.push({
      code: 'weather-ends-early',
      path: ['weather'],
      value: timeText(end),
      names: { needed: timeText(neededUntil) },
    });
  }
  return issues;
};
