import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Catalogue, catalogueFromText } from '../../catalogue.ts';
import { type Job, jobFromText } from '../../job.ts';
import { checkJob } from '../check/job.ts';
import { prepare } from '../testing/small-job.ts';

/**
 * The invented jobs, against figures worked by hand from the same rates (own arithmetic, no validation). Edges of the
 * garage are the 69 ft of walls: a count along the doors as well, 88 ft, would give 1.5 h.
 */
const DAYS = {
  garage: '2026-05-12T18:00:00-06:00',
  workshop: '2026-10-11T18:00:00+01:00',
  basement: '2026-06-01T18:00:00-06:00',
  patio: '2026-06-12T20:00:00-06:00',
} as const;

function golden(name: keyof typeof DAYS): { readonly job: Job; readonly catalogue: Catalogue } {
  const text = (file: string): string =>
    readFileSync(new URL(`../../../../../jobs/${name}/${file}`, import.meta.url), 'utf8');
  const [job, catalogue] = [jobFromText(text('job.json')), catalogueFromText(text('catalogue.json'))];
  if (!job.ok || !catalogue.ok) throw new Error(`the files of ${name} do not read`);
  return { job: job.value, catalogue: catalogue.value };
}

const run = (name: keyof typeof DAYS) => {
  const { job, catalogue } = golden(name);
  return prepare(job, catalogue, DAYS[name]);
};

test.each(Object.keys(DAYS) as (keyof typeof DAYS)[])('%s: no issue on its day', (name) => {
  const { job, catalogue } = golden(name);
  expect(checkJob(job, catalogue, DAYS[name])).toEqual([]);
});

describe('garage', () => {
  const { surveyed, plan, hours } = run('garage');
  test('435 ft² of floor, 69 ft of walls, 88 ft of edges; survey and gate say go', () => {
    expect(surveyed.total.value / 0.09290304).toBeCloseTo(435, 9);
    expect((surveyed.areas[0]?.edge.value ?? 0) / 0.3048).toBeCloseTo(69, 9);
    expect((surveyed.areas[0]?.perimeter.value ?? 0) / 0.3048).toBeCloseTo(88, 9);
    expect([surveyed.verdict.word, plan.gate.word, plan.verdict.word]).toEqual(['go', 'go', 'go']);
    expect(plan.missing).toEqual([]);
  });

  test.each([
    ['grind', 1.6],
    ['edge', 1.2],
    ['stem-prep', 1.4],
    ['crack-fill', 0.3],
    ['joint-fill', 0.6],
    ['vacuum', 0.4],
  ])('%s takes about %s h', (work, expected) => {
    expect(Math.round((hours(work) ?? 0) * 10) / 10).toBeCloseTo(expected, 9);
  });
});

describe('workshop', () => {
  const { surveyed, plan, hours } = run('workshop');
  test('593.04 m², 113.6 m of edge; nine probes needed, the highest 91 %', () => {
    expect(surveyed.total.value).toBeCloseTo(593.04, 9);
    expect(surveyed.areas[0]?.edge.value).toBeCloseTo(113.6, 9);
    expect(surveyed.moisture.needed?.value).toBe(9);
    expect(surveyed.moisture.highest[0]?.value.value).toBeCloseTo(0.91, 12);
    expect((surveyed.pullOff?.mean.value ?? 0) / 1e6).toBeCloseTo(1.83, 2);
    expect(plan.chosen).toBe('grind');
  });

  test.each([
    ['remove-film', 39.5],
    ['second-pass', 19.8],
    ['edge-through-film', 15.8],
    ['joint-fill', 6.0],
    ['crack-fill', 4.2],
    ['patch', 2.0],
    ['vacuum', 19.8],
  ])('%s takes %s h', (work, expected) => {
    expect(Math.round((hours(work) ?? 0) * 10) / 10).toBeCloseTo(expected, 9);
  });
});

test('basement: dry probes and a salt line are a stop by that rule alone', () => {
  const { surveyed } = run('basement');
  expect(surveyed.moisture.highest[0]?.value.value).toBeCloseTo(0.71, 12);
  expect(surveyed.verdict.word).toBe('stop');
  expect(surveyed.verdict.reasons.map(({ code }) => code)).toEqual(['survey-pressure-from-below']);
});

test('patio: taped, a plastic sheet only: not known, with nothing proved after preparation', () => {
  const { surveyed, plan } = run('patio');
  expect(surveyed.areas).toHaveLength(1);
  expect(surveyed.verdict.word).toBe('not known');
  expect(surveyed.moisture.counted.value).toBe(0);
  expect(plan.gate.word).toBe('not known');
});
