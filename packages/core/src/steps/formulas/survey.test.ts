import { describe, expect, test } from 'vitest';
import { SOURCES } from '../../data/sources.ts';
import { evaluate, evaluateAny } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { isUnit } from '../../kernel/unit.ts';
import {
  crewTime,
  patchRate,
  restOfArea,
  singleFromMean,
  sweptArea,
  systemDryFilm,
  timeFromArea,
  timeFromCount,
  timeFromLength,
} from './preparation.ts';
import {
  ageFromDays,
  allEdges,
  edgeToWork,
  lengthErrorFromArea,
  lineLength,
  netArea,
  riserLength,
  totalArea,
  totalLength,
} from './survey.ts';
import { stepFormulasSurvey } from './survey-index.ts';
import { cornersFromTape, tapedAreaError } from './taped-room.ts';

describe.each(stepFormulasSurvey.map((f) => [f.id, f] as const))('%s', (_, f) => {
  test('has a source that exists, known units, ranges for known inputs and a reason for having no outside row', () => {
    expect(SOURCES.has(f.source), f.source).toBe(true);
    expect((f.noOutsideRow ?? '').length).toBeGreaterThan(10);
    for (const unit of [...Object.values(f.takes), f.gives]) expect(isUnit(unit.replace('[]', '')), unit).toBe(true);
    for (const part of [f.holds, f.refuses ?? {}, f.defaults ?? {}, f.inputShows ?? {}]) {
      for (const name of Object.keys(part)) expect(Object.keys(f.takes)).toContain(name);
    }
  });

  test('refuses what is no number', () => {
    const nothing = Object.fromEntries(
      Object.entries(f.takes).map(([name, unit]) => [name, unit.endsWith('[]') ? [Number.NaN] : Number.NaN]),
    );
    expect(() => evaluateAny(f, nothing)).toThrow(FormulaRefused);
  });
});

const code = (run: () => unknown): string => {
  try {
    run();
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) return trouble.refusal.code;
    throw trouble;
  }
  return 'not refused';
};

describe('sums of the survey (own arithmetic)', () => {
  test('the workshop: 600 m² less six columns and a plinth is 593.04 m²; 119.6 m of edges, 113.6 without doors', () => {
    const holeAreas = [0.16, 0.16, 0.16, 0.16, 0.16, 0.16, 6];
    expect(evaluate(netArea, { grossArea: 600, holeAreas, tapeError: 0.005 }).value).toBeCloseTo(593.04, 9);
    const perimeters = [100, 1.6, 1.6, 1.6, 1.6, 1.6, 1.6, 10];
    const edges = evaluate(allEdges, { perimeters, tapeError: 0 }).value;
    expect(edges).toBeCloseTo(119.6, 9);
    expect(evaluate(edgeToWork, { edges, openings: [5, 1] }).value).toBeCloseTo(113.6, 9);
  });

  test('what leaves nothing is refused by name', () => {
    expect(code(() => evaluate(netArea, { grossArea: 1, holeAreas: [1], tapeError: 0 }))).toBe(
      'holes-larger-than-the-floor',
    );
    expect(evaluate(netArea, { grossArea: 1, holeAreas: [0.999], tapeError: 0 }).value).toBeCloseTo(0.001, 12);
    expect(code(() => evaluate(edgeToWork, { edges: 10, openings: [10.1] }))).toBe('openings-longer-than-the-walls');
    expect(evaluate(edgeToWork, { edges: 10, openings: [10] }).value).toBe(0);
    expect(code(() => evaluate(lineLength, { pointsX: [1], pointsY: [1] }))).toBe('line-needs-two-points');
    expect(code(() => evaluate(lineLength, { pointsX: [1, 2], pointsY: [1] }))).toBe('formula-lists-differ-in-length');
  });

  test('the garage crack: (4,2)-(7,9)-(6.5,10.5) ft is 9.2 ft', () => {
    const feet = (values: readonly number[]) => values.map((value) => value * 0.3048);
    const { value } = evaluate(lineLength, { pointsX: feet([4, 7, 6.5]), pointsY: feet([2, 9, 10.5]) });
    expect(Math.round((value / 0.3048) * 10) / 10).toBe(9.2);
  });

  test('sums, risers, days, and the error of a length from that of an area', () => {
    expect(evaluate(totalArea, { areas: [] }).value).toBe(0);
    expect(evaluate(totalArea, { areas: [1, 2] }).value).toBe(3);
    expect(evaluate(totalLength, { lengths: [1, 2.5] }).value).toBe(3.5);
    expect(evaluate(riserLength, { riserCount: 3, width: 1.2 }).value).toBeCloseTo(3.6, 12);
    expect(evaluate(ageFromDays, { days: 28 }).value).toBe(2_419_200);
    expect(evaluate(lengthErrorFromArea, { areaError: 0.5, area: 50 }).value).toBe(0.005);
    expect(evaluate(netArea, { grossArea: 50, holeAreas: [], tapeError: 0.06 }).outside).toEqual(['tapeError']);
  });
});

