import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runHeard } from './testing/run-heard.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const slabwright = (...args: string[]) => runHeard(args);

const golden = (file: string): string => readFileSync(new URL(`../../../jobs/garage/${file}`, import.meta.url), 'utf8');
const garage = new URL('../../../jobs/garage', import.meta.url).pathname;

// biome-ignore lint/suspicious/noExplicitAny: the file is damaged on purpose
type Damage = (file: any) => void;

/** Writes a damaged copy of the garage and runs a verb on it. */
async function damaged(name: string, damage: { job?: Damage; catalogue?: Damage; prices?: Damage }) {
  const at = mkdtempSync(join(folder, `${name}-`));
  const copy = (file: string, change: Damage | undefined): void => {
    const data = JSON.parse(golden(file));
    change?.(data);
    writeFileSync(join(at, file), JSON.stringify(data));
  };
  copy('job.json', damage.job);
  copy('catalogue.json', damage.catalogue);
  copy('price-book.json', damage.prices);
  return slabwright('check', at);
}

test.each([
  ['a verb there is not', ['frobnicate', '--json']],
  ['an option left out', ['export', 'garage', '--json']],
] as const)('%s with --json: exit 2, and the trouble as data on the output', async (_, args) => {
  const { status, out, err } = await slabwright(...args);
  expect(status).toBe(2);
  expect(err).toBe('');
  const { issues, messages } = JSON.parse(out);
  expect(issues).toHaveLength(1);
  expect(messages[0]).toMatch(/frobnicate|--out/);
});

describe('calc', () => {
  test('units in and out, the working and its source', async () => {
    const { status, out } = await slabwright(
      'calc',
      'film/wet-from-dry',
      'dryFilm=1.5 mil',
      'volumeSolids=42 %',
      '--in',
      'mil',
    );
    expect(status).toBe(0);
    expect(out).toContain('3.57');
    expect(out).toContain('wetFilm = dryFilm');
  });
  test('--json gives the Figure with its display', async () => {
    const { out } = await slabwright(
      'calc',
      'film/wet-from-dry',
      'dryFilm=1.5 mil',
      'volumeSolids=42 %',
      '--in',
      'mil',
      '--json',
    );
    const figure = JSON.parse(out);
    expect(figure).toMatchObject({ kind: 'figure', formula: 'film/wet-from-dry', unit: 'm', display: { unit: 'mil' } });
    expect(figure.display.value).toBeCloseTo(1.5 / 0.42, 9);
  });
  test('lists by comma, one unit at the end serves all', async () => {
    const { out } = await slabwright(
      'calc',
      'shape/area',
      'cornersX=0,8,8,5,5,0 m',
      'cornersY=0,0,3,3,6,6 m',
      '--json',
    );
    expect(JSON.parse(out).value).toBeCloseTo(39, 12);
  });
  test('money is typed in whole currency', async () => {
    const { out } = await slabwright(
      'calc',
      'price/from-shares',
      'cost=4000',
      'overheadShare=25 %',
      'profitShare=15 %',
      '--json',
    );
    expect(JSON.parse(out).display.value).toBeCloseTo(6666.67, 1);
  });
  test.each([
    [['calc', 'film/wet-from-dri', 'dryFilm=1 mil'], /Did you mean film\/wet-from-dry/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5', 'volumeSolids=0.5'], /dryFilm is "5", without a unit/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5 psi', 'volumeSolids=0.5'], /psi measures stress|psi measures pressure/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5 mil'], /needs volumeSolids/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5 mil', 'volumeSolid=0.5'], /Did you mean volumeSolids/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5 mil', 'volumeSolids=0'], /volumeSolids/],
    [['calc', 'film/wet-from-dry', 'dryFilm=5 mil', 'volumeSolids=0.5', '--in', 'psi'], /does not fit/],
    [['calc', 'air/dew-point', 'airTemperature=20 °C', 'relativeHumidity=140 %'], /relativeHumidity/],
    [['plan', '/nowhere/at/all'], /no such file/],
    [['explain', garage, 'flake.nothing.at.all'], /holds no entry/],
    [['plan', garage, '--now', 'tomorrow'], /--now/],
  ])('%j says what is wrong, exit status 2', async (args, says) => {
    const { status, err } = await slabwright(...args);
    expect(err).toMatch(says);
    expect(status).toBe(2);
  });
});

