import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { spread } from '@slabwright/core';
import { afterAll, describe, expect, test } from 'vitest';
import { runHeard } from '../testing/run-heard.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-spread-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const slabwright = (...args: string[]) => runHeard(['spread', ...args], 110);

const garage = new URL('../../../../jobs/garage', import.meta.url).pathname;
const lShape = new URL('../../../../reference/spread/l-shape.json', import.meta.url).pathname;

// biome-ignore lint/suspicious/noExplicitAny: the file is damaged on purpose
type Damage = (instance: any) => void;

let written = 0;
/** A floor of 60 m² in the shape of an L with its door at the right end, after a change. */
function floor(change: Damage): string {
  const { instance } = JSON.parse(readFileSync(lShape, 'utf8'));
  change(instance);
  written += 1;
  const file = join(folder, `floor-${written}.json`);
  writeFileSync(file, JSON.stringify(instance));
  return file;
}

describe('a job', () => {
  test('each coat as a map of pours and a table of batches', async () => {
    const { status, out } = await slabwright(garage, '--effort', '60');
    expect(status).toBe(0);
    expect(out).toMatch(/base coat {3}2026-05-13/);
    expect(out).toMatch(/clear coat {3}2026-05-13/);
    expect(out).toMatch(/1 1 1 1/);
    expect(out).toMatch(/place by \d\d:\d\d/);
    expect(out).toContain('out through overhead door');
    expect(out).toMatch(/oldest wet edge/);
  });

  test('--json gives the pours with every number they name', async () => {
    const { status, out } = await slabwright(garage, '--effort', '60', '--json');
    expect(status).toBe(0);
    const answer = JSON.parse(out);
    for (const coat of answer.spread.coats) {
      for (const pour of coat.pours) expect(answer.entries[pour.volume]?.value).toBeGreaterThan(0);
    }
  });

  test('an effort that is none', async () => {
    const { status, err } = await slabwright(garage, '--effort', 'much');
    expect(status).toBe(2);
    expect(err).toContain('quick, full, or 1 to 1000000 candidates');
  });
});

describe('a floor file', () => {
  test('map, table and what the checker found', async () => {
    const { status, out } = await slabwright(lShape, '--effort', '80');
    expect(status).toBe(0);
    expect(out).toContain('1 1 1');
    expect(out).toContain('oldest wet edge');
  });

  test('--json is a sequence that anyone can check again', async () => {
    const { status, out } = await slabwright(lShape, '--effort', '80', '--json');
    expect(status).toBe(0);
    const question = spread.readInstance(JSON.parse(out));
    const solution = spread.readSolution(JSON.parse(out));
    if (!question.ok || !solution.ok) throw new Error('what was written is not read again');
    expect(spread.checkSequence(question.value, solution.value, 'clipped').breaks).toEqual([]);
  });

  test('no order of pours: status 1, with the arithmetic', async () => {
    const file = floor((instance) => {
      instance.clock.workingMin = [[480, 3]];
    });
    const { status, out } = await slabwright(file, '--effort', '40');
    expect(status).toBe(1);
    expect(out).toMatch(/a batch of 6.L covers 20.m²[\s\S]*the longest working time of the day is 3.min/);
  });

  test.each<[string, Damage, RegExp]>([
    [
      'an exit in the middle of the floor',
      (instance) => {
        instance.exits = [{ a: [2, 2], b: [3, 2], outside: true }];
      },
      /lies 2 m inside the floor.*edge/,
    ],
    [
      'no exit',
      (instance) => {
        instance.exits = [];
      },
      /no door to leave by/,
    ],
    [
      'two floors that are not joined',
      (instance) => {
        instance.walls = [
          [
            [5, -1],
            [5, 5],
          ],
        ];
      },
      /cannot be reached from a door/,
    ],
    [
      'a passage narrower than a shoulder',
      (instance) => {
        instance.walls = [
          [
            [5, -1],
            [5, 2],
          ],
          [
            [5, 2.3],
            [5, 5],
          ],
        ];
      },
      /passage.*a person needs 0\.45 m/,
    ],
    [
      'a million squares',
      (instance) => {
        instance.outline = [
          [0, 0],
          [1000, 0],
          [1000, 1000],
          [0, 1000],
        ];
        instance.exits = [{ a: [0, 0], b: [2, 0], outside: true }];
        instance.cellM = 1;
      },
      /1000000 squares.*at most 500000/,
    ],
    [
      'a rate of nothing',
      (instance) => {
        instance.crew.rateM2PerMinPerPerson = 0;
      },
      /rateM2PerMinPerPerson is 0 m²\/min; it must lie between 0\.05 and 50/,
    ],
    [
      'a field that is not there',
      (instance) => {
        instance.batch.litres = undefined;
      },
      /batch\.litres/,
    ],
  ])('%s: status 2, field, value and a way out', async (_, damage, says) => {
    const { status, err } = await slabwright(floor(damage));
    expect(err).toMatch(says);
    expect(status).toBe(2);
  });
});
