import { type JobFile, jobFrom, weatherFrom } from '@slabwright/core';
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
