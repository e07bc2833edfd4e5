import { type JobFile, jobFrom, weatherFrom, weatherFromTyped } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import garageJob from '../../../../jobs/garage/job.json' with { type: 'json' };
import garageWeather from '../../../../jobs/garage/weather.json' with { type: 'json' };
import { headingsOf, weatherIn } from './weather-in.ts';

const NOW = Date.parse('2026-05-12T18:00:00-06:00');

function jobWith(place: Partial<JobFile['place']>) {
  const file = structuredClone(garageJob) as unknown as JobFile;
  Object.assign(file.place, place);
  const read = jobFrom(file);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

const placed = jobWith({ latitude: 39.604, longitude: -105.106 });
const never = (): Promise<string> => Promise.reject(new Error('asked without leave'));
const rowsOf = (file: unknown) => {
  const read = weatherFrom(file);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value.rows;
};

describe('weather as a person has it', () => {
  test('a file of the program is taken as it is', async () => {
    const made = await weatherIn(
      { is: 'file', text: JSON.stringify(garageWeather), name: 'w.json' },
      placed,
      NOW,
      never,
    );
    expect(made.file).toEqual(garageWeather);
    expect(made.issues).toEqual([]);
  });

  test('five numbers become hours around the coats, coldest and warmest as typed', async () => {
    const numbers = { coldest: '50 °F', warmest: '72 °F', humidity: '85 %', wind: '4 mph', cloud: '40 %' };
    const { file } = await weatherIn({ is: 'typed', numbers }, placed, NOW, never);
    const rows = rowsOf(file);
    expect(rows[0]?.at.slice(0, 13)).toBe('2026-05-12T00');
    const air = rows.map((row) => row.air.value);
    // Own arithmetic: 50 °F = 10 °C, 72 °F = 22.22 °C, kept to a hundredth.
    expect(Math.min(...air)).toBeCloseTo(10, 2);
    expect(Math.max(...air)).toBeCloseTo(22.22, 2);
  });

  test('five numbers give the hours the terminal gives', async () => {
    const numbers = { coldest: '50 °F', warmest: '72 °F', humidity: '85 %', wind: '4 mph', cloud: '40 %' };
    const { file } = await weatherIn({ is: 'typed', numbers }, placed, NOW, never);
    const first = placed.options.flatMap(({ starts = [] }) => starts.map(({ at }) => at)).sort()[0];
    const terminal = weatherFromTyped(numbers, placed, first ?? '2026-05-12T18:00:00-06:00');
    expect(weatherFrom(file)).toEqual(terminal);
  });

  test('a number that is none is named with its field', async () => {
    const numbers = { coldest: 'cold', warmest: '72 °F', humidity: '85 %', wind: '4 mph', cloud: '40 %' };
    const { file, issues } = await weatherIn({ is: 'typed', numbers }, placed, NOW, never);
    expect(file).toBeUndefined();
    expect(issues[0]).toMatchObject({ path: ['Coldest air of the day'], value: 'cold' });
  });

  const table = `time,temp,rh\n2026-05-13 06:00,10,80\n2026-05-13 07:00,11,78\n2026-05-13 08:00,13,70\n`;
  test('a table asks for its columns first, then becomes rows', async () => {
    const asked = { is: 'file', text: table, name: 'logger.csv' } as const;
    expect((await weatherIn(asked, placed, NOW, never)).headings).toEqual(['time', 'temp', 'rh']);
    const columns = {
      time: 'time',
      zone: 'America/Denver',
      fields: {
        airTemperature: { column: 'temp', unit: '°C' },
        relativeHumidity: { column: 'rh', unit: '%' },
      },
    };
    const { file } = await weatherIn({ ...asked, columns }, placed, NOW, never);
    expect(rowsOf(file).map(({ at, air }) => [at, air.value])).toEqual([
      ['2026-05-13T06:00:00-06:00', 10],
      ['2026-05-13T07:00:00-06:00', 11],
      ['2026-05-13T08:00:00-06:00', 13],
    ]);
  });

  test('weather of other days is refused with the days it is of', async () => {
    const columns = {
      time: 'time',
      zone: 'UTC',
      fields: { airTemperature: { column: 'temp', unit: '°C' }, relativeHumidity: { column: 'rh', unit: '%' } },
    };
    const text = table.replaceAll('2026-05', '2025-01');
    const { file, says } = await weatherIn({ is: 'file', text, name: 'old.csv', columns }, placed, NOW, never);
    expect(file).toBeUndefined();
    expect(says?.join()).toContain('2026-05-13');
  });

  test('a typical year in the EPW form is laid on the days of the job', async () => {
    // Written by us in the published column order: year, month, day, hour, minute, flags, dry bulb, dew point, humidity,
    // pressure, then radiation and wind; 8760 hours of one invented place.
    const head = [
      'LOCATION,Invented,CO,USA,TMY,000000,39.60,-105.10,-7.0,1700.0',
      ...['DESIGN CONDITIONS,0', 'TYPICAL/EXTREME PERIODS,0', 'GROUND TEMPERATURES,0'],
      'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
      ...['COMMENTS 1,written for a test', 'COMMENTS 2,none', 'DATA PERIODS,1,1,Data,Sunday,1/1,12/31'],
    ];
    const rows = Array.from({ length: 8760 }, (_, hour) => {
      const at = new Date(Date.UTC(2023, 0, 1, hour));
      const air = at.getUTCHours() < 12 ? 8 : 20;
      const day = [2023, at.getUTCMonth() + 1, at.getUTCDate(), at.getUTCHours() + 1, 60, '?9'];
      const rest = [0, 0, 300, 0, 0, 0, 0, 0, 0, 0, 180, 2.5, 4, 4, 20, 7000, 9, 999999999, 10, 0.1, 0, 88, 0, 0, 0];
      return [...day, air, 2, 66, 83000, ...rest].join(',');
    });
    const text = [...head, ...rows].join('\n');
    const { file, issues } = await weatherIn({ is: 'file', text, name: 'invented.epw' }, placed, NOW, never);
    expect(issues.filter(({ code }) => code.includes('unreadable'))).toEqual([]);
    const found = rowsOf(file);
    const coat = found.find(({ at }) => at.startsWith('2026-05-13T09'));
    expect(coat?.air.value).toBe(8);
    expect(coat?.humidity.value).toBeCloseTo(0.66, 6);
    expect(found.find(({ at }) => at.startsWith('2026-05-13T18'))?.air.value).toBe(20);
  });

  test('without a place it says where to enter it', async () => {
    const nowhere = jobWith({});
    const { latitude: _, longitude: __, ...place } = nowhere.place;
    const numbers = { coldest: '50 °F', warmest: '72 °F', humidity: '85 %', wind: '4 mph', cloud: '40 %' };
    const { file, says } = await weatherIn({ is: 'typed', numbers }, { ...nowhere, place }, NOW, never);
    expect(file).toBeUndefined();
    expect(says?.join()).toContain('latitude');
  });

  test('a service is never asked without leave, and with it hears the place rounded to 0.01°', async () => {
    const asked: string[] = [];
    const fetchText = (url: string): Promise<string> => {
      asked.push(url);
      return Promise.resolve('not an answer');
    };
    const service = { is: 'service', service: 'met-norway', name: 'a service' } as const;
    const refused = await weatherIn({ ...service, allowed: false }, placed, NOW, fetchText);
    expect(asked).toEqual([]);
    expect(refused.issues.map(({ code }) => code)).toEqual(['weather-asking-not-allowed']);
    const answer = await weatherIn({ ...service, allowed: true }, placed, NOW, fetchText);
    expect(asked).toHaveLength(1);
    expect(asked[0]).toContain('39.6');
    expect(asked[0]).not.toContain('39.604');
    expect(asked[0]).not.toContain('105.106');
    expect(answer.issues.map(({ code }) => code)).toEqual(['weather-answer-unreadable']);
  });
});

test('headings of a table whatever parts them', () => {
  expect(headingsOf('a;b;c\n1;2;3')).toEqual(['a', 'b', 'c']);
  expect(headingsOf('"a b",c\n')).toEqual(['a b', 'c']);
});
