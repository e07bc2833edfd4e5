import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  checkSequence,
  fullEffort,
  planSpread,
  quickEffort,
  readInstance,
  search,
  solutionOf,
  spreadProblem,
} from './index.ts';

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

function stored(name: string) {
  const file = JSON.parse(readFileSync(new URL(`../../../../reference/spread/${name}.json`, import.meta.url), 'utf8'));
  const instance = readInstance(file);
  if (!instance.ok) throw new Error(`unreadable instance ${name}`);
  return { question: instance.value, bestKnown: file.bestKnown as { score: number; maxAgeMin: number } };
}

// Best known values: published with the format, invented instances.
describe.each(NAMES)('quick plan of %s', (name) => {
  const { question, bestKnown } = stored(name);
  const problem = spreadProblem(question, 'whole');
  const [best] = search(problem, { effort: quickEffort(problem.squares.count), seed: 1 });

  it('is at most 15 % above the best known score', () => {
    expect(best?.score.score).toBeLessThanOrEqual(bestKnown.score * 1.15);
  });

  it('passes the checker', () => {
    const plan = planSpread(question, { areas: 'whole', seed: 1 });
    expect(plan.kind).toBe('plan');
    if (plan.kind !== 'plan') return;
    expect(checkSequence(question, plan.solution, 'whole').breaks).toEqual([]);
    // planner and checker share no code, so that they agree says something
    expect(plan.check.maxAgeMin).toBeCloseTo(plan.best.score.maxAgeMin, 6);
    expect(plan.check.walkM).toBeCloseTo(plan.best.score.walkM, 6);
    expect(plan.check.minutes).toBeCloseTo(plan.best.score.minutes, 6);
  });
});

describe('full effort', () => {
  it.each(['garage-6x6', 'u-shape'])(
    '%s: at most three per cent above the best known score',
    (name) => {
      const { question, bestKnown } = stored(name);
      const problem = spreadProblem(question, 'whole');
      const [best] = search(problem, { effort: fullEffort(problem.squares.count), seed: 1 });
      expect(best?.score.score).toBeLessThanOrEqual(bestKnown.score * 1.03);
    },
    300_000,
  );
});

describe('a plan', () => {
  const { question } = stored('l-shape');

  it('is the same on every run', () => {
    const first = planSpread(question, { areas: 'clipped', seed: 7 });
    const again = planSpread(question, { areas: 'clipped', seed: 7 });
    expect(first.kind).toBe('plan');
    if (first.kind !== 'plan' || again.kind !== 'plan') return;
    expect(again.solution).toEqual(first.solution);
  });

  it('says how near it is to the best on a coarse copy when the effort allows', () => {
    const plan = planSpread(question, { areas: 'clipped', seed: 1, effort: { candidates: 60, nodes: 20_000 } });
    if (plan.kind !== 'plan') throw new Error('no plan');
    expect(plan.proof).toMatchObject({ squareM: 1, proved: true });
    const quick = planSpread(question, { areas: 'clipped', seed: 1 });
    expect(quick.kind === 'plan' && quick.proof).toBeUndefined();
  });

  it('can be stopped and still gives the best found so far', () => {
    let calls = 0;
    const plan = planSpread(question, {
      areas: 'clipped',
      seed: 1,
      onProgress: (done, of, bestScore) => {
        calls += 1;
        expect(done).toBeLessThanOrEqual(of);
        expect(bestScore).toBeGreaterThan(0);
        return calls < 12;
      },
    });
    expect(calls).toBe(12);
    expect(plan.kind).toBe('plan');
    if (plan.kind === 'plan') expect(plan.stopped).toBe(true);
  });

  it('stopped before it began still shows one order', () => {
    const plan = planSpread(question, { areas: 'clipped', seed: 1, onProgress: () => false });
    expect(plan.kind).toBe('plan');
    if (plan.kind === 'plan') expect(plan.stopped).toBe(true);
  });

  it('can be stopped while it proves how near it is', () => {
    const u = stored('u-shape').question;
    const effort = { candidates: 40, nodes: 5_000_000 };
    let proving = 0;
    const plan = planSpread(u, {
      areas: 'clipped',
      seed: 1,
      effort,
      // asked 256 steps apart, by then every candidate is done
      onProgress: (done, of) => {
        if (done === of) proving += 1;
        return proving < 3;
      },
    });
    expect(proving).toBe(3);
    if (plan.kind !== 'plan') throw new Error('no plan');
    expect(plan.stopped).toBe(true);
    expect(plan.proof).toBeUndefined();
  });

  it('keeps a given sequence among its candidates', () => {
    const problem = spreadProblem(question, 'whole');
    const [good] = search(problem, { effort: { candidates: 3000, nodes: 0 }, seed: 1 });
    if (!good) throw new Error('no plan');
    const also = [solutionOf(problem, good)];
    const plan = planSpread(question, { areas: 'whole', seed: 2, effort: { candidates: 40, nodes: 0 }, also });
    expect(plan.kind).toBe('plan');
    if (plan.kind !== 'plan') return;
    const alone = planSpread(question, { areas: 'whole', seed: 2, effort: { candidates: 40, nodes: 0 } });
    if (alone.kind !== 'plan') throw new Error('no plan');
    expect(plan.best.score.score).toBeLessThanOrEqual(alone.best.score.score);
  });
});
