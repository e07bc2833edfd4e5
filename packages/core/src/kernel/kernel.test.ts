import { describe, expect, test } from 'vitest';
import { wetFilmFromDry } from '../science/film/wet-from-dry.ts';
import { isEven, Z90 } from './band.ts';
import { canonicalText, checkMark, round9 } from './canonical.ts';
import { evaluate, formula } from './formula.ts';
import { addDays, daysBetween, fromLocal, instantIn, isDate, isZone } from './instant.ts';
import { pathText } from './issue.ts';
import { addMoney, lineAmount, moneyText, rateFromText, roundMinor } from './money.ts';
import { FormulaRefused } from './refusal.ts';
import { Ledger, Trace } from './trace.ts';
import { verdictOf, worst } from './verdict.ts';

const start = () => {
  const ledger = new Ledger();
  return { ledger, trace: new Trace(ledger) };
};

describe('trace', () => {
  test('a figure keeps the ids of what it was computed from', () => {
    const { trace, ledger } = start();
    const dryFilm = trace.given('dry', { value: 2.5e-4, unit: 'm', origin: 'data sheet' });
    const volumeSolids = trace.given('solids', { value: 0.8, unit: '1', origin: 'data sheet' });
    const wet = trace.within('coat').figure('wet', wetFilmFromDry, { dryFilm, volumeSolids });
    expect(wet.value).toBeCloseTo(3.125e-4, 12);
    expect(wet.inputs).toEqual({ dryFilm: 'dry', volumeSolids: 'solids' });
    expect([...ledger.entries.keys()]).toEqual(['dry', 'solids', 'coat.wet']);
  });

  test('an input outside the valid range flags the figure, one outside sense is refused', () => {
    const { trace } = start();
    const dry = trace.given('dry', { value: 0.02, unit: 'm', origin: 'chosen' });
    const solids = trace.given('solids', { value: 0.5, unit: '1', origin: 'chosen' });
    expect(trace.figure('thick', wetFilmFromDry, { dryFilm: dry, volumeSolids: solids }).outside).toEqual(['dryFilm']);
    const none = trace.given('none', { value: 0, unit: '1', origin: 'chosen' });
    expect(() => trace.figure('no', wetFilmFromDry, { dryFilm: dry, volumeSolids: none })).toThrow(FormulaRefused);
  });

  test('a cause shared by two inputs adds with its sign, separate causes add in quadrature', () => {
    const difference = formula({
      id: 'test/difference',
      says: 'x',
      equation: 'a - b',
      takes: { a: 'm', b: 'm' },
      gives: 'm',
      holds: {},
      source: 'test',
      compute: ({ a, b }) => a - b,
    });
    const { trace } = start();
    const a = trace.given('a', { value: 5, unit: 'm', origin: 'reading', causes: { tape: 0.03 } });
    const b = trace.given('b', { value: 2, unit: 'm', origin: 'reading', causes: { tape: 0.03 } });
    const c = trace.given('c', { value: 2, unit: 'm', origin: 'reading', causes: { other: 0.04 } });
    const same = trace.figure('same', difference, { a, b });
    expect(same.causes?.tape).toBeCloseTo(0, 9);
    const apart = trace.figure('apart', difference, { a, b: c });
    expect(apart.band?.[1]).toBeCloseTo(3 + Z90 * 0.05, 9);
  });

  test('a default that was not given enters the ledger as assumed', () => {
    const scaled = formula({
      id: 'test/scaled',
      says: 'x',
      equation: 'a k',
      takes: { a: 'm', k: '1' },
      gives: 'm',
      holds: {},
      defaults: { k: 2 },
      source: 'test',
      compute: ({ a, k }) => a * k,
    });
    const { trace, ledger } = start();
    const a = trace.given('a', { value: 3, unit: 'm', origin: 'reading' });
    expect(trace.figure('twice', scaled, { a }).value).toBe(6);
    expect(ledger.entries.get('twice~k')).toMatchObject({ origin: 'assumed', value: 2 });
  });

  test('two entries under one id are a mistake of ours', () => {
    const { trace } = start();
    trace.given('a', { value: 1, unit: 'm', origin: 'reading' });
    expect(() => trace.given('a', { value: 1, unit: 'm', origin: 'reading' })).toThrow(/two entries/);
  });
});

