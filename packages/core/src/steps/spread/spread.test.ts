import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, type Plan, plan } from '../../plan.ts';
import { MESSAGES } from '../../words/messages.ts';

// biome-ignore lint/suspicious/noExplicitAny: the files are damaged on purpose
type Change = (job: any, catalogue: any) => void;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const text = (name: string, file: string): string =>
  readFileSync(new URL(`../../../../../jobs/${name}/${file}.json`, import.meta.url), 'utf8');

function planned(name: string, change: Change = () => undefined, candidates = 40): Plan {
  const job = JSON.parse(text(name, 'job'));
  const catalogue = JSON.parse(text(name, 'catalogue'));
  change(job, catalogue);
  return plan({
    job: must(jobFrom(job)),
    catalogue: must(catalogueFrom(catalogue)),
    now: '2026-05-12T18:00:00-06:00',
    spread: candidates,
  });
}

function spreadOf(made: Plan) {
  const option = made.options.find(({ accepted }) => accepted) ?? made.options[0];
  if (!option?.spread || !answered(option.spread)) throw new Error('no spread');
  const value = (id: string | undefined): number => {
    const entry = id === undefined ? undefined : made.entries[id];
    if (!entry || !('value' in entry)) throw new Error(`no value for ${id}`);
    return entry.value;
  };
  const codes = option.spread.verdict.reasons.map(({ code }) => code);
  const quantities = answered(option.quantities) ? option.quantities : undefined;
  return { ...option.spread, option, quantities, value, codes };
}

describe('the garage', () => {
  const { coats, value, quantities, verdict } = spreadOf(planned('garage'));

  test('both coats are planned', () => {
    expect(coats.map(({ layer, state }) => `${layer} ${state}`)).toEqual(['base planned', 'clear planned']);
    expect(['go', 'caution']).toContain(verdict.word);
  });

  test('the pours cover the floor once and take what is mixed', () => {
    // 20 × 21 ft and a nook of 5 × 3 ft: 435 ft² (own arithmetic).
    const floor = 435 * 0.3048 ** 2;
    for (const { layer, pours } of coats) {
      const area = pours.reduce((sum, pour) => sum + value(pour.area), 0);
      expect(area).toBeCloseTo(floor, 3);
      const needed = value(quantities?.layers.find((one) => one.layer === layer)?.needed);
      const mixed = pours.reduce((sum, pour) => sum + value(pour.volume), 0);
      // a batch ends at a whole square: half a square at the end of each pour may go either way
      const square = (0.5 * 0.5 * needed) / floor;
      expect(Math.abs(mixed - needed)).toBeLessThan(square * pours.length);
    }
  });

  test('every pour is down before its batch goes off, every edge closes in its open time', () => {
    for (const { pours, ageShare, worstPour } of coats) {
      for (const pour of pours) expect(pour.end <= pour.placeBy).toBe(true);
      expect(value(ageShare)).toBeLessThanOrEqual(1);
      expect(value(worstPour?.share)).toBeLessThanOrEqual(1);
    }
  });

  test('components add up to the batch', () => {
    for (const pour of coats.flatMap(({ pours }) => pours)) {
      const parts = pour.parts.reduce((sum, part) => sum + value(part.volume), 0);
      expect(parts).toBeCloseTo(value(pour.volume), 9);
    }
  });

  test('the same answer twice', () => {
    expect(JSON.stringify(planned('garage'))).toBe(JSON.stringify(planned('garage')));
  });
});

