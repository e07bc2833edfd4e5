import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, plan } from '../../plan.ts';
import { voice } from '../../words/index.ts';
import { checkJob } from '../check/job.ts';
import type { SpreadSeen } from './index.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

// biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
const file = (name: string): any =>
  JSON.parse(readFileSync(new URL(`../../../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));

/** The garage spread by three people as the option says. */
function spreadAs(spread: object, people = 3) {
  const job = file('job');
  job.options = job.options.slice(0, 1);
  job.options[0].people = people;
  job.options[0].spread = spread;
  const read = must(jobFrom(job));
  const catalogue = must(catalogueFrom(file('catalogue')));
  const seen: SpreadSeen[] = [];
  const made = plan({
    job: read,
    catalogue,
    now: '2026-05-12T18:00:00-06:00',
    spread: 20,
    onSpread: (one) => seen.push(one),
  });
  const found = made.options[0]?.spread;
  if (!found || !answered(found)) throw new Error('no spread');
  return { made, found, question: seen[0]?.question, issues: checkJob(read, catalogue) };
}

test('the lane, the cutter, the broadcaster and the shoes of this crew are the planner’s', () => {
  const { question, made } = spreadAs({ lane: '0.4 m', cutters: 1, broadcasters: 1, spikedShoes: true }, 4);
  expect(question?.crew).toMatchObject({ laneM: 0.4, cutters: 1, broadcasters: 1, spikedShoes: true });
  expect(question?.cellM).toBe(0.4);
  expect(made.entries['flake.spread.base.lane']).toMatchObject({ origin: 'chosen', value: 0.4 });
});

test('what stays empty is assumed and said so', () => {
  const { question, made } = spreadAs({});
  expect(question?.mixAt).toEqual({ exit: 0 });
  expect(made.entries['flake.spread.base.lane']).toMatchObject({ origin: 'assumed', says: 'spread-lane-assumed' });
});

test('batches mixed on the floor keep a dry way to their place until the last', () => {
  const { question, found } = spreadAs({ mixAt: { area: 'main', at: ['10 ft', '2 ft'] } });
  expect(question?.mixAt).toEqual({ point: [expect.closeTo(3.048, 9), expect.closeTo(0.6096, 9)] });
  expect(found.coats.every(({ state }) => state === 'planned')).toBe(true);
});

test('a mixing place in a room nobody knows is named; hands that leave nobody to spread stop the coat', () => {
  expect(spreadAs({ mixAt: { area: 'mian', at: ['1 ft', '1 ft'] } }).issues[0]).toMatchObject({
    code: 'check-area-unknown',
    path: ['options', 0, 'spread', 'mixAt', 'area'],
    names: { suggestion: 'main' },
  });
  const { found, made } = spreadAs({ cutters: 2, broadcasters: 1 });
  const reason = found.verdict.reasons.find(({ code }) => code === 'spread-nobody-spreads');
  const { say } = voice('en', { locale: 'en-US', units: 'imperial' }, made.entries);
  expect(reason && say(reason)).toMatch(/nobody spreads/);
});