test('a formula can flag inputs that only together lie beyond it', () => {
  const overLimit = formula({
    id: 'test/room-left',
    says: 'Room left below a limit',
    equation: 'max(0, limit - used)',
    takes: { used: 'kg', limit: 'kg' },
    gives: 'kg',
    holds: { used: [0, 10], limit: [0, 10] },
    source: 'test',
    compute: ({ used, limit }) => Math.max(0, limit - used),
    flags: ({ used, limit }) => (used > limit ? ['used'] : []),
  });
  expect(evaluate(overLimit, { used: 1, limit: 2 })).toEqual({ value: 1, outside: [] });
  expect(evaluate(overLimit, { used: 3, limit: 2 })).toEqual({ value: 0, outside: ['used'] });
  expect(evaluate(overLimit, { used: 11, limit: 2 }).outside).toEqual(['used']);
  expect(evaluate(overLimit, { used: 12, limit: 11 }).outside).toEqual(['used', 'limit']);
});

test('the worst verdict wins in the order stop, not known, caution, go', () => {
  expect(worst(['go', 'caution', 'not known'])).toBe('not known');
  expect(worst([])).toBe('go');
  const verdict = verdictOf(
    [
      { code: 'a', verdict: 'caution' },
      { code: 'b', verdict: 'stop' },
    ],
    [{ code: 'b', by: 'Ines', on: '2026-05-13', why: 'owner insists' }],
  );
  expect(verdict.word).toBe('stop');
  expect(verdict.overrides).toHaveLength(1);
});

test('bands print as ± only where both sides agree within 20 %', () => {
  expect(isEven(10, [9, 11.2])).toBe(true);
  expect(isEven(10, [9, 11.3])).toBe(false);
});

test('money: decimals are exact, a line is rounded once, half a cent up', () => {
  expect(rateFromText('38.125', 'USD')).toBe(3812.5);
  expect(lineAmount(7.5, 3333)).toBe(24998);
  expect(roundMinor(0.5)).toBe(1);
  expect(() => addMoney({ currency: 'USD', minor: 1 }, { currency: 'EUR', minor: 1 })).toThrow(/EUR/);
  expect(moneyText({ currency: 'USD', minor: 495800 })).toBe('4958.00');
  expect(moneyText({ currency: 'JPY', minor: 4958 })).toBe('4958');
});

test('a local time in the night of the clock change is asked about', () => {
  expect(fromLocal('2026-03-08T02:30', 'America/Denver').kind).toBe('none');
  expect(fromLocal('2026-11-01T01:30', 'America/Denver').kind).toBe('two');
  expect(fromLocal('2026-05-13T07:30', 'America/Denver')).toEqual({
    kind: 'one',
    instant: '2026-05-13T07:30:00-06:00',
  });
  expect(instantIn(0, 'UTC')).toBe('1970-01-01T00:00:00+00:00');
  expect(isZone('Mars/Base')).toBe(false);
  expect([isDate('2026-02-30'), isDate('2026-02-28')]).toEqual([false, true]);
  expect(daysBetween('2026-02-27', '2026-03-01')).toBe(2);
  expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
});

test('canonical text sorts keys and keeps 9 significant digits', () => {
  expect(canonicalText({ b: 1 / 3, a: [-0, undefined] })).toBe('{"a":[0,null],"b":0.333333333}');
  expect(round9(123456789.4)).toBe(123456789);
  expect(checkMark({ a: 1 })).toMatch(/^[0-9A-F]{4} [0-9A-F]{2}$/);
  expect(() => canonicalText({ a: Number.NaN })).toThrow();
});

test('paths read the way a person finds the place', () => {
  expect(pathText(['areas', 0, 'outline', 3])).toBe('areas[0].outline[3]');
});
