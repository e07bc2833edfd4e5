import { readFileSync } from 'node:fs';
import { answered, catalogueFrom, jobFrom, plan, type Result, type SpreadSeen } from '@slabwright/core';
import { expect, test } from 'vitest';
import { cellsOf } from './cells.ts';
import { askedOf, type Coat, cellsFor, coatMark, coatOn, seenFor } from './coats.ts';
import { judged, judgedOutlines } from './judge.ts';

const READER = { locale: 'en-US', units: 'imperial' } as const;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

// biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
const file = (name: string): any =>
  JSON.parse(readFileSync(new URL(`../../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));

// biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
function spreadOf(change: (option: any) => void = () => undefined) {
  const job = file('job');
  job.options = job.options.slice(0, 1);
  change(job.options[0]);
  const seen: SpreadSeen[] = [];
  const made = plan({
    job: must(jobFrom(job)),
    catalogue: must(catalogueFrom(file('catalogue'))),
    now: '2026-05-12T18:00:00-06:00',
    spread: 40,
    onSpread: (one) => seen.push(one),
  });
  const found = made.options[0]?.spread;
  if (!found || !answered(found)) throw new Error('no spread');
  const planned = (coat: Coat) => {
    const one = seenFor(seen, askedOf(coat));
    if (one?.result.kind !== 'plan') throw new Error('no plan');
    return { question: one.question, result: one.result };
  };
  return { coats: found.coats, seen, planned };
}

test('a drawing that begins with the planned pours is judged as planned, and in another order as that', () => {
  const { coats, planned } = spreadOf();
  for (const coat of coats) {
    const { problem, solution, check } = planned(coat).result;
    const pours = coat.pours.map(({ outline }, k) => ({ ring: outline[0] ?? [], planned: k + 1 }));
    expect(pours.length).toBeGreaterThan(1);
    const asPlanned = judgedOutlines(problem, pours, solution.pours, READER);
    expect(asPlanned).toMatchObject({ ok: true, breaks: [] });
    expect(asPlanned.figures).toEqual(judged(problem.question, solution, READER).figures);
    expect(check.ok).toBe(true);
    expect(judgedOutlines(problem, [...pours].reverse(), solution.pours, READER).ok).toBe(false);
  }
});

test('the days of a floor that takes several are looked at and judged each by itself', () => {
  const { coats, seen, planned } = spreadOf((option) => {
    option.workday = { from: '11:30', until: '12:06' };
  });
  const days = coats.filter(({ layer, day }) => layer === 'base' && day);
  expect(days.length).toBeGreaterThan(1);
  const cells = seen.flatMap((one) => cellsOf(one) ?? []);
  expect(new Set(coats.map(coatMark)).size).toBe(coats.length);
  for (const coat of days) {
    expect(coatOn(coats, undefined, coatMark(coat))).toBe(coat);
    const { question, result } = planned(coat);
    expect(cellsFor(cells, coat)?.x).toHaveLength(result.problem.squares.count);
    expect(judged(question, result.solution, READER).ok).toBe(true);
  }
});
