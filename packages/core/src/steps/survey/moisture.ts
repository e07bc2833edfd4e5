import { tabled } from '../../data/tabled.ts';
import counts from '../../data/test-counts.json' with { type: 'json' };
import type { MoistureTest } from '../../job.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { emissionRate, testsNeeded } from '../../science/moisture/index.ts';
import { meanOfValues } from '../../science/statistics/index.ts';
import { givenCount, givenField, type StepContext } from '../context.ts';
import type { MoistureJudged, SurveyPlan } from '../results.ts';
import { above } from '../system/limits.ts';
import { givesNumber, whyNotCounted } from './moisture-rules.ts';
import { pressureFromBelow } from './pressure.ts';

export interface MoistureFound {
  readonly plan: SurveyPlan['moisture'];
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  readonly notes: readonly Said[];
}

/** The reading as an entry: as typed, or the emission worked out from the mass a dish gained. */
function readingOf(trace: Trace, test: MoistureTest): Known | undefined {
  const parts = { ...(test.where ? { where: test.where } : {}), ...(test.on ? { when: test.on } : {}) };
  const field = test.method === 'ASTM F1869' ? test.emission : (test.humidity ?? test.content);
  if (field) return givenField(trace, 'reading', field, 'reading', parts);
  if (test.method !== 'ASTM F1869' || !test.massGain || !test.dishArea || !test.wait) return undefined;
  try {
    return trace.figure('reading', emissionRate, {
      massGain: givenField(trace, 'mass-gain', test.massGain, 'reading', parts),
      exposure: givenField(trace, 'exposure', test.wait, 'reading', parts),
      dishArea: givenField(trace, 'dish-area', test.dishArea, 'reading', parts),
    });
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return undefined;
  }
}

/** A row of the table of counts, each number with its source. */
export function countNeeded(trace: Trace, test: string, area: Known<'m²'>): Figure<'1'> {
  const row = counts.counts.find((count) => count.test === test);
  if (!row) throw new Error(`no count of tests for ${test}`);
  const from = { origin: 'table', source: row.source } as const;
  return trace.figure('needed', testsNeeded, {
    area,
    firstArea: trace.given('first-area', {
      ...from,
      value: tabled(row.firstArea, 'm²'),
      unit: 'm²',
      typed: row.firstArea,
      shows: 'area',
    }),
    firstTests: trace.given('first-tests', { ...from, value: row.firstTests, unit: '1', shows: 'count' }),
    furtherArea: trace.given('further-area', {
      ...from,
      value: tabled(row.furtherArea, 'm²'),
      unit: 'm²',
      typed: row.furtherArea,
      shows: 'area',
    }),
    furtherTests: trace.given('further-tests', { ...from, value: row.furtherTests, unit: '1', shows: 'count' }),
  });
}

/** The highest reading that counts of each method, in the order the methods were used. The first of equals stays. */
function highestByMethod(tests: readonly MoistureJudged[]): SurveyPlan['moisture']['highest'] {
  const found = new Map<string, MoistureJudged>();
  for (const test of tests) {
    if (!test.counts || !test.value) continue;
    const before = found.get(test.method)?.value;
    if (!before || test.value.value > before.value) found.set(test.method, test);
  }
  return [...found].map(([method, { value, where }]) => ({
    method,
    value: value as Known,
    ...(where ? { where } : {}),
  }));
}

/** A higher reading that does not count is no result, and no reason to look away either. */
function higherNotCounted(
  tests: readonly MoistureJudged[],
  highest: SurveyPlan['moisture']['highest'],
): readonly Reason[] {
  return highest.flatMap(({ method, value }) =>
    tests
      .filter((test) => !test.counts && test.method === method && test.value && above(test.value.value, value.value))
      .map(
        (test): Reason => ({
          verdict: 'caution',
          code: 'survey-moisture-higher-not-counted',
          figures: { reading: (test.value as Known).id, highest: value.id },
          names: { where: test.where ?? test.id },
          lift: { code: 'survey-moisture-higher-not-counted-lift', names: { where: test.where ?? test.id } },
        }),
      ),
  );
}

