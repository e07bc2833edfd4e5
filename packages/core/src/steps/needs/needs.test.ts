import { describe, expect, test } from 'vitest';
import { SOURCES } from '../../data/sources.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { voice } from '../../words/say.ts';
import { needIssues } from '../check/evidence.ts';
import type { OptionContext } from '../context.ts';
import { FAMILIES, readValue } from '../evidence/index.ts';
import type { NeedsPlan } from '../results.ts';
import { type CatalogueDraft, catalogueOf, type JobDraft, jobOf, NOW } from '../testing/small-job.ts';
import { needs } from './index.ts';
import { ROWS } from './rows.ts';

type Properties = NonNullable<CatalogueDraft['products'][number]['properties']>;

function needsOf(
  use: JobDraft['use'],
  properties: Properties = [],
  change: { readonly job?: (job: JobDraft) => void; readonly catalogue?: (draft: CatalogueDraft) => void } = {},
) {
  const catalogue = catalogueOf((draft) => {
    const [product] = draft.products;
    if (product && properties.length > 0) product.properties = properties;
    change.catalogue?.(draft);
  });
  const job = jobOf((draft) => {
    draft.use = { ...use };
    change.job?.(draft);
  });
  const [option] = job.options;
  const [system] = catalogue.systems;
  if (!option || !system) throw new Error('no option');
  const ledger = new Ledger();
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const ctx: OptionContext = { job, catalogue, now: NOW, seed: 1, option, system, products };
  const plan: NeedsPlan = needs(ctx, new Trace(ledger).within('needs'));
  const speaker = voice('en', { locale: 'en-US', units: 'imperial' }, Object.fromEntries(ledger.entries));
  const said = plan.needs.flatMap((need) => [need.why, ...need.judged, ...need.tests.flatMap((t) => t.conditions)]);
  return {
    job,
    plan,
    met: (id: string) => plan.needs.find((need) => need.id === id)?.met,
    ids: plan.needs.map(({ id }) => id),
    reasons: plan.verdict.reasons.map(({ code, verdict }) => [code, verdict]),
    texts: [...said, ...plan.notes, ...plan.missing.flatMap(({ fact, changes }) => [fact, changes])].map(speaker.say),
  };
}

const slip = (value: string, state?: 'wet' | 'dry', method = 'EN 16165 pendulum'): Properties => [
  { what: 'slip', method, value, ...(state ? { conditions: { state } } : {}) },
];

