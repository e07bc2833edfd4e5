import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { answered, plan } from '../../plan.ts';
import { weatherFrom } from '../../weather.ts';
import { voice } from '../../words/index.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

// biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
const file = (name: string): any =>
  JSON.parse(readFileSync(new URL(`../../../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));

function planned(spread: 'none' | number, starts: 'chosen' | 'sought') {
  const job = file('job');
  job.options = job.options.slice(0, 1);
  if (starts === 'sought') delete job.options[0].starts;
  const made = plan({
    job: must(jobFrom(job)),
    catalogue: must(catalogueFrom(file('catalogue'))),
    weather: must(weatherFrom(file('weather'))),
    now: '2026-05-12T18:00:00-06:00',
    spread,
  });
  const [option] = made.options;
  if (!option?.day || !answered(option.day)) throw new Error('no day');
  const poured = option.spread && answered(option.spread) ? option.spread : undefined;
  const value = (id: string | undefined): number => {
    const entry = id === undefined ? undefined : made.entries[id];
    if (!entry || !('value' in entry)) throw new Error(`no value for ${id}`);
    return entry.value;
  };
  return { made, day: option.day, spread: poured, value };
}

describe.each(['chosen', 'sought'] as const)('starts %s', (starts) => {
  const { made, day, spread, value } = planned(24, starts);

  test('the plan tells how many rounds it took, and the last moved no start', () => {
    expect(value(spread?.rounds)).toBeGreaterThanOrEqual(starts === 'chosen' ? 1 : 2);
    expect(value(spread?.rounds)).toBeLessThanOrEqual(starts === 'chosen' ? 1 : 3);
    expect(value(spread?.moved)).toBeLessThan(300);
    const wanted = starts === 'chosen' ? 'spread-hours-of-chosen-starts' : 'spread-hours-settled';
    const note = spread?.notes.find(({ code }) => code === wanted);
    const { say } = voice('en', { locale: 'en-US', units: 'imperial' }, made.entries);
    expect(note && say(note)).toMatch(/took one round|in turn, [23] rounds/);
  });

  test('the pours start when the day says, and the day knows how long they take', () => {
    for (const coat of spread?.coats ?? []) {
      const own = day.coats.find(({ layer }) => layer === coat.layer);
      expect(coat.start).toBe(own?.start?.at);
      const apart = Date.parse(coat.laid ?? '') - Date.parse(own?.start?.laid ?? '');
      // both are told in whole minutes
      expect(Math.abs(apart)).toBeLessThanOrEqual(60_000);
      expect(coat.openFrom).toBe('day');
    }
  });
});

test('without pours the day stands on the rates alone', () => {
  const rates = planned('none', 'chosen');
  const poured = planned(24, 'chosen');
  const laying = ({ day, value }: typeof rates) => value(day.coats[0]?.laying);
  expect(rates.made.entries['flake.day.base.laying-by-rates']).toBeUndefined();
  expect(poured.value('flake.day.base.laying-by-rates')).toBe(laying(rates));
  expect(laying(poured)).not.toBe(laying(rates));
});