const dampSheet = (test: MoistureTest): Reason => ({
  verdict: 'caution',
  code: 'survey-sheet-damp',
  names: { where: test.where ?? test.id },
  source: 'astm-d4263-2018-excerpt',
});

const HELD: readonly Missing[] = [
  {
    path: 'survey.moisture.tests',
    fact: { code: 'survey-missing-moisture' },
    changes: { code: 'survey-missing-moisture-changes' },
    meanwhile: 'held',
  },
];

/** Where the mean would look drier than the wettest place by two points or more, both are said: the highest decides. */
function meanHides(
  trace: Trace,
  highest: SurveyPlan['moisture']['highest'],
  counted: readonly MoistureJudged[],
): readonly Said[] {
  return highest.flatMap(({ method, value, where }) => {
    const values = counted.filter((test) => test.method === method).flatMap((test) => (test.value ? [test.value] : []));
    if (value.unit !== '1' || values.length < 3) return [];
    const mean = trace.figure(`mean.${method.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`, meanOfValues, { values });
    if (!above(value.value - mean.value, TOLD_APART)) return [];
    return [
      {
        code: 'survey-moisture-mean-hides',
        figures: { mean: mean.id, highest: value.id },
        names: { where: where ?? '@one-place' },
      },
    ];
  });
}

/** Two points of humidity: what a probe tells apart (common practice, no source). */
const TOLD_APART = 0.02;

/** What the moisture tests of a survey prove, judged by the highest and never the mean. */
export function judgeMoisture(ctx: StepContext, trace: Trace, floor: Known<'m²'>): MoistureFound {
  const { survey } = ctx.job;
  const typed = survey.moisture?.tests ?? [];
  const tests = typed.map((test): MoistureJudged => {
    const value = readingOf(trace.within(`moisture-test.${test.id}`), test);
    const why: readonly Said[] = whyNotCounted(test, survey, ctx.now);
    // A dish whose numbers give no emission counts no more than one without numbers.
    const unreadable = value === undefined && why.length === 0 ? [{ code: 'survey-moisture-no-value' }] : why;
    return {
      id: test.id,
      method: test.method,
      ...(test.where ? { where: test.where } : {}),
      ...(value ? { value } : {}),
      counts: unreadable.length === 0,
      why: unreadable,
    };
  });
  const counted = tests.filter((test) => test.counts);
  const countedGiven = givenCount(trace, 'moisture-tests.counted', counted.length, 'reading');
  // Each method must cover the floor by itself: dishes do not make up for probes not drilled.
  const methods = [
    ...new Set((counted.length > 0 ? counted : tests.filter((t) => givesNumber(t.method))).map((t) => t.method)),
  ];
  const best = methods
    .map((method) => ({ method, places: counted.filter((test) => test.method === method).length }))
    .sort((a, b) => b.places - a.places)[0];
  const needed = countNeeded(trace.within('moisture-tests'), best?.method ?? 'ASTM F2170', floor);
  const pressure = pressureFromBelow(survey);
  const highest = highestByMethod(tests);
  const reasons: Reason[] = [...pressure.reasons, ...higherNotCounted(tests, highest)];
  reasons.push(...typed.filter((test) => test.sheet === 'damp').map(dampSheet));
  if (counted.length === 0) {
    reasons.push({
      verdict: 'not known',
      code: typed.length === 0 ? 'survey-moisture-none' : 'survey-moisture-none-counts',
      lift: { code: 'survey-moisture-none-lift', figures: { needed: needed.id } },
    });
  } else if (best && best.places < needed.value) {
    const places = givenCount(trace, 'moisture-tests.places', best.places, 'reading');
    reasons.push({
      verdict: 'not known',
      code: 'survey-moisture-too-few',
      figures: { counted: places.id, needed: needed.id, floor: floor.id },
      names: { method: best.method },
      lift: { code: 'survey-moisture-too-few-lift', figures: { needed: needed.id } },
    });
  }
  return {
    plan: {
      tests,
      highest,
      needed,
      counted: countedGiven,
      pressureFromBelow: pressure.answer,
    },
    reasons,
    missing: counted.length === 0 ? HELD : [],
    notes: meanHides(trace.within('moisture-tests'), highest, counted),
  };
}
