import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { answered, type Plan, type PlanInput, plan, SOURCES, voice } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { GOLDEN_NOW, type GoldenName, goldenJob } from '../bench/src/golden.ts';
import { printPlan } from '../packages/cli/src/print/plan.ts';
import type { Terminal } from '../packages/cli/src/terminal.ts';

/** Regression: REGEN=1 rewrites the expected texts; a changed number is explained in the commit message. */
const REGEN = process.env.REGEN === '1';
const PLAIN: Terminal = { out: () => {}, err: () => {}, colour: false, width: 110, now: () => '' };

/** As the terminal plans it: with the order of pours. */
const inputOf = (name: GoldenName): PlanInput => ({ ...goldenJob(name), spread: 'quick' });

const planned = new Map<GoldenName, Plan>();
function planOf(name: GoldenName): Plan {
  const known = planned.get(name) ?? plan(inputOf(name));
  planned.set(name, known);
  return known;
}

/** Keys whose numbers are a drawing or an order, not figures. */
const DATA_KEYS = new Set(['outline', 'holes', 'arrow', 'mark', 'edge']);

/** Every number outside the table of entries that is not part of a drawing. */
function bareNumbers(value: unknown, path: string): readonly string[] {
  if (typeof value === 'number') return [path];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    DATA_KEYS.has(key) ? [] : bareNumbers(inner, `${path}.${key}`),
  );
}

describe.each(Object.keys(GOLDEN_NOW) as GoldenName[])('%s', (name) => {
  test('every number is a Figure or a Given with a source, none is NaN', () => {
    const made = planOf(name);
    const { entries, ...rest } = made;
    expect(bareNumbers(rest, 'plan')).toEqual([]);
    for (const entry of Object.values(entries)) {
      const numbers = entry.kind === 'list' || entry.kind === 'series' ? entry.values : [entry.value];
      for (const number of numbers) expect(Number.isFinite(number), entry.id).toBe(true);
      if (entry.kind === 'given') expect(entry.origin, entry.id).toBeTruthy();
      else expect(SOURCES.has(entry.source), `${entry.id} cites ${entry.source}`).toBe(true);
      const inputs = entry.kind === 'given' ? [] : Object.values(entry.inputs).flat();
      for (const input of inputs) expect(entries[input], `${entry.id} needs ${input}`).toBeDefined();
    }
  });

  test('every sentence of the plan has its words', () => {
    const made = planOf(name);
    const v = voice(
      'en',
      { locale: 'en-US', units: 'metric', ...(made.currency ? { currency: made.currency } : {}) },
      made.entries,
    );
    const say = (value: unknown): void => {
      if (value === null || typeof value !== 'object') return;
      if ('code' in value && typeof value.code === 'string' && !('by' in value))
        expect(v.say(value as never)).not.toMatch(/\bsafe\b|compliant/i);
      for (const inner of Object.values(value)) say(inner);
    };
    const { entries: _, ...rest } = made;
    say(rest);
  });

  test('planning twice gives the same plan', () => {
    expect(JSON.stringify(plan(inputOf(name)))).toBe(JSON.stringify(planOf(name)));
  });

  test('without a price book everything but the price is there', () => {
    const { priceBook: _, ...input } = goldenJob(name);
    const bare = plan(input);
    for (const option of bare.options) {
      expect(option.price.verdict.word).toBe('not known');
      expect(option.quantities.verdict.word).toBe(
        planOf(name).options.find((o) => o.id === option.id)?.quantities.verdict.word,
      );
    }
  });

  test('every coat that is planned passed the checker, ends at a door and keeps its times', () => {
    const { options, entries } = planOf(name);
    const value = (id: string | undefined): number => {
      const entry = id === undefined ? undefined : entries[id];
      return entry && 'value' in entry ? entry.value : Number.NaN;
    };
    for (const { spread } of options) {
      if (!spread || !answered(spread)) continue;
      for (const coat of spread.coats) {
        if (coat.state !== 'planned') continue;
        expect(value(coat.ageShare), coat.layer).toBeLessThanOrEqual(1);
        for (const pour of coat.pours) expect(pour.end <= pour.placeBy, `${coat.layer} ${pour.pour}`).toBe(true);
        expect(coat.pours.at(-1)?.ends.code).toBe('spread-end-way-out');
      }
    }
  });

  test('the plan reads as it did (regression)', () => {
    const input = inputOf(name);
    const made = planOf(name);
    const reader = {
      locale: 'en-US',
      units: input.job.reader.units,
      ...(made.currency ? { currency: made.currency } : {}),
      year: made.now.slice(0, 4),
    };
    const done = { ...input, plan: made, voice: voice('en', reader, made.entries) };
    const text = printPlan(done as never, PLAIN, 'notes');
    const folder = fileURLToPath(new URL(`./${name}/expected/`, import.meta.url));
    const file = `${folder}plan.txt`;
    if (REGEN || !existsSync(file)) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, text);
    }
    expect(text).toBe(readFileSync(file, 'utf8'));
  });
});
