import { describe, expect, test } from 'vitest';
import { sourceOf } from '../../data/sources.ts';
import { COVERS } from '../../job.ts';
import type { Entry } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import checkWords from '../../words/en/check.json' with { type: 'json' };
import preparationWords from '../../words/en/preparation.json' with { type: 'json' };
import surveyWords from '../../words/en/survey.json' with { type: 'json' };
import { voice } from '../../words/say.ts';
import { checkJob } from '../check/job.ts';
import { METHOD_IDS } from '../preparation/index.ts';
import { coverKey } from '../survey/index.ts';
import { catalogueOf, jobOf, NOW, prepare } from './small-job.ts';

const sources = import.meta.glob('../{survey,preparation,check}/*.ts', {
  query: '?raw',
  import: 'default',
  eager: true,
}) as Readonly<Record<string, string>>;

const text = Object.entries(sources)
  .filter(([path]) => !/\.(test|prop)\.ts$/.test(path))
  .map(([, source]) => source)
  .join('\n');

const words: Readonly<Record<string, string>> = { ...surveyWords, ...preparationWords, ...checkWords };

/** Codes put together from a part, with the parts they are put together from. */
const MADE: readonly string[] = [
  ...METHOD_IDS.flatMap((id) => [`preparation-method-${id}`, `preparation-work-${id}`]),
  ...COVERS.map((what) => coverKey(what).slice(1)),
  ...['asbestos', 'lead'].map((name) => `survey-substance-${name}`),
  ...['remove-film', 'remove-tile', 'remove-levelling', 'second-pass', 'edge', 'edge-through-film', 'crack-fill'].map(
    (work) => `preparation-work-${work}`,
  ),
  ...['crack-reinforce', 'joint-fill', 'patch', 'oil-treat', 'stem-prep', 'vacuum'].map(
    (work) => `preparation-work-${work}`,
  ),
  ...['extremely-hard', 'hard', 'soft', 'extremely-soft', 'after-glazed', 'after-fast'].map(
    (bond) => `preparation-bond-${bond}`,
  ),
  ...['glazed', 'fast'].map((wear) => `survey-patch-wear-${wear}`),
  ...[
    'no-drawing',
    'outline-crosses-itself',
    'outline-needs-three-corners',
    'holes-larger-than-the-floor',
    'openings-longer-than-the-walls',
    'outside-range',
  ].map((why) => `survey-why-${why}`),
  ...[
    'surveyor',
    'year',
    'power',
    'access',
    'water',
    'height',
    'beside',
    'falls',
    'thickness',
    'scratch',
    'test-patch',
    'room',
    'door-edge',
    'exits',
  ].flatMap((name) => [`survey-missing-${name}`, `survey-missing-${name}-changes`]),
];

/** Ids of entries, files and rules that only look like codes. */
const NOT_CODES = new Set(['survey-common-practice']);

