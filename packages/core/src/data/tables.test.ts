import { expect, test } from 'vitest';
import byFilm from './csp-by-film.json' with { type: 'json' };
import methods from './csp-methods.json' with { type: 'json' };
import rates from './rates.json' with { type: 'json' };
import { sourceOf } from './sources.ts';
import { tabled } from './tabled.ts';
import tooling from './tooling.json' with { type: 'json' };
import depths from './void-depth-prior.json' with { type: 'json' };

test('a value is read as its source prints it; one that is none is a mistake of ours', () => {
  expect(tabled('1/8 in', 'm')).toBeCloseTo(0.003175, 12);
  expect(tabled('1/8 in', 'm')).toBe(tabled('1/8 in', 'm'));
  expect(() => tabled('1/8 lb', 'm')).toThrow(/1\/8 lb/);
});

test('profile classes run from 1 to 10, least before most, in every edition', () => {
  const ranges = [
    ...methods.methods.flatMap(({ id, reaches }) => Object.values(reaches).map((range) => [id, range] as const)),
    ...byFilm.editions.flatMap(({ id, rows }) => rows.map((row) => [id, row.class] as const)),
  ];
  for (const [id, [least, most]] of ranges) {
    expect(least, id).toBeGreaterThanOrEqual(1);
    expect(most, id).toBeLessThanOrEqual(10);
    expect(least, id).toBeLessThanOrEqual(most as number);
  }
});

test('bands of film, rates and depths rise, and every source exists', () => {
  for (const { rows, source } of byFilm.editions) {
    sourceOf(source);
    for (const { film } of rows) expect(tabled(film[0] as string, 'm')).toBeLessThan(tabled(film[1] as string, 'm'));
  }
  for (const { task, low, typical, high } of rates.rates) {
    const unit = /²/.test(typical) ? 'm²/s' : 'm/s';
    expect(tabled(low, unit), task).toBeLessThan(tabled(typical, unit));
    expect(tabled(typical, unit), task).toBeLessThan(tabled(high, unit));
  }
  let before = 0;
  for (const row of depths.rows) {
    expect(tabled(row.low, 'm')).toBeGreaterThan(before);
    expect(tabled(row.high, 'm')).toBeGreaterThan(tabled(row.low, 'm'));
    before = tabled(row.low, 'm');
  }
  for (const key of [tooling.bondSource, tooling.gritSource, rates.source, depths.source]) sourceOf(key);
  for (const { source } of Object.values(methods.editions)) sourceOf(source);
});