describe('what is missing or wrong', () => {
  const codes = (change: Change): readonly string[] => spreadOf(planned('garage', change)).codes;

  test('no door: nobody could leave', () => {
    const found = codes((job) => {
      job.areas[0].exits = [];
    });
    expect(found).toEqual(['spread-no-way-out', 'spread-no-way-out']);
  });

  test('a door in the middle of the floor is named', () => {
    const { verdict } = spreadOf(
      planned('garage', (job) => {
        job.areas[0].exits = [
          { id: 'x', name: 'trapdoor', from: ['8 ft', '10 ft'], to: ['12 ft', '10 ft'], outside: true },
        ];
      }),
    );
    expect(verdict.word).toBe('stop');
    expect(verdict.reasons[0]?.code).toBe('spread-exit-inside-floor');
    expect(verdict.reasons[0]?.names?.path).toBe('trapdoor');
  });

  test('no start: not known', () => {
    expect(
      codes((job) => {
        job.options[0].starts = [];
      }),
    ).toEqual(['spread-no-start', 'spread-no-start']);
  });

  test('no open time on the sheet: a share of the pot life is assumed, with care at best', () => {
    const {
      verdict,
      codes: found,
      notes,
    } = spreadOf(
      planned('garage', (_, catalogue) => {
        const base = catalogue.products.find(({ id }: { id: string }) => id === 'base-b');
        base.times = base.times.filter(({ what }: { what: string }) => what !== 'open time');
      }),
    );
    expect(verdict.word).not.toBe('go');
    expect(notes.map(({ code }) => code)).toContain('spread-open-assumed');
    expect(found.some((code) => code === 'spread-on-assumed-time' || code.startsWith('spread-'))).toBe(true);
  });

  test('neither pot life nor open time: not known', () => {
    expect(
      codes((_, catalogue) => {
        for (const product of catalogue.products) {
          product.times = (product.times ?? []).filter(
            ({ what }: { what: string }) => what !== 'open time' && what !== 'pot life',
          );
        }
      }),
    ).toEqual(['spread-no-times', 'spread-no-times']);
  });

  test('a lap that vanished on this slab beats the sheet', () => {
    const { coats, value } = spreadOf(
      planned('garage', (job) => {
        job.survey.openTimeTests = [
          {
            product: 'base-b',
            on: '2026-05-12T15:00:00-06:00',
            slab: '19 °C',
            ties: [
              { after: '9 min', vanished: true },
              { after: '12 min', vanished: false },
            ],
          },
        ];
      }),
    );
    expect(value(coats[0]?.openTime)).toBe(540);
    expect(coats[0]?.openFrom).toBe('own test');
  });
});

test('nothing works: a stop with the arithmetic, and what was tried', () => {
  const { verdict, coats, notes } = spreadOf(
    planned(
      'garage',
      (job, catalogue) => {
        job.areas[0].joints = [];
        for (const product of catalogue.products) {
          for (const time of product.times ?? []) if (time.what === 'open time') time.value = '40 s';
        }
      },
      12,
    ),
  );
  expect(verdict.word).toBe('stop');
  expect(coats.every(({ state, pours }) => state === 'none found' && pours.length === 0)).toBe(true);
  expect(notes.map(({ code }) => code)).toContain('spread-repair-none');
});

test('one person alone: what would make it possible was planned, and every sentence has its words', () => {
  const { coats, verdict, notes } = spreadOf(
    planned(
      'garage',
      (job, catalogue) => {
        job.options[0].people = 1;
        job.areas[0].joints = [];
        for (const product of catalogue.products) {
          for (const time of product.times ?? []) if (time.what === 'open time') time.value = '8 min';
        }
      },
      12,
    ),
  );
  const halted = coats.filter(({ state }) => state === 'none found');
  expect(halted.length).toBeGreaterThan(0);
  expect(halted.flatMap(({ repairs }) => repairs).map(({ code }) => code)).toContain('spread-repair-more-people');
  const said = [...notes, ...coats.flatMap(({ repairs }) => repairs), ...verdict.reasons];
  for (const { code } of said) expect(MESSAGES.en.has(code), code).toBe(true);
  for (const { lift } of verdict.reasons) if (lift) expect(MESSAGES.en.has(lift.code), lift.code).toBe(true);
});

test('the workshop names the door in mid-wall and the plinth that parts the lanes', () => {
  const { notes, coats } = spreadOf(planned('workshop', () => undefined, 12));
  const named = notes.map(({ code, names }) => `${code}: ${names?.door ?? names?.hole ?? ''}`);
  expect(named).toContain('spread-door-in-mid-wall: roller door D1');
  expect(named).toContain('spread-hole-parts-lanes: plinth, stays');
  expect(coats).toHaveLength(4);
});

test('every code of the planner has its words', () => {
  const folder = new URL('../../spread/', import.meta.url);
  const files = readdirSync(folder).filter((file) => file.endsWith('.ts') && !/\.(test|prop)\.ts$/.test(file));
  const codes = files.flatMap((file) => [
    ...readFileSync(new URL(file, folder), 'utf8').matchAll(/'((?:spread|repair)\/[a-z-]+)'/g),
  ]);
  expect(codes.length).toBeGreaterThan(15);
  for (const [, code = ''] of codes) {
    const key = code.startsWith('repair/') ? `spread-${code.replace('/', '-')}` : code.replace('/', '-');
    expect(MESSAGES.en.has(key), key).toBe(true);
  }
});