describe('a taped room as entries', () => {
  const square = { cornerCount: 4, from: [0, 1, 2, 3, 0], to: [1, 2, 3, 0, 2], squareCorners: [] };
  const lengths = [4, 3, 4, 3, 5];
  const deviations = [0.005, 0.005, 0.005, 0.005, 0.005];

  test('4 by 3 with its diagonal 5 has its corners and a deviation of its area', () => {
    const corners = evaluate(cornersFromTape, { ...square, lengths, deviations }).value;
    for (const [i, expected] of [0, 0, 4, 0, 4, 3, 0, 3].entries()) expect(corners[i]).toBeCloseTo(expected, 6);
    const error = evaluate(tapedAreaError, { ...square, lengths, deviations }).value;
    const worse = evaluate(tapedAreaError, { ...square, lengths, deviations: deviations.map((d) => 2 * d) }).value;
    expect(worse).toBeCloseTo(2 * error, 6);
  });

  test('sides alone leave it loose', () => {
    const sides = { cornerCount: 4, from: [0, 1, 2, 3], to: [1, 2, 3, 0], squareCorners: [] };
    expect(
      code(() =>
        evaluate(cornersFromTape, { ...sides, lengths: lengths.slice(0, 4), deviations: deviations.slice(1) }),
      ),
    ).toBe('tape-room-is-loose');
  });
});

describe('sums of the preparation (own arithmetic)', () => {
  test('593.04 m² at 15 m²/h is 39.5 h; 120 m at 20 m/h is 6 h; three times 2 h is 6 h', () => {
    expect(evaluate(timeFromArea, { area: 593.04, rate: 15 / 3600 }).value / 3600).toBeCloseTo(39.536, 3);
    expect(evaluate(timeFromLength, { length: 120, rate: 20 / 3600 }).value / 3600).toBeCloseTo(6, 9);
    expect(evaluate(timeFromCount, { count: 3, each: 7200 }).value).toBe(21_600);
  });

  test('swept, left over, films, a patch, a crew, a single pull', () => {
    expect(evaluate(sweptArea, { area: 50, times: 3 }).value).toBe(150);
    expect(evaluate(restOfArea, { area: 50, part: 20 }).value).toBe(30);
    expect(code(() => evaluate(restOfArea, { area: 50, part: 51 }))).toBe('part-larger-than-the-whole');
    expect(evaluate(systemDryFilm, { dryFilms: [0.000254, 0.000259] }).value).toBeCloseTo(0.000513, 12);
    expect(code(() => evaluate(systemDryFilm, { dryFilms: [] }))).toBe('too-few-values');
    // 1.5 m² in 3.6 minutes is 25 m²/h.
    expect(evaluate(patchRate, { area: 1.5, time: 216, spread: 0.15 }).value * 3600).toBeCloseTo(25, 9);
    expect(evaluate(crewTime, { personTimes: [3600, 7200], people: 2 }).value).toBe(5400);
    expect(evaluate(crewTime, { personTimes: [], people: 2 }).value).toBe(0);
    expect(evaluate(singleFromMean, { mean: 1.5e6, share: 2 / 3 }).value).toBeCloseTo(1e6, 6);
  });
});
