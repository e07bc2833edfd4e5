import { describe, expect, test } from 'vitest';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { MESSAGES } from '../../words/messages.ts';
import { voice } from '../../words/say.ts';
import { checkCatalogue } from '../check/catalogue.ts';
import { catalogueOf } from '../testing/small-job.ts';
import { type Claim, claimsOf, compareProducts, doubtsOf, FAMILIES, judge, methodOf, readValue } from './index.ts';

type Draft = NonNullable<Parameters<typeof catalogueOf>[0]> extends (draft: infer D) => void ? D : never;
type Property = NonNullable<Draft['products'][number]['properties']>[number];

/** The small catalogue with these claims on its one sheet. */
const stating = (...properties: Property[]) =>
  catalogueOf((draft) => {
    const [product] = draft.products;
    if (product) {
      product.sheet.date = '2026-01-01';
      product.properties = properties;
    }
  });

const issuesOf = (...properties: Property[]) => checkCatalogue(stating(...properties));
const doubts = (...properties: Property[]) => {
  const [product] = stating(...properties).products;
  if (!product) throw new Error('no product');
  const ledger = new Ledger();
  const trace = new Trace(ledger);
  const said = doubtsOf(product, claimsOf(product, trace), trace);
  const speaker = voice('en', { locale: 'en-US', units: 'imperial' }, Object.fromEntries(ledger.entries));
  return { codes: said.map(({ code }) => code), texts: said.map(speaker.say) };
};

describe('reading a claim', () => {
  const [strength] = FAMILIES;
  const methods = strength?.methods ?? [];
  // Own arithmetic: 1 psi is 6894.757 Pa.
  test.each([
    ['2600 psi', 17_926_369, 17_926_369],
    ['20 to 30 MPa', 20e6, 30e6],
    ['20 MPa to 30 MPa', 20e6, 30e6],
    ['20–30 MPa', 20e6, 30e6],
    ['at least 20 MPa', 20e6, undefined],
    ['> 20 MPa', 20e6, undefined],
    ['≤ 20 MPa', undefined, 20e6],
    ['up to 20 MPa', undefined, 20e6],
  ])('%s', (typed, low, high) => {
    const read = readValue(typed, methods);
    if (!read.ok || read.value.kind !== 'number') throw new Error(JSON.stringify(read));
    const near = (at: number | undefined) => (at === undefined ? undefined : Math.round(at / 1e3));
    expect([near(read.value.low), near(read.value.high)]).toEqual([near(low), near(high)]);
  });
  test('words without a figure stay words', () => {
    expect(readValue('very strong', methods)).toEqual({ ok: true, value: { kind: 'words' } });
  });
  test('a pencil is a rank, and the letter of a tape rating is its method', () => {
    const hardness = FAMILIES.find(({ id }) => id === 'hardness')?.methods ?? [];
    const adhesion = FAMILIES.find(({ id }) => id === 'adhesion')?.methods ?? [];
    expect(readValue('4B', hardness)).toMatchObject({ value: { kind: 'rank', rank: 2 } });
    expect(readValue('4B', adhesion)).toMatchObject({ value: { kind: 'rank', rank: 4 } });
  });
  test.each([
    ['ASTM D638', 'ASTM D638', undefined],
    ['astm d-638', 'ASTM D638', undefined],
    ['D638', 'ASTM D638', undefined],
    ['ASTM D638-14', 'ASTM D638', '14'],
    ['ASTM D638-14(2020)', 'ASTM D638', '14'],
    ['ISO 527-2', 'ISO 527', undefined],
    ['ASTM D6388', undefined, undefined],
  ])('method %s', (typed, id, edition) => {
    const found = strength ? methodOf(strength, typed) : {};
    expect([found.method?.id, found.edition]).toEqual([id, edition]);
  });
});

