import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { runHeard } from '../testing/run-heard.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-calendar-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const garage = new URL('../../../../jobs/garage', import.meta.url).pathname;

const hours = (...more: string[]) => runHeard(['hours', garage, ...more]);

/** RFC 5545, 3.1, from memory: a line is at most 75 octets, a folded one goes on after a blank. */
function unfolded(text: string): readonly string[] {
  const lines = text.split('\r\n');
  for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  return text.replaceAll('\r\n ', '').split('\r\n');
}

test('the calendar keeps the rules of its format: folds, escapes, stable ids, alarms', async () => {
  const file = join(folder, 'day.ics');
  expect((await hours('--ics', file)).status).toBe(0);
  const first = readFileSync(file, 'utf8');
  const lines = unfolded(first);
  expect(lines).toContain('UID:garage-flake-base-lay@slabwright');
  const count = (of: string): number => lines.filter((line) => line === `BEGIN:${of}`).length;
  // Days on site call nobody; everything else rings.
  const days = lines.filter((line) => line.startsWith('SUMMARY:On site')).length;
  expect(days).toBeGreaterThan(0);
  expect(count('VALARM')).toBe(count('VEVENT') - days);
  for (const line of lines.filter((one) => /^DT(START|END|STAMP)/.test(one))) expect(line).toMatch(/:\d{8}T\d{6}Z$/);
  expect(first).toContain('TRIGGER:-PT30M');
  await hours('--ics', file);
  expect(readFileSync(file, 'utf8')).toBe(first);
});

const DAY = ['--air-low', '8 °C', '--air-high', '72 °F', '--humidity', '85%', '--wind', '2 m/s', '--cloud', '30%'];
const typed = (changes: Readonly<Record<string, string>>): readonly string[] =>
  DAY.map((word, i) => (i % 2 === 1 ? (changes[DAY[i - 1] ?? ''] ?? word) : word));

test('five numbers typed by hand make hours, which say that they are an assumption', async () => {
  const { status, out } = await hours(...DAY);
  // The air of this day falls below the least humidity of the clear coat's sheet.
  expect(status).toBe(1);
  expect(out).toContain('typed as five numbers');
  expect(out).toContain('right to 3 °C');
  expect(out.replace(/\s+/g, ' ')).toContain('A day typed by hand and held the same');
  const data = JSON.parse((await hours(...DAY, '--json')).out);
  const given = JSON.parse((await hours('--json')).out);
  const width = ({ entries }: typeof data): number => entries['site.slab'].high[40] - entries['site.slab'].low[40];
  expect(width(data)).toBeGreaterThan(1.5 * width(given));
});

/** A year of our own in the published form: eight lines of head, 35 fields an hour. */
function ownYear(): string {
  const head = ['LOCATION,Halden,-,-,own,0,39.6,-105.1,-7.0,1676.0', ...Array.from({ length: 7 }, () => 'OWN')];
  const hours = Array.from({ length: 8760 }, (_, i) => {
    const day = new Date(Date.UTC(1999, 0, 1) + i * 3_600_000);
    const [hour, date, month] = [day.getUTCHours(), day.getUTCDate(), day.getUTCMonth() + 1];
    const air = 10 - 11 * Math.cos((2 * Math.PI * (i / 24 - 20)) / 365) + 6 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
    const sun = hour > 8 && hour < 18 ? 300 : 0;
    const rest = Array.from({ length: 7 }, () => 0);
    return [
      1999,
      month,
      date,
      hour + 1,
      60,
      '?',
      air.toFixed(1),
      0,
      55,
      83_000,
      0,
      0,
      0,
      sun,
      ...rest,
      2,
      3,
      ...Array(11).fill(0),
    ].join(',');
  });
  return [...head, ...hours].join('\n');
}

test('a typical year makes hours and says that it is none of this year', async () => {
  const file = join(folder, 'own.epw');
  writeFileSync(file, ownYear());
  const { out } = await hours('--weather', file);
  expect(out).toContain('typical year, Halden');
  expect(out).toContain('not of this one');
  expect(out).toContain('best starts: ');
  // Its own days before the moment planned for are there: nothing of the past is assumed.
  expect(out).not.toContain('The weather of the last ten days is not given');
  writeFileSync(file, ownYear().replace('39.6', 'north'));
  const refused = await hours('--weather', file);
  expect(refused.status).toBe(2);
  expect(refused.err).toContain('its first line does not start with LOCATION and a place');
});

test('a reading of the moment stands beside those of the job', async () => {
  const now = ['--slab-now', '17 °C', '--air-now', '18 °C', '--humidity-now', '60%'];
  const data = JSON.parse((await hours(...now, '--json')).out);
  const before = JSON.parse((await hours('--json')).out);
  expect(data.entries['site.readings'].value).toBe(before.entries['site.readings'].value + 1);
});

test.each([
  [['--air-low', '8 °C'], '--air-high, --humidity, --wind, --cloud are missing'],
  [typed({ '--humidity': '85' }), '--humidity is 85: a humidity lies between 1 % and 100 %. It looks like per cent'],
  [typed({ '--air-low': '-80 °C' }), '--air-low is -80 °C: it lies between -60 °C and 60 °C'],
  [typed({ '--air-low': '30 °C' }), '--air-high is 72 °F, below the coldest hour of 30 °C. Exchange the two'],
  [typed({ '--wind': '2' }), '--wind'],
  [typed({ '--air-low': '8 m' }), '--air-low is "8 m": m measures length, but temperature is needed here'],
  [typed({ '--cloud': '130 %' }), '--cloud is 130 %: it lies between 0 % and 100 %'],
  [[...DAY, '--weather', 'other.json'], 'Leave one of them out'],
  [['--material-now', '24 °C'], '--material-now goes with the reading of its moment'],
  [['--slab-now', '17 °C'], '--air-now, --humidity-now are missing'],
  [['--slab-now', '180 °C', '--air-now', '18 °C', '--humidity-now', '60%'], 'it must lie between -40 °C and 80 °C'],
])('%j is refused in words', async (words, says) => {
  const { status, err } = await hours(...words);
  expect(status).toBe(2);
  expect(err).toContain(says);
});

test('hours prints rows, windows, schedule and return to service; data with --json', async () => {
  const { status, out } = await hours();
  expect(status).toBe(0);
  for (const part of [
    'Hours',
    'dew point',
    'May lay',
    'base coat',
    'with care',
    'Schedule',
    'waits for',
    'Return to service',
  ])
    expect(out).toContain(part);
  const data = JSON.parse((await hours('--json')).out);
  expect(data.day.coats).toHaveLength(2);
  expect(data.entries['site.slab'].values.length).toBeGreaterThan(100);
  expect((await hours('--option', 'none')).status).toBe(2);
});
