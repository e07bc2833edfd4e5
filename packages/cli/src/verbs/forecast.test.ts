import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { runHeard } from '../testing/run-heard.ts';

/** A server of this machine stands in for both services; no test asks a real one. */
const asked: { url: string; agent: string | undefined }[] = [];
const served = new Map<string, string>();
const server = createServer((request, response) => {
  asked.push({ url: request.url ?? '', agent: request.headers['user-agent'] });
  const [, body] = [...served].find(([start]) => request.url?.startsWith(start)) ?? [];
  response.writeHead(body === undefined ? 503 : 200).end(body ?? 'down');
});
const folder = mkdtempSync(join(tmpdir(), 'slabwright-forecast-'));
const job = join(folder, 'job.json');
const out = join(folder, 'weather.json');
let here = '';
const reallyFetch = globalThis.fetch;

beforeAll(async () => {
  const garage = new URL('../../../../jobs/garage', import.meta.url).pathname;
  cpSync(join(garage, 'catalogue.json'), join(folder, 'catalogue.json'));
  const document = JSON.parse(readFileSync(join(garage, 'job.json'), 'utf8'));
  Object.assign(document.place, { latitude: 39.604_321, longitude: -105.106_789 });
  writeFileSync(job, JSON.stringify(document));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  here = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(() => {
  vi.stubGlobal('fetch', (url: string, more: RequestInit) => {
    const { pathname, search } = new URL(url);
    return reallyFetch(`${here}${pathname}${search}`, more);
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  asked.length = 0;
  served.clear();
  rmSync(out, { force: true });
});

const forecast = (...more: string[]) => runHeard(['forecast', job, '--out', out, ...more]);

const ALLOW = '--allow-sending-the-place';

/** Invented hours in the form of the service's own page on its forecast JSON. */
const norway = JSON.stringify({
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [-105.11, 39.6, 1700] },
  properties: {
    meta: {
      updated_at: '2026-05-12T20:10:00Z',
      units: { air_temperature: 'celsius', relative_humidity: '%', wind_speed: 'm/s', precipitation_amount: 'mm' },
    },
    timeseries: Array.from({ length: 48 }, (_, i) => ({
      time: new Date(Date.UTC(2026, 4, 13, i)).toISOString().replace('.000', ''),
      data: {
        instant: { details: { air_temperature: 10 + (i % 12), relative_humidity: 60, wind_speed: 2 } },
        next_1_hours: { details: { precipitation_amount: 0 } },
      },
    })),
  },
});

const layer = (uom: string, value: number) => ({
  uom,
  values: [{ validTime: '2026-05-13T00:00:00+00:00/P1D', value }],
});
const square = JSON.stringify({
  properties: {
    updateTime: '2026-05-12T20:00:00+00:00',
    temperature: layer('wmoUnit:degC', 12),
    relativeHumidity: layer('wmoUnit:percent', 55),
  },
});

test('without leave nothing is asked, and the message says what would be sent and to whom', async () => {
  const { status, err } = await forecast('--service', 'met-norway');
  expect(status).toBe(2);
  expect(asked).toEqual([]);
  expect(err).toContain('39.6, -105.11');
  expect(err).toContain(ALLOW);
  expect(existsSync(out)).toBe(false);
});

test('with leave the rounded place goes out, the hours are kept and the job plans with them', async () => {
  served.set('/weatherapi', norway);
  const { status, out: said, err } = await forecast('--service', 'met-norway', ALLOW);
  expect([status, err]).toEqual([0, '']);
  expect(asked).toHaveLength(1);
  expect(asked[0]?.agent).toBe('slabwright');
  expect(asked[0]?.url).toMatch(/lat=39\.60?&lon=-105\.11/);
  expect(asked[0]?.url).not.toMatch(/39\.604|105\.106/);
  expect(said).toContain('48 hours');
  const file = JSON.parse(readFileSync(out, 'utf8'));
  expect(file).toMatchObject({ schema: 'slabwright.weather/1', kind: 'forecast' });
  expect(file.issued.slice(0, 16)).toBe('2026-05-12T14:10');
  expect(file.place).toMatchObject({ latitude: 39.6, longitude: -105.11 });
  expect(file.rows[0]).toMatchObject({ at: '2026-05-12T18:00:00-06:00', air: '10.00 °C', humidity: '60.0 %' });
});

test('the service in two steps is asked twice, on its own host', async () => {
  const grid = 'https://api.weather.gov/gridpoints/BOU/50,50';
  served.set('/points', JSON.stringify({ properties: { forecastGridData: grid } }));
  served.set('/gridpoints', square);
  const { status, out: said } = await forecast('--service', 'nws', ALLOW, '--json');
  expect(status).toBe(0);
  expect(asked.map(({ url }) => url)).toEqual(['/points/39.6,-105.11', '/gridpoints/BOU/50,50']);
  expect(JSON.parse(said)).toMatchObject({ hours: 24, place: { latitude: 39.6, longitude: -105.11 } });
});

test('a service that is down, no network, nonsense: each is named, and no file is left', async () => {
  const down = await forecast('--service', 'met-norway', ALLOW);
  expect([down.status, down.err]).toEqual([2, expect.stringContaining('HTTP 503')]);
  served.set('/weatherapi', 'not an answer');
  expect((await forecast('--service', 'met-norway', ALLOW)).status).toBe(2);
  const cause = Object.assign(new Error('getaddrinfo ENOTFOUND'), { code: 'ENOTFOUND' });
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('fetch failed', { cause })));
  const alone = await forecast('--service', 'met-norway', ALLOW);
  expect([alone.status, alone.err]).toEqual([2, expect.stringContaining('no network')]);
  expect(existsSync(out)).toBe(false);
});

test('a file that is there is kept', async () => {
  writeFileSync(out, 'mine');
  const { status, err } = await forecast('--service', 'met-norway', ALLOW);
  expect(status).toBe(2);
  expect(err).toContain('--overwrite');
  expect(asked).toEqual([]);
  expect(readFileSync(out, 'utf8')).toBe('mine');
});