describe('bad input is named with its place, value and way out, exit status 2', () => {
  const cases: readonly [string, Parameters<typeof damaged>[1], RegExp][] = [
    [
      'a negative length',
      {
        job: (j) => {
          j.areas[0].stemWalls[0].length = '-3 ft';
        },
      },
      /stemWalls\[0\]\.length is "-3 ft"/,
    ],
    [
      'feet typed as inches',
      {
        job: (j) => {
          j.areas[0].outline = [
            ['0 in', '0 in'],
            ['20 in', '0 in'],
            ['20 in', '21 in'],
            ['0 in', '21 in'],
          ];
        },
      },
      /areas\[0\]/,
    ],
    [
      'an outline that crosses itself',
      {
        job: (j) => {
          j.areas[0].outline = [
            ['0 ft', '0 ft'],
            ['20 ft', '20 ft'],
            ['20 ft', '0 ft'],
            ['0 ft', '20 ft'],
          ];
        },
      },
      /cross/,
    ],
    [
      'a hole outside',
      {
        job: (j) => {
          j.areas[0].holes = [
            {
              id: 'pad',
              outline: [
                ['50 ft', '50 ft'],
                ['52 ft', '50 ft'],
                ['52 ft', '52 ft'],
              ],
            },
          ];
        },
      },
      /hole|holes/,
    ],
    [
      'humidity of 140 %',
      {
        job: (j) => {
          j.survey.moisture.tests[0].humidity = '140 %';
        },
      },
      /140 %.*between 0 % and 100 %/,
    ],
    [
      'a slab hotter than boiling',
      {
        job: (j) => {
          j.survey.climate[0].slab = '250 °F';
        },
      },
      /250 °F/,
    ],
    [
      'mixed dimensions',
      {
        job: (j) => {
          j.areas[0].stemWalls[0].height = '6 psi';
        },
      },
      /psi measures/,
    ],
    [
      'an unknown product',
      {
        catalogue: (c) => {
          c.systems[0].layers[0].product = 'base-x';
        },
      },
      /base-x/,
    ],
    [
      'a mix ratio of 0',
      {
        catalogue: (c) => {
          c.products[0].mix[0].parts = 0;
        },
      },
      /mix\[0\]\.parts is 0; it must be more than 0\./,
    ],
    [
      'volume solids of 0',
      {
        catalogue: (c) => {
          c.products[0].volumeSolids = '0 %';
        },
      },
      /volumeSolids is "0 %"/,
    ],
    [
      'volume solids above 1',
      {
        catalogue: (c) => {
          c.products[0].volumeSolids = '104 %';
        },
      },
      /volumeSolids is "104 %"/,
    ],
    [
      'a kit of 0 L',
      {
        catalogue: (c) => {
          c.products[0].packs[0].parts[0].volume = '0 L';
        },
      },
      /volume is "0 L"/,
    ],
    [
      'a job without an area',
      {
        job: (j) => {
          j.areas = [];
        },
      },
      /areas has 0 entries/,
    ],
    [
      'a bare number for a quantity',
      {
        job: (j) => {
          j.areas[0].stemWalls[0].length = 69;
        },
      },
      /bare number 69/,
    ],
    [
      'a number as text',
      {
        job: (j) => {
          j.options[0].people = '2';
        },
      },
      /options\[0\]\.people/,
    ],
    [
      'a future schema version',
      {
        job: (j) => {
          j.schema = 'slabwright.job/2';
        },
      },
      /later version/,
    ],
    [
      'a misspelled field',
      {
        job: (j) => {
          j.areas[0].outlines = [];
        },
      },
      /no field called outlines/,
    ],
    [
      'an unknown system',
      {
        job: (j) => {
          j.options[0].system = 'flake-two-day';
        },
      },
      /flake-two-day/,
    ],
    [
      'prices with a sign',
      {
        prices: (p) => {
          p.wage = '-38.00';
        },
      },
      /wage is "-38.00"/,
    ],
  ];
  test.each(cases)('%s', async (name, damage, says) => {
    const { status, err, out } = await damaged(name.replaceAll(/[^a-z0-9]+/g, '-'), damage);
    expect(err).toMatch(says);
    expect(err).not.toMatch(/NaN|undefined|\bat .*\.ts:/);
    expect(out).toBe('');
    expect(status).toBe(2);
  });

  test('truncated JSON, no JSON, an empty file, a file over 10 MB', async () => {
    const at = mkdtempSync(join(folder, 'text-'));
    const file = join(at, 'job.json');
    const says = async (text: string): Promise<string> => {
      writeFileSync(file, text);
      const { status, err } = await slabwright('check', file);
      expect(status).toBe(2);
      return err;
    };
    expect(await says(golden('job.json').slice(0, 900))).toMatch(/cut off/);
    expect(await says('hello')).toMatch(/not JSON/);
    expect(await says('')).toMatch(/empty/);
    expect(await says(' '.repeat(10 * 1024 * 1024 + 1))).toMatch(/at most/);
  });

  test('--json gives the issues as data', async () => {
    const at = mkdtempSync(join(folder, 'json-'));
    const file = join(at, 'job.json');
    writeFileSync(file, golden('job.json').replace('"78 %"', '"140 %"'));
    writeFileSync(join(at, 'catalogue.json'), golden('catalogue.json'));
    const { status, out } = await slabwright('check', file, '--json');
    expect(status).toBe(2);
    expect(JSON.parse(out).issues[0]).toMatchObject({ code: 'out-of-range', value: '140 %' });
  });
});

describe('plan and explain', () => {
  test('the garage is planned on one screen with its verdict first', async () => {
    const { status, out } = await slabwright('plan', garage);
    expect(status).toBe(0);
    expect(out).toContain('WITH CARE');
    expect(out).toContain('$4,958.18');
  });
  test('a stop gives exit status 1', async () => {
    const { status } = await slabwright(
      'plan',
      garage.replace('garage', 'basement'),
      '--now',
      '2026-06-01T18:00:00-06:00',
    );
    expect(status).toBe(1);
  });
  test('a number opens down to what was typed', async () => {
    const { status, out } = await slabwright('explain', garage, 'flake.quantities.clear.needed', '--depth', '6');
    expect(status).toBe(0);
    expect(out).toMatch(/chosen|reading/);
    expect(out).toMatch(/own test|firm's rate/);
  });
});
