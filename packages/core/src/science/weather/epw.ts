import type { Issue } from '../../kernel/issue.ts';
import { type AnnualWave, annualWaveOf } from '../heat/annual-wave.ts';
import { type Built, buildWeather, type WeatherRow } from './build.ts';
import { HOUR_MS } from './series.ts';

/**
 * Typical-year weather file (EPW, the published format of the EnergyPlus auxiliary programs: eight header lines, then
 * 8760 hours of 35 comma-separated fields, hour 1 ending at 01:00 local standard time).
 *
 * Its years are stitched from real months of different years; all are put into the year asked for, on the file's own
 * calendar. A typical year is no forecast: it says what the season is like.
 */
const HEADER_LINES = 8;
const FIELDS_NEEDED = 22;
/** Fields by position and the value that means "missing" (99.9 and so on): from there on it is none. */
const COLUMN = {
  airTemperature: { at: 6, missing: 99.9, toSi: (value: number) => value },
  relativeHumidity: { at: 8, missing: 999, toSi: (value: number) => value / 100 },
  pressure: { at: 9, missing: 999_999, toSi: (value: number) => value },
  radiation: { at: 13, missing: 9999, toSi: (value: number) => value },
  wind: { at: 21, missing: 999, toSi: (value: number) => value },
  // Tenths of the sky.
  cloud: { at: 22, missing: 99, toSi: (value: number) => value / 10 },
  // Liquid precipitation depth, mm in the hour; absent in older files.
  rain: { at: 33, missing: 999, toSi: (value: number) => value / 1000 },
} as const;

export interface TypicalYear extends Built {
  /** Yearly wave of the ground out of the file's air temperatures. */
  readonly ground?: AnnualWave;
  readonly city?: string;
}

/**
 * Reads an EPW file.
 *
 * @param year calendar year its hours are put into; 29 February is skipped where the file has none
 */
export const readEpw = (text: string, name: string, year: number): TypicalYear => {
  const path = ['weather'];
  const lines = text.split(/\r?\n/);
  const location = (lines[0] ?? '').split(',');
  if (location[0]?.toUpperCase() !== 'LOCATION' || location.length < 10) {
    return { issues: [{ code: 'weather-epw-no-location', path, names: { name } }] };
  }
  const [latitude, longitude, zone, elevation] = [location[6], location[7], location[8], location[9]].map(Number) as [
    number,
    number,
    number,
    number,
  ];
  if (![latitude, longitude, zone, elevation].every(Number.isFinite)) {
    return { issues: [{ code: 'weather-epw-no-location', path, names: { name } }] };
  }
  const rows: WeatherRow[] = [];
  const issues: Issue[] = [];
  for (let i = HEADER_LINES; i < lines.length; i++) {
    const line = lines[i] as string;
    if (line.trim() === '') continue;
    const cells = line.split(',');
    const [month, day, hour] = [cells[1], cells[2], cells[3]].map(Number) as [number, number, number];
    if (cells.length < FIELDS_NEEDED || !(hour >= 1 && hour <= 24) || !(month >= 1 && month <= 12)) {
      if (issues.length < 5)
        issues.push({ code: 'weather-epw-line-unreadable', path: [...path, i + 1], value: line.slice(0, 60) });
      continue;
    }
    const time = Date.UTC(year, month - 1, day, hour) - zone * HOUR_MS;
    rows.push({ time, ...valuesOf(cells) });
  }
  const place = { latitude, longitude, elevation };
  const built = buildWeather(rows, { kind: 'typical year', name, place });
  const series = built.series;
  return {
    ...built,
    issues: [...issues, ...built.issues],
    ...(location[1] ? { city: location[1] } : {}),
    ...(series !== undefined && series.count >= 8700
      ? { ground: annualWaveOf(series.airTemperature, series.start) }
      : {}),
  };
};

const valuesOf = (cells: readonly string[]): Omit<WeatherRow, 'time'> => {
  const out: Record<string, number> = {};
  for (const [field, { at, missing, toSi }] of Object.entries(COLUMN)) {
    const cell = cells[at]?.trim();
    const value = Number(cell);
    if (cell === undefined || cell === '' || !Number.isFinite(value) || value >= missing) continue;
    out[field] = toSi(value);
  }
  return out;
};