describe('must-haves that follow from the use', () => {
  test.each([
    [{ traffic: 'foot' }, ['bond-light']],
    [{ traffic: 'vehicle', hotTyres: 'yes' }, ['bond-severe', 'wear', 'hot-tyres']],
    [{ traffic: 'forklift' }, ['bond-severe', 'wear', 'impact']],
    [{ slip: 'some grip', water: 'washed' }, ['slip-some-wet']],
    [{ slip: 'some grip', water: 'dry' }, ['slip-some-dry']],
    [{ slip: 'much grip' }, ['slip-much']],
    [{ slip: 'smooth' }, []],
    [{ sun: 'yes' }, ['light']],
    [{ sun: 'no' }, []],
    [{ chemicals: ['brine', 'oil'] }, ['chemical-1', 'chemical-2']],
    [{ smellMatters: 'yes' }, ['smell']],
    [{ footBy: '2026-06-11T08:00:00Z', vehicleBy: '2026-06-14T08:00:00Z' }, ['foot', 'vehicle']],
  ] as const)('%j asks for %j', (use, ids) => {
    const found = needsOf(use as JobDraft['use']);
    expect(found.ids).toEqual(ids);
    for (const text of found.texts) expect(text).not.toMatch(/\{|undefined|NaN|\bsafe\b|compliant/i);
  });
  test('every row of the table has a source under its mark, limits its method can have, and its words', () => {
    for (const row of ROWS) {
      const family = FAMILIES.find(({ id }) => id === row.what);
      for (const test of row.tests) {
        const method = family?.methods.find(({ id }) => id === test.method);
        expect(method, `${row.id}: ${test.method}`).toBeDefined();
        expect(SOURCES.get(test.source ?? '')?.mark, row.id).toBe((test as { readonly mark?: string }).mark);
        for (const limit of [test.least, test.most])
          if (limit && method) expect(readValue(limit, [method]).ok, limit).toBe(true);
      }
    }
  });
  test('a use that nobody stated is named with what it decides', () => {
    const { plan } = needsOf({});
    expect(plan.missing.map(({ path }) => path)).toContain('use.traffic');
    expect(plan.missing.every(({ meanwhile }) => meanwhile === 'assumed')).toBe(true);
  });
  test('sun counts where a patch is drawn, by area, even when nobody said so', () => {
    const drawn = needsOf({}, [], {
      job: (job) => {
        const [area] = job.areas;
        if (area)
          area.sun = [
            {
              id: 'patch',
              outline: [
                ['0 m', '0 m'],
                ['1 m', '0 m'],
                ['1 m', '1 m'],
              ],
            } as never,
          ];
      },
    });
    expect(drawn.ids).toEqual(['light']);
    expect(drawn.texts).toContain('Sun reaches Room.');
  });
});

describe('held against the sheets', () => {
  const wet = { slip: 'some grip', water: 'washed' } as const;
  // Pendulum 36 and above is low slip potential; friction coefficient 0.42 wet (both read).
  test.each([
    ['36', 'wet', 'EN 16165 pendulum', 'met'],
    ['35', 'wet', 'EN 16165 pendulum', 'not met'],
    ['48', undefined, 'EN 16165 pendulum', 'not known'],
    ['60', 'dry', 'EN 16165 pendulum', 'not known'],
    ['30 to 40', 'wet', 'EN 16165 pendulum', 'not known'],
    ['0.42', 'wet', 'ANSI A326.3', 'met'],
    ['0.41', 'wet', 'ANSI A326.3', 'not met'],
    ['0.9', 'wet', 'ASTM C1028', 'not known'],
  ] as const)('slip %s %s by %s: %s', (value, state, method, met) => {
    expect(needsOf(wet, slip(value, state, method)).met('slip-some-wet')).toBe(met);
  });
  test('one test that shows it is enough beside one of another kind', () => {
    expect(needsOf(wet, [...slip('0.9', 'wet', 'ASTM C1028'), ...slip('40', 'wet')]).met('slip-some-wet')).toBe('met');
  });
  test('not met asks for care where it follows from the use, and stops nothing that no sheet shows', () => {
    expect(needsOf(wet, slip('20', 'wet')).reasons).toEqual([['needs-below-least', 'caution']]);
    const silent = needsOf(wet);
    expect(silent.plan.verdict.word).toBe('go');
    expect(silent.texts.join(' ')).toContain('says nothing of slip resistance');
  });
  test('adhesion: a bound may show it met, never unmet; without a failure mode it proves nothing', () => {
    const pull = (value: string, failureMode?: 'A' | 'A/B'): Properties => [
      { what: 'adhesion', method: 'ASTM D7234', value, ...(failureMode ? { failureMode } : {}) },
    ];
    const of = (value: string, mode?: 'A' | 'A/B') =>
      needsOf({ traffic: 'vehicle' }, pull(value, mode)).met('bond-severe');
    expect([of('300 psi', 'A/B'), of('299 psi', 'A/B')]).toEqual(['met', 'not met']);
    expect([of('310 psi', 'A'), of('250 psi', 'A')]).toEqual(['met', 'not known']);
    expect(of('900 psi')).toBe('not known');
  });
  test('wear: less is better, and only on the wheel, load and turns asked for', () => {
    const wear = (value: string, wheel = 'H-22'): Properties => [
      { what: 'wear', method: 'EN ISO 5470-1', value, conditions: { wheel, load: '1 kg', cycles: 1000 } },
    ];
    const of = (properties: Properties) => needsOf({ traffic: 'vehicle' }, properties).met('wear');
    expect([of(wear('3000 mg')), of(wear('3001 mg')), of(wear('100 mg', 'CS-17'))]).toEqual([
      'met',
      'not met',
      'not known',
    ]);
    const stated: Properties = [{ what: 'wear', method: 'ASTM D4060', value: '40 mg', conditions: { wheel: 'CS-17' } }];
    expect(of(stated)).toBe('not known');
  });
  test('a chemical is met only by its own reagent, whole conditions and plain words', () => {
    const all = {
      concentration: '20 %',
      exposure: '24 h',
      temperature: '23 °C',
      covered: 'open',
      rating: 'by eye',
    } as const;
    const of = (value: string, conditions: object) =>
      needsOf({ chemicals: ['Brine'] }, [{ what: 'chemical resistance', method: 'ASTM D1308', value, conditions }]).met(
        'chemical-1',
      );
    expect(of('no change', { ...all, reagent: 'brine' })).toBe('met');
    expect(of('slight stain', { ...all, reagent: 'brine' })).toBe('not known');
    expect(of('no change', { reagent: 'brine' })).toBe('not known');
    expect(of('no change', { ...all, reagent: 'oil' })).toBe('not known');
  });
  test('no law is filled in from memory: the VOC rule of the place waits for the firm', () => {
    const found = needsOf({}, [], {
      job: (job) => {
        job.place.jurisdiction = 'Halden County (invented)';
      },
    });
    expect(found.met('voc-rule')).toBe('not known');
    expect(found.texts.join(' ')).toContain('none is filled in from memory');
  });
});

describe('must-haves the job states itself', () => {
  const wet = { slip: 'some grip', water: 'washed' } as const;
  test('they replace what follows from the use, and a sheet that fails them stops', () => {
    const own = { what: 'slip', least: '50', method: 'EN 16165 pendulum', why: 'ramp to the yard' };
    const found = needsOf({ ...wet, needs: [own] }, slip('48', 'wet'));
    expect(found.ids).toEqual(['entered-1']);
    expect(found.reasons).toEqual([['needs-below-least', 'stop']]);
    expect(found.texts).toContain('ramp to the yard');
  });
  test('waived, a need is gone and the reason stays', () => {
    const found = needsOf({ ...wet, needs: [{ what: 'slip', why: 'nobody walks there', waived: true }] });
    expect(found.ids).toEqual([]);
    expect(found.texts).toContain('slip resistance was set aside: nobody walks there');
  });
  test('where less is better the value entered is the most', () => {
    const voc = (value: string) =>
      needsOf(
        { needs: [{ what: 'voc', least: '100 g/L', method: 'EPA Method 24', why: 'county rule 12 (invented)' }] },
        [{ what: 'voc', method: 'EPA Method 24', value }],
      ).met('entered-1');
    expect([voc('100 g/L'), voc('101 g/L')]).toEqual(['met', 'not met']);
  });
  test.each([
    [{ what: 'slipp', why: 'x' }, 'needs-property-unknown', ['use', 'needs', 0, 'what']],
    [{ what: 'slip', least: '36 psi', why: 'x' }, 'evidence-unit-of-another-property', ['use', 'needs', 0, 'least']],
    [
      { what: 'slip', method: 'EN 16165 pendulum', least: '500', why: 'x' },
      'evidence-outside-scale',
      ['use', 'needs', 0, 'least'],
    ],
  ])('%j is refused with its place', (need, code, path) => {
    const { job } = needsOf({ needs: [need] });
    const issues = needIssues(job);
    expect(issues.map((issue) => [issue.code, issue.path])).toEqual([[code, path]]);
    const [first] = issues;
    if (!first) throw new Error('no issue');
    expect(voice('en', { locale: 'en-US', units: 'metric' }, {}).sayIssue(first)).not.toMatch(/\{|undefined/);
  });
});
