import type { ColumnChoice } from '../worker/weather-api.ts';

/** Guesses which column of a table holds what, from the words in its heading; the person sees and changes it. */

export const FIELDS = ['airTemperature', 'relativeHumidity', 'wind', 'cloud', 'radiation', 'rain', 'pressure'] as const;
export type Field = (typeof FIELDS)[number];

export const UNITS: Readonly<Record<Field, readonly string[]>> = {
  airTemperature: ['°C', '°F', 'K'],
  relativeHumidity: ['%', '1'],
  wind: ['m/s', 'km/h', 'mph'],
  cloud: ['%', '1'],
  radiation: ['W/m²'],
  rain: ['mm', 'in'],
  pressure: ['hPa', 'Pa'],
};

const NAMES: Readonly<Record<Field | 'time', RegExp>> = {
  time: /\b(time|date|at|hour|stamp)|zeit|fecha|hora/i,
  airTemperature: /temp|\bair\b|\bt2m\b/i,
  relativeHumidity: /hum|\brh\b/i,
  wind: /wind/i,
  cloud: /cloud|sky/i,
  radiation: /radiation|sun|solar|w\/m/i,
  rain: /rain|precip/i,
  pressure: /press|baro/i,
};

/** A unit written in a heading, `air (°F)` or `wind km/h`; else the first one of its kind. */
function unitIn(heading: string, field: Field): string {
  const plain = heading.replace(/\bdeg\s*/gi, '°').replace(/\s+/g, ' ');
  const written = UNITS[field].find((unit) => {
    const escaped = unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
    return new RegExp(`(^|[\\s(\\[_,])${escaped}($|[\\s)\\],])`, 'i').test(plain);
  });
  return written ?? (UNITS[field][0] as string);
}

export function guessColumns(headings: readonly string[]): Omit<ColumnChoice, 'zone'> {
  const time = headings.find((heading) => NAMES.time.test(heading)) ?? headings[0] ?? '';
  const left = headings.filter((heading) => heading !== time);
  const fields: Record<string, { column: string; unit: string }> = {};
  for (const field of FIELDS) {
    const column = left.find(
      (heading) =>
        NAMES[field].test(heading) &&
        !/dew|direction|gust/i.test(heading) &&
        !Object.values(fields).some((one) => one.column === heading),
    );
    if (column) fields[field] = { column, unit: unitIn(column, field) };
  }
  return { time, fields };
}
