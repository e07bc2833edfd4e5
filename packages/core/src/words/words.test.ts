import { expect, test } from 'vitest';
import { Ledger, Trace } from '../kernel/trace.ts';
import { voice } from './say.ts';
import { show, showBand } from './show.ts';

const reader = { locale: 'en-US', units: 'imperial', currency: 'USD' } as const;

test('money and its rates read in the currency of the plan', () => {
  const trace = new Trace(new Ledger());
  const price = trace.given('p', { value: 495818, unit: 'money', origin: 'price' });
  expect(show(price, reader)).toBe('$4,958.18');
  const rate = trace.given('r', { value: 12270, unit: 'money/m²', origin: 'price' });
  expect(show(rate, reader)).toBe('$11.40/ft²');
});

test('a band is ± where both sides agree, else its ends', () => {
  const trace = new Trace(new Ledger());
  const even = trace.given('a', { value: 4, unit: 'K', origin: 'reading', causes: { x: 0.5 } });
  expect(showBand(even, { ...reader, units: 'metric' })).toMatch(/^±0\.6/);
  const odd = trace.given('b', { value: 600, unit: 's', origin: 'reading', band: [300, 1200], shows: 'duration' });
  expect(showBand(odd, reader)).toContain('–');
});

test('an issue says where, what and the way out', () => {
  const v = voice('en', reader, {});
  expect(
    v.sayIssue({ code: 'out-of-range', path: ['areas', 0, 'name'], value: '3 in', limits: ['1 ft', '9 ft'] }),
  ).toBe('areas[0].name is "3 in"; it must lie between 1 ft and 9 ft.');
  expect(() => v.say({ code: 'no-such-code' })).toThrow(/no en message/);
});
