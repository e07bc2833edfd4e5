import { epochOf } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import { pathText } from '../../kernel/issue.ts';
import type { Said } from '../../kernel/said.ts';
import { type Built, buildWeather } from '../../science/weather/index.ts';
import type { WeatherFile } from '../../weather.ts';

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

/** An issue of the weather as a sentence of the plan: the file can be mended, the plan goes on without those hours. */
export function saidOf(issue: Issue): Said {
  const [least = '', most = ''] = issue.limits ?? [];
  return {
    code: issue.code,
    names: {
      path: pathText(issue.path),
      value: issue.value ?? '',
      least,
      most,
      choices: (issue.limits ?? []).join(', '),
      ...issue.names,
    },
  };
}
