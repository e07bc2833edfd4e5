import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkSequence,
  orderOf,
  readInstance,
  readSolution,
  spreadProblem,
  timedCandidate,
  trueWalk,
} from './index.ts';

// Published with the format: invented values. Agreement is asked to the published digits.
const NAMES = [
  'corridor-two-exits',
  'garage-6x6',
  'hall-25x24',
  'l-shape',
  'room-4-columns',
  'trap-comb',
  'two-rooms',
  'u-shape',
];

describe.each(NAMES)('stored sequence of %s', (name) => {
  const stored = JSON.parse(
    readFileSync(new URL(`../../../../reference/spread/${name}.json`, import.meta.url), 'utf8'),
  );
  const instance = readInstance(stored);
  const solution = readSolution(stored);
  if (!instance.ok || !solution.ok) throw new Error(`unreadable instance ${name}`);
  const problem = spreadProblem(instance.value, 'whole');
  const sequence = orderOf(problem, solution.value);
  if (!sequence) throw new Error(`unreadable solution ${name}`);

  it('scores as published with straight walks', () => {
    const { score } = timedCandidate(problem, sequence.order, sequence.starts, name, undefined);
    expect(score.score).toBeCloseTo(stored.bestKnown.score, 2);
    for (const key of [
      'maxAgeMin',
      'p95AgeMin',
      'seamM',
      'freeSeamM',
      'coldM',
      'lateMin',
      'walkM',
      'minutes',
      'pours',
    ] as const) {
      expect(Math.abs(score[key] - stored.bestKnown[key]), key).toBeLessThanOrEqual(0.00051);
    }
  });

  it('times as published with true walks', () => {
    const { score } = timedCandidate(problem, sequence.order, sequence.starts, name, trueWalk(problem));
    for (const key of ['maxAgeMin', 'p95AgeMin', 'seamM', 'coldM', 'lateMin', 'walkM', 'pours'] as const) {
      expect(Math.abs(score[key] - stored.checkerWithTrueWalking[key]), key).toBeLessThanOrEqual(0.00051);
    }
    expect(Math.abs(score.minutes - stored.checkerWithTrueWalking.minutes)).toBeLessThanOrEqual(0.0051);
  });

  it('passes our checker with the published figures', () => {
    const report = checkSequence(instance.value, solution.value, 'whole');
    expect(report.breaks).toEqual([]);
    expect(report.splitPours).toBe(stored.checkerWithTrueWalking.splitPours);
    expect(Math.abs(report.leftoverL - stored.bestKnown.leftoverL)).toBeLessThanOrEqual(0.051);
    for (const key of ['maxAgeMin', 'p95AgeMin', 'seamM', 'coldM', 'lateMin', 'walkM', 'pours'] as const) {
      expect(Math.abs(report[key] - stored.checkerWithTrueWalking[key]), key).toBeLessThanOrEqual(0.00051);
    }
    expect(Math.abs(report.minutes - stored.checkerWithTrueWalking.minutes)).toBeLessThanOrEqual(0.0051);
  });
});