describe('bad input is an issue with its place and way out', () => {
  test.each([
    ['another property’s unit', { what: 'tensile strength', value: '40 mg' }, 'evidence-unit-of-another-property'],
    ['a range upside down', { what: 'tensile strength', value: '30 to 20 MPa' }, 'evidence-range-upside-down'],
    ['no unit', { what: 'tensile strength', value: '2600' }, 'evidence-value-unreadable'],
    [
      'a mark that may be thousands or decimals',
      { what: 'tensile strength', value: '2,600 psi' },
      'evidence-value-unreadable',
    ],
    ['an unknown unit', { what: 'tensile strength', value: '2600 psy' }, 'evidence-value-unreadable'],
    ['off the scale', { what: 'hardness', method: 'ASTM D2240', value: '120' }, 'evidence-outside-scale'],
    ['solids above all', { what: 'solids', method: 'ASTM D2697', value: '101 %' }, 'evidence-outside-scale'],
  ])('%s', (_, property, code) => {
    const issues = issuesOf(property as Property);
    expect(issues.map((issue) => issue.code)).toEqual([code]);
    expect(issues[0]?.path).toEqual(['products', 0, 'properties', 0, 'value']);
    const [first] = issues;
    if (!first) throw new Error('no issue');
    const text = voice('en', { locale: 'en-US', units: 'metric' }, {}).sayIssue(first);
    expect(text).toContain(`"${(property as Property).value}"`);
    expect(text).not.toMatch(/\{|undefined|NaN/);
  });
  test('the ends of a scale still pass', () => {
    expect(issuesOf({ what: 'hardness', method: 'ASTM D2240', value: '100' })).toEqual([]);
    expect(issuesOf({ what: 'solids', method: 'ASTM D2697', value: '100 %' })).toEqual([]);
    expect(issuesOf({ what: 'hardness', method: 'ASTM D2240', value: '0' })).toEqual([]);
  });
});

describe('what deserves a second look', () => {
  const shore = { scale: 'D', thickness: '6 mm', dwell: '1 s', temperature: '23 °C' };
  // Usual ranges are assumed from common practice: tensile strength 500 to 12,000 psi.
  test.each([
    ['120000 psi', false],
    ['120100 psi', true],
    ['50 psi', false],
    ['49 psi', true],
    ['500 to 130000 psi', true],
  ])('tensile strength %s: more than ten times outside is %s', (value, flagged) => {
    const { codes } = doubts({ what: 'tensile strength', method: 'ASTM D638', value });
    expect(codes.includes('evidence-doubt-far-outside')).toBe(flagged);
  });
  test('an empty sheet, an undated one, a promise, a comparison with nothing', () => {
    expect(doubts().codes).toEqual(['evidence-doubt-sheet-empty']);
    expect(doubts({ what: 'lifetime', value: '20 years' }).codes).toEqual(['evidence-doubt-lifetime']);
    expect(doubts({ what: 'hardness', value: 'lasts a lifetime' }).codes).toEqual(['evidence-doubt-lifetime']);
    expect(doubts({ what: 'tensile strength', value: '4× stronger than epoxy' }).codes).toEqual([
      'evidence-doubt-times',
    ]);
  });
  test('mass without density, adhesion without failure mode, pull from metal, no method, method unknown', () => {
    expect(doubts({ what: 'wear', method: 'ASTM D4060', value: '40 mg' }).codes).toEqual(['evidence-doubt-mass']);
    expect(doubts({ what: 'adhesion', method: 'ASTM D7234', value: '400 psi' }).codes).toEqual([
      'evidence-doubt-no-mode',
    ]);
    const metal = doubts({ what: 'adhesion', method: 'ASTM D4541', value: '900 psi', failureMode: 'A/B' });
    expect(metal.codes).toEqual(['evidence-doubt-metal']);
    expect(doubts({ what: 'hardness', value: '80' }).codes).toEqual(['evidence-doubt-no-method']);
    const odd = doubts({ what: 'tensile strength', method: 'ASTM D6388', value: '40 MPa' });
    expect(odd.codes).toEqual(['evidence-doubt-method']);
    expect(odd.texts[0]).toContain('Nearest: ASTM D638');
  });
  test('a whole claim raises nothing; a property the table lacks is named with its nearest', () => {
    expect(doubts({ what: 'hardness', method: 'ASTM D2240', value: '80', conditions: shore }).codes).toEqual([]);
    expect(doubts({ what: 'hardnes', value: '80' }).texts[0]).toContain('Nearest: hardness');
  });
});

describe('a table of sheets', () => {
  const catalogue = catalogueOf((draft) => {
    const [one] = draft.products;
    if (!one) return;
    const sheet = (id: string, properties: Property[]) => ({ ...structuredClone(one), id, name: id, properties });
    const wear = (value: string, density?: string): Property => ({
      what: 'wear',
      method: 'ASTM D4060',
      value,
      conditions: { wheel: 'CS-17', load: '1 kg', cycles: 1000, ...(density ? { density } : {}) },
    });
    draft.products.push(
      sheet('a', [wear('95 mg', '1.15 g/cm³')]),
      sheet('b', [wear('60 mg', '1.05 g/cm³')]),
      sheet('c', [wear('40 mg')]),
    );
  });
  const ledger = new Ledger();
  const table = compareProducts(catalogue.products, new Trace(ledger));
  const [row] = table.rows;

  test('C53: 82.6 and 57.1 mm³ (own arithmetic), each with its working', () => {
    const volumes = (row?.claims ?? []).map(({ low }) => (low?.unit === 'm³' ? low.value * 1e9 : undefined));
    expect(volumes[0]).toBeCloseTo(82.6, 1);
    expect(volumes[1]).toBeCloseTo(57.1, 1);
    expect(volumes[2]).toBeUndefined();
    expect(ledger.entries.get('a.property-1.volume')).toMatchObject({ formula: 'surface/worn-volume' });
  });
  test('every pair has a verdict; the silent sheet is unknown, the density is asked for', () => {
    const pairs = Object.fromEntries((row?.pairs ?? []).map((pair) => [`${pair.first}-${pair.second}`, pair.verdict]));
    expect(pairs).toEqual({
      'resin-a': 'unknown',
      'resin-b': 'unknown',
      'resin-c': 'unknown',
      'a-b': 'comparable',
      'a-c': 'unknown',
      'b-c': 'unknown',
    });
    expect(table.ask.map(({ product, wanted }) => [product, wanted.map(({ code }) => code)])).toEqual([
      ['resin', ['evidence-ask-all']],
      ['c', ['evidence-ask-density']],
    ]);
  });
  test('no number stands outside the entries', () => {
    const bare = (value: unknown): boolean =>
      typeof value === 'number' ||
      (typeof value === 'object' && value !== null && Object.values(value).some((inner) => bare(inner)));
    for (const pair of row?.pairs ?? []) expect(bare({ ...pair, difference: undefined })).toBe(false);
  });
});

describe('sheets that leave out the method', () => {
  test('two sheets of one value without a method are never equal', () => {
    const [claim] = claimsOf(stating({ what: 'hardness', value: '80' }).products[0] as never, new Trace(new Ledger()));
    expect(judge(claim as Claim, claim as Claim).verdict).toBe('unknown');
  });
});

const sources = import.meta.glob(['./*.ts', '../governs/*.ts', '../needs/*.ts', '../check/evidence.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
}) as Readonly<Record<string, string>>;

test('every code of evidence, governs and needs has words', () => {
  const text = Object.entries(sources)
    .filter(([path]) => !/\.(test|prop)\.ts$/.test(path))
    .map(([, source]) => source)
    .join('\n');
  const used = new Set(
    [...text.matchAll(/'((?:evidence|governs|needs)-[a-z-]+[a-z])'/g)].map(([, code]) => code as string),
  );
  expect(used.size).toBeGreaterThan(80);
  expect([...used].filter((code) => !MESSAGES.en.has(code))).toEqual([]);
  for (const { id, methods } of FAMILIES) {
    expect(MESSAGES.en.has(`evidence-property-${id}`), id).toBe(true);
    expect(MESSAGES.en.has(`evidence-unlike-${id}`), id).toBe(true);
    const keys = methods.flatMap(({ must }) => must);
    for (const key of keys) {
      const code = `evidence-condition-${key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
      expect(MESSAGES.en.has(code), code).toBe(true);
    }
  }
});
