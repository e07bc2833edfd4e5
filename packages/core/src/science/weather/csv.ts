import { fromLocal, isZone } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import { type Built, buildWeather, type WeatherRow } from './build.ts';
import type { WeatherField, WeatherSource } from './series.ts';

/** Units a column may be in; each is brought to SI here and nowhere deeper. */
export const COLUMN_UNITS = {
  '°C': (value: number) => value,
  '°F': (value: number) => ((value - 32) * 5) / 9,
  K: (value: number) => value - 273.15,
  '%': (value: number) => value / 100,
  '1': (value: number) => value,
  'm/s': (value: number) => value,
  'km/h': (value: number) => value / 3.6,
  mph: (value: number) => value * 0.44704,
  'W/m²': (value: number) => value,
  mm: (value: number) => value / 1000,
  in: (value: number) => value * 0.0254,
  Pa: (value: number) => value,
  hPa: (value: number) => value * 100,
} as const;
export type ColumnUnit = keyof typeof COLUMN_UNITS;

/** Units a column of each quantity may be in. */
export const COLUMN_UNITS_OF: Readonly<Record<WeatherField, readonly ColumnUnit[]>> = {
  airTemperature: ['°C', '°F', 'K'],
  relativeHumidity: ['%', '1'],
  wind: ['m/s', 'km/h', 'mph'],
  cloud: ['%', '1'],
  radiation: ['W/m²'],
  rain: ['mm', 'in'],
  pressure: ['Pa', 'hPa'],
};

/** Which column holds what, by its heading. */
export interface ColumnMap {
  readonly time: string;
  /** `UTC`, or the zone of a wall clock, such as America/Denver. */
  readonly zone: string;
  readonly fields: Readonly<Partial<Record<WeatherField, { readonly column: string; readonly unit: ColumnUnit }>>>;
  /** Numbers at or below this mean "missing": −99 for many loggers. */
  readonly missingAtOrBelow?: number;
  readonly separator?: ',' | ';' | '\t';
}

/** Cells of one line; quotes may hold separators. */
const cellsOf = (line: string, separator: string): string[] => {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (const sign of line) {
    if (sign === '"') quoted = !quoted;
    else if (sign === separator && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += sign;
  }
  cells.push(cell.trim());
  return cells;
};

/** `2026-03-08 02:30` with or without seconds, `T` or a space; an offset or Z at its end wins over the zone. */
const WALL_CLOCK = /^(\d{4}-\d{2}-\d{2})[T ](\d{1,2}):(\d{2})(?::(\d{2}))?$/;

/**
 * Reads the times of a wall clock one after the other, so that the hour that exists twice in autumn is first its first
 * and then its second, and the hour that does not exist in spring is said.
 */
const clockReader = (zone: string): ((text: string) => { readonly time?: number; readonly code?: string }) => {
  let previous = Number.NEGATIVE_INFINITY;
  const keep = (time: number): { time: number } => {
    previous = time;
    return { time };
  };
  return (text) => {
    if (/(Z|[+-]\d{2}:?\d{2})$/.test(text)) {
      const time = Date.parse(text.replace(' ', 'T'));
      return Number.isFinite(time) ? keep(time) : { code: 'weather-time-unreadable' };
    }
    const parts = WALL_CLOCK.exec(text);
    if (parts === null) return { code: 'weather-time-unreadable' };
    const local = `${parts[1]}T${(parts[2] as string).padStart(2, '0')}:${parts[3]}:${parts[4] ?? '00'}`;
    if (zone === 'UTC') {
      const time = Date.parse(`${local}Z`);
      return Number.isFinite(time) ? keep(time) : { code: 'weather-time-unreadable' };
    }
    try {
      const found = fromLocal(local, zone);
      if (found.kind === 'none') return { code: 'weather-time-does-not-exist' };
      if (found.kind === 'one') return keep(Date.parse(found.instant));
      const first = Date.parse(found.first);
      return keep(first > previous ? first : Date.parse(found.second));
    } catch (trouble) {
      if (!(trouble instanceof RangeError)) throw trouble;
      return { code: 'weather-time-unreadable' };
    }
  };
};

/** Weather out of a CSV file and a map of its columns. */
export const readWeatherCsv = (text: string, map: ColumnMap, source: WeatherSource): Built => {
  const path = ['weather'];
  const separator = map.separator ?? ',';
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '');
  const heading = cellsOf(lines[0] ?? '', separator);
  const issues: Issue[] = [];
  if (map.zone !== 'UTC' && !isZone(map.zone))
    issues.push({ code: 'weather-zone-unknown', path: [...path, 'zone'], value: map.zone });
  const indexOf = (column: string, where: string): number => {
    const at = heading.indexOf(column);
    if (at < 0)
      issues.push({ code: 'weather-column-not-found', path: [...path, where], value: column, limits: heading });
    return at;
  };
  const timeAt = indexOf(map.time, 'time');
  const columns: { field: WeatherField; at: number; toSi: (value: number) => number }[] = [];
  for (const [field, choice] of Object.entries(map.fields) as [WeatherField, { column: string; unit: ColumnUnit }][]) {
    const at = indexOf(choice.column, field);
    if (!COLUMN_UNITS_OF[field].includes(choice.unit)) {
      issues.push({
        code: 'weather-unit-unknown',
        path: [...path, field],
        value: choice.unit,
        limits: COLUMN_UNITS_OF[field],
      });
    } else if (at >= 0) columns.push({ field, at, toSi: COLUMN_UNITS[choice.unit] });
  }
  if (issues.length > 0) return { issues };

  const readClock = clockReader(map.zone);
  const rows: WeatherRow[] = [];
  const missing = map.missingAtOrBelow ?? Number.NEGATIVE_INFINITY;
  let badNumbers = 0;
  for (let i = 1; i < lines.length; i++) {
    const cells = cellsOf(lines[i] as string, separator);
    const { time, code } = readClock(cells[timeAt] ?? '');
    if (time === undefined) {
      issues.push({
        code: code ?? 'weather-time-unreadable',
        path: [...path, i + 1, 'time'],
        value: cells[timeAt] ?? '',
      });
      continue;
    }
    const row: { time: number } & { -readonly [K in WeatherField]?: number } = { time };
    for (const { field, at, toSi } of columns) {
      const cell = cells[at] ?? '';
      if (cell === '') continue;
      const value = Number(cell);
      if (!Number.isFinite(value)) {
        if (++badNumbers <= 5)
          issues.push({ code: 'weather-number-unreadable', path: [...path, i + 1, field], value: cell });
      } else if (value > missing) row[field] = toSi(value);
    }
    rows.push(row);
  }
  const built = buildWeather(rows, source);
  return { ...built, issues: [...issues, ...built.issues] };
};
