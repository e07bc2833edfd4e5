import { expect, test } from 'vitest';
import type { PlanAnswer, PlanRequest } from './api.ts';
import { LatestPlan } from './client.ts';

const request = (locale: string, rest: Partial<PlanRequest> = {}): PlanRequest => ({
  job: {} as PlanRequest['job'],
  catalogue: null,
  priceBook: null,
  weather: 'same',
  now: 0,
  locale,
  afresh: false,
  ...rest,
});

const refused: PlanAnswer = { ok: false, issues: [] };

test('while one plan is made only the newest question waits, and carries what a dropped one carried', async () => {
  const asked: PlanRequest[] = [];
  const done: ((answer: PlanAnswer) => void)[] = [];
  const latest = new LatestPlan(
    (one) => {
      asked.push(one);
      return new Promise((resolve) => done.push(resolve));
    },
    (trouble) => {
      throw trouble;
    },
  );
  const told: string[] = [];
  const catalogue = {} as NonNullable<PlanRequest['catalogue']>;
  latest.request(request('a'), () => told.push('a'));
  latest.request(request('b', { catalogue, weather: 'none', afresh: true }), () => told.push('b'));
  latest.request(request('c'), () => told.push('c'));
  expect(asked.map(({ locale }) => locale)).toEqual(['a']);
  done[0]?.(refused);
  await Promise.resolve();
  await new Promise((later) => setTimeout(later));
  expect(asked.map(({ locale }) => locale)).toEqual(['a', 'c']);
  expect(asked[1]).toMatchObject({ catalogue, weather: 'none', afresh: true });
  done[1]?.(refused);
  await new Promise((later) => setTimeout(later));
  expect(told).toEqual(['a', 'c']);
});

test('a failure is told and the next question still gets its answer', async () => {
  const troubles: unknown[] = [];
  let first = true;
  const latest = new LatestPlan(
    () => {
      if (!first) return Promise.resolve(refused);
      first = false;
      return Promise.reject(new Error('broke'));
    },
    (trouble) => troubles.push(trouble),
  );
  const told: string[] = [];
  latest.request(request('a'), () => told.push('a'));
  latest.request(request('b'), () => told.push('b'));
  await new Promise((later) => setTimeout(later));
  expect(String(troubles[0])).toContain('broke');
  expect(told).toEqual(['b']);
});