test('every code has words and all words have a code', () => {
  const found = [...text.matchAll(/['"@](@?(?:survey|preparation|check)-[a-z0-9-]+)['"]/g)].map((m) =>
    (m[1] as string).replace('@', ''),
  );
  const used = new Set(
    [...found, ...MADE, 'exit-off-the-wall', 'moisture-without-a-value', 'pull-off-without-a-value'].filter(
      (code) => !NOT_CODES.has(code),
    ),
  );
  expect([...used].filter((code) => !(code in words))).toEqual([]);
  expect(Object.keys(words).filter((code) => !used.has(code))).toEqual([]);
});

test('no word of comfort', () => {
  for (const sentence of Object.values(words)) expect(sentence).not.toMatch(/\b(safe|safely|compliant)\b/i);
});

type Draft = Parameters<NonNullable<Parameters<typeof jobOf>[0]>>[0];

/** A job on which as much as possible is wrong at once. */
const wreck = (job: Draft): void => {
  job.survey.onFloor = [
    { id: 'film', what: 'old coating', crossCuts: { tried: 3, failed: 2 } },
    { id: 'tile', what: 'tile', asbestos: 'found' },
    { id: 'unknown', what: 'not known' },
  ];
  job.survey.services = { tendons: 'yes', drains: 'yes' };
  job.survey.building = { roomEmptied: 'no', power: { phases: 1, voltage: '120 V', current: '15 A' } };
  if (job.survey.moisture?.signs) job.survey.moisture.signs.saltLine = 'yes';
  job.survey.testPatch = { on: '2026-06-08', method: 'grind', area: '1 m²', time: '3 min', wear: 'glazed', profile: 1 };
  job.survey.pullOffs = [
    { id: 'a', after: 'preparation', stress: '1 MPa', mode: 'A' },
    { id: 'b', after: 'preparation', stress: '1 MPa', mode: 'Y' },
  ];
  job.survey.afterPreparation = {
    waterDrops: [{ where: 'door', result: 'stays' }],
    dustTape: 'dusty',
    profiles: [{ where: 'door', profile: 1 }],
  };
  const [room] = job.areas;
  if (!room?.exits?.[0]) throw new Error('no room');
  room.exits[0].outside = true;
  room.spots = [
    { id: 'oil', kind: 'oil', at: ['1 m', '1 m'], area: '1 m²', waterDrop: 'stays' },
    { id: 'soft', kind: 'soft concrete', at: ['2 m', '1 m'], area: '1 m²' },
  ];
};

function everything(change?: (job: Draft) => void) {
  const { plan, surveyed, entries } = prepare(
    jobOf(change),
    catalogueOf((catalogue) => {
      delete catalogue.systems[0]?.profile;
      catalogue.tools = [
        { id: 'g', name: 'grinder', method: 'grind', mass: '180 kg', power: '4 kW', phases: 1, voltage: '120 V' },
        { id: 'e', name: 'edger', method: 'grind', wheel: '7 in', airflow: '100 cfm' },
      ];
    }),
  );
  const steps = [surveyed, plan];
  const reasons = [...steps.flatMap(({ verdict }) => verdict.reasons), ...plan.gate.reasons];
  const said: readonly Said[] = [
    ...reasons,
    ...reasons.flatMap(({ lift }) => (lift ? [lift] : [])),
    ...steps.flatMap(({ missing }) => missing.flatMap(({ fact, changes }) => [fact, changes])),
    ...steps.flatMap(({ notes }) => notes),
    ...plan.tooling,
    ...plan.dust,
    ...surveyed.moisture.tests.flatMap(({ why }) => why),
    ...plan.methods.flatMap(({ why }) => why),
    ...[...entries.values()].flatMap((entry) =>
      entry.kind === 'given' && entry.says ? [{ code: entry.says } as Said] : [],
    ),
  ];
  return { reasons, said, entries };
}

describe.each([
  ['a sound job', undefined],
  ['a wreck', wreck],
  [
    'an empty survey',
    (job: Draft) => {
      job.survey = {};
    },
  ],
] as const)('%s', (_, change) => {
  const { reasons, said, entries } = everything(change);

  test('is said whole, in both unit systems', () => {
    for (const units of ['imperial', 'metric'] as const) {
      const { say } = voice('en', { locale: 'en-US', units }, Object.fromEntries(entries) as Record<string, Entry>);
      for (const one of said) expect(say(one), one.code).not.toMatch(/[{}]|undefined|NaN/);
    }
  });

  test('every stop has a source and what would lift it; every source is in the bibliography or is an entry', () => {
    for (const { code, verdict, source, lift } of reasons) {
      if (verdict === 'stop') expect([code, lift !== undefined, source !== undefined]).toEqual([code, true, true]);
      if (source !== undefined && !entries.has(source)) expect(() => sourceOf(source), code).not.toThrow();
    }
    for (const entry of entries.values()) {
      if (entry.kind === 'given' && entry.source) expect(() => sourceOf(entry.source ?? ''), entry.id).not.toThrow();
    }
  });
});

test('every issue says where, what, the range and the way out', () => {
  const { sayIssue } = voice('en', { locale: 'en-US', units: 'metric' }, {});
  const found = checkJob(
    jobOf((job) => {
      const [room] = job.areas;
      if (!room) throw new Error('no room');
      room.outline = [
        ['0 m', '0 m'],
        ['12 in', '0 m'],
        ['12 in', '10 m'],
        ['0 m', '10 m'],
      ];
      job.areas.push({ id: 'room', name: 'Twin' });
      if (job.options[0]) job.options[0].system = 'two-cout';
      if (job.survey.building) job.survey.building.year = 2199;
      job.survey.pullOffs = [{ id: 'd', after: 'preparation', mode: 'A' }];
    }),
    catalogueOf(),
    NOW,
  );
  const sentences = found.map((issue) => sayIssue(issue).replaceAll('\u00a0', ' '));
  expect(sentences[0]).toBe(
    'areas[1].id is "room": that id stands already at place 0 of this list, counted from 0. Give each its own.',
  );
  expect(sentences[1]).toMatch(
    /^areas\[0\]\.outline\[1\]\[0\] is "12 in": the room would be .* across, outside .* to .*\. Did you mean 12 ft \/ 12 m\?$/,
  );
  for (const sentence of sentences) expect(sentence).not.toMatch(/[{}]|undefined|NaN/);
});
