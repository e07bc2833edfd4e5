import { epochOf } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import { pathText } from '../../kernel/issue.ts';
import type { Said } from '../../kernel/said.ts';
import { type Built, buildWeather } from '../../science/weather/index.ts';
import type { WeatherFile } from '../../weather.ts';
import { spoken } from './instants.ts';

/** A weather file as the hourly series that the slab meets, with every fault named. */
export function seriesOf(weather: WeatherFile, altitude: number | undefined): Built {
  const { latitude, longitude } = weather.place;
  const rows = weather.rows.map((row) => ({
    time: epochOf(row.at),
    airTemperature: row.air.value,
    relativeHumidity: row.humidity.value,
    ...(row.wind ? { wind: row.wind.value } : {}),
    ...(row.cloud ? { cloud: row.cloud.value } : {}),
    ...(row.sun ? { radiation: row.sun.value } : {}),
    ...(row.rain ? { rain: row.rain.value } : {}),
    ...(row.pressure ? { pressure: row.pressure.value } : {}),
  }));
  return buildWeather(
    rows,
    {
      kind: weather.kind ?? 'forecast',
      name: weather.source,
      place: { latitude, longitude, ...(altitude === undefined ? {} : { elevation: altitude }) },
      ...(weather.issued ? { issued: epochOf(weather.issued) } : {}),
    },
    { path: ['weather', 'rows'] },
  );
}

/** Names of the fields as they stand in the file. */
const IN_FILE: Readonly<Record<string, string>> = {
  airTemperature: 'air',
  relativeHumidity: 'humidity',
  radiation: 'sun',
  time: 'at',
};
const inFile = (part: string): string => IN_FILE[part] ?? part;

const UTC = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?Z$/;
/** Instants of an issue are in UTC; a person reads the clock of the place. */
const local = (text: string, zone: string): string => (UTC.test(text) ? spoken(epochOf(text), zone) : text);

/** An issue of the weather as a sentence of the plan: the file can be mended, the plan goes on without those hours. */
export function saidOf(issue: Issue, zone: string): Said {
  const [least = '', most = ''] = issue.limits ?? [];
  const names = Object.entries(issue.names ?? {}).map(([name, text]) => [name, local(inFile(text), zone)]);
  return {
    code: issue.code,
    names: {
      path: pathText(issue.path.map((part) => (typeof part === 'string' ? inFile(part) : part))),
      value: local(issue.value ?? '', zone),
      least,
      most,
      choices: (issue.limits ?? []).join(', '),
      ...Object.fromEntries(names),
    },
  };
}
