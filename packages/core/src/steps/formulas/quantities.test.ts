import { expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import { areaAtBreak, depthAtBreak, surplusAtBreak } from './quantities-breaks.ts';
import { additionShare, componentShare, packMakes, packsMake, usablePart } from './quantities-components.ts';
import { componentLasts, jointPacksMake, mixReaches } from './quantities-joint.ts';
import { wholeBags, wholeKits } from './quantities-packs.ts';
import { filmBeforeThinning, neededVolume } from './quantities-volumes.ts';

test('surplus and loss are two numbers: 20 L with 20 % are 24 L and 25 L (Own)', () => {
  expect(evaluate(neededVolume, { net: 0.02, surplus: 0.2, loss: 0 }).value).toBeCloseTo(0.024, 12);
  expect(evaluate(neededVolume, { net: 0.02, surplus: 0, loss: 0.2 }).value).toBeCloseTo(0.025, 12);
});

test('whole kits: 30 of 15 are two, three tenths of three tenths one, a litre more is one more (Own, exact)', () => {
  const kits = (needed: number, each: number): number => evaluate(wholeKits, { needed, each }).value;
  expect(kits(0.03, 0.015)).toBe(2);
  expect(kits((0.1 * 3) / 1000, 0.3 / 1000)).toBe(1);
  expect(kits(0.031, 0.015)).toBe(3);
  // Half a millilitre is the quantum of a decision about volumes.
  expect(kits(0.0300004, 0.015)).toBe(2);
  expect(kits(0.0300006, 0.015)).toBe(3);
  expect(kits(0, 0.015)).toBe(0);
  expect(() => kits(0.03, 0)).toThrow(FormulaRefused);
});

test('whole bags: 1,898 kg in bags of 25 kg are 76 (Own); half a gram is the quantum', () => {
  const bags = (needed: number): number => evaluate(wholeBags, { needed, each: 25 }).value;
  expect(bags(1897.7)).toBe(76);
  expect(bags(1900.0004)).toBe(76);
  expect(bags(1900.0006)).toBe(77);
});

test('a tint adds to the kit without being part of its ratio: 0.5 L in 4 and 2 L is a thirteenth (Own)', () => {
  const parts = [2, 1];
  expect(evaluate(componentShare, { part: 2, parts }).value).toBeCloseTo(2 / 3, 12);
  const given = { volumes: [0.004, 0.002], parts, additions: [0.0005], counted: [0.0005] };
  expect(evaluate(additionShare, given).value).toBeCloseTo(1 / 13, 12);
});

test('a kit off its ratio makes what the scarcer part allows (Own)', () => {
  expect(evaluate(packMakes, { volumes: [0.004, 0.003], shares: [2 / 3, 1 / 3] }).value).toBeCloseTo(0.006, 12);
  expect(evaluate(packsMake, { counts: [2, 3], makes: [0.01, 0, 0, 0.006] }).value).toBeCloseTo(0.018, 12);
  expect(() => evaluate(packsMake, { counts: [2, 3], makes: [0.01, 0, 0] })).toThrow(FormulaRefused);
  expect(evaluate(usablePart, { volume: 0.004, yields: 0.0057, volumes: [0.004, 0.002] }).value).toBeCloseTo(
    0.0038,
    12,
  );
});

test('thinner is no coating: 343.75 µm with 10 % is 312.5 µm out of the pail (COMP of the thinning law)', () => {
  expect(evaluate(filmBeforeThinning, { wetFilm: 343.75e-6, thinnerRatio: 0.1 }).value).toBeCloseTo(312.5e-6, 12);
});

test('break points put back give the capacity (Own)', () => {
  const [area, film, depth, surplus] = [40, 0.3e-3, 0.05e-3, 0.08];
  const needed = (d: number, s: number, a: number): number => a * (film + d) * (1 + s);
  const total = needed(depth, surplus, area);
  const net = area * (film + depth);
  const capacity = total * 1.07;
  const turned = evaluate(depthAtBreak, { depth, area, net, toBuy: total, total, capacity }).value;
  expect(needed(turned, surplus, area)).toBeCloseTo(capacity, 12);
  const more = evaluate(surplusAtBreak, { surplus, toBuy: total, total, capacity }).value;
  expect(needed(depth, more, area)).toBeCloseTo(capacity, 12);
  const larger = evaluate(areaAtBreak, { area, total, capacity }).value;
  expect(needed(depth, surplus, larger)).toBeCloseTo(capacity, 12);
});

test('one part for two mixes: 45 L of A for 30 L at 2 : 1 and 30 L at 3 : 1 last for 60 × 45 ÷ 42.5 L (Own)', () => {
  const plain = { needed: [0.03, 0.03], shares: [2 / 3, 3 / 4], total: 0.06 };
  const lasts = (kits: readonly number[], loose: number): number =>
    evaluate(componentLasts, { ...plain, kits, loose }).value * 1000;
  expect(lasts([0, 0], 0.045)).toBeCloseTo((60 * 45) / 42.5, 9);
  // A kit that makes 36 L of the first leaves 27 L of A to the second alone: 36 L of it, so 72 L in all.
  expect(lasts([0.036, 0], 0.027)).toBeCloseTo(72, 9);
  // Beyond that both draw: 33.375 L of A are 27 L and 6.375 L, which last 4.5 L of each longer.
  expect(lasts([0.036, 0], 0.033375)).toBeCloseTo(81, 9);
  expect(lasts([0.033, 0.036], 0)).toBeCloseTo(66, 9);
  expect(evaluate(jointPacksMake, { lasts: [0.0635, 0.06] }).value).toBeCloseTo(0.06, 12);
  const reach = evaluate(mixReaches, { covered: [0.03, 0.03], left: [0.0025, 0.0025], shares: [3 / 4, 1 / 4] });
  expect(reach.value * 1000).toBeCloseTo(30 + 2.5 / 0.75, 9);
});
