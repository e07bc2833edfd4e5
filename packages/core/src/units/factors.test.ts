import { describe, expect, it } from 'vitest';
import { UNITS } from '../kernel/unit.ts';
import { convert, toSI } from './convert.ts';
import { asNumber, ratio, scale } from './ratio.ts';
import { dimensionWords, UNIT_NAMES_BY_DIMENSION, unitNamed, unitsOf } from './trade-unit.ts';

/** Exact sizes agree to the last places of a floating number. */
const LAST_PLACES = 4e-16;

const expectExact = (found: number, published: number): void => {
  expect(Math.abs(found / published - 1)).toBeLessThanOrEqual(LAST_PLACES);
};

/** A published figure is right to half a unit of its last digit. */
const expectPublished = (found: number, published: string): void => {
  const decimals = published.split('.')[1]?.length ?? 0;
  // A sliver above the half allows for the last place of the floating numbers compared.
  expect(Math.abs(found - Number(published))).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9));
};

describe('exact definitions (NIST SP 811 appendix B and NIST Handbook 44 appendix C, from memory)', () => {
  it.each([
    ['in', 0.0254, 'm'],
    ['ft', 0.3048, 'm'],
    ['yd', 0.9144, 'm'],
    ['mi', 1609.344, 'm'],
    ['mil', 2.54e-5, 'm'],
    ['in²', 6.4516e-4, 'm²'],
    ['ft²', 0.09290304, 'm²'],
    ['in³', 1.6387064e-5, 'm³'],
    ['ft³', 0.028316846592, 'm³'],
    ['gal', 3.785411784e-3, 'm³'],
    ['qt', 9.46352946e-4, 'm³'],
    ['pt', 4.73176473e-4, 'm³'],
    ['fl oz', 2.95735295625e-5, 'm³'],
    ['gal(imp)', 4.54609e-3, 'm³'],
    ['fl oz(imp)', 2.84130625e-5, 'm³'],
    ['L', 1e-3, 'm³'],
    ['mL', 1e-6, 'm³'],
    ['lb', 0.45359237, 'kg'],
    ['oz(av)', 0.028349523125, 'kg'],
    ['ton(US)', 907.18474, 'kg'],
    ['t', 1000, 'kg'],
    ['lbf', 4.4482216152605, 'N'],
    ['kgf', 9.80665, 'N'],
    ['mbar', 100, 'Pa'],
    ['bar', 1e5, 'Pa'],
    ['Btu', 1055.05585262, 'J'],
    ['mi/h', 0.44704, 'm/s'],
    ['cfm', 4.719474432e-4, 'm³/s'],
    ['week', 604_800, 's'],
    ['Btu/(lb °F)', 4186.8, 'J/(kg K)'],
    ['1/°F', 1.8, '1/K'],
    ['g/L', 1, 'kg/m³'],
    ['kg/L', 1000, 'kg/m³'],
    ['m²/L', 1000, '1/m'],
    ['N/mm²', 1e6, 'Pa'],
  ] as const)('one %s is %d %s', (name, size, unit) => {
    const found = toSI(1, name);
    expect(found.unit).toBe(unit);
    expectExact(found.value, size);
  });
});

describe('rounded factors of NIST SP 811 appendix B.8 (from memory), to their last digit', () => {
  it.each([
    ['psi', 'kPa', '6.894757'],
    ['ksi', 'MPa', '6.894757'],
    ['lb/ft³', 'kg/m³', '16.01846'],
    ['lb/ft²', 'kg/m²', '4.882428'],
    ['lb/gal', 'kg/m³', '119.8264'],
    ['lb/yd³', 'kg/m³', '0.5932764'],
    ['lbf/ft²', 'Pa', '47.88026'],
    ['inHg', 'Pa', '3386.389'],
    ['mmHg', 'Pa', '133.3224'],
    ['inH₂O', 'Pa', '249.0889'],
    ['hp', 'W', '745.6999'],
    ['Btu/h', 'W', '0.2930711'],
    ['Btu/(h ft °F)', 'W/(m K)', '1.730735'],
    ['Btu/(h ft² °F)', 'W/(m² K)', '5.678263'],
    ['ft lbf', 'N m', '1.355818'],
    ['acre', 'm²', '4046.856'],
  ] as const)('one %s in %s is %s', (from, to, published) => {
    const { value, unit } = toSI(1, from);
    expectPublished(convert(value, unit, to), published);
  });
});

describe("the trade's own compounds", () => {
  it('one US gallon spreads over 1604.17 ft² at one mil (formula page of an instrument maker, read)', () => {
    expectPublished(toSI(1, 'gal').value / toSI(1, 'mil').value / toSI(1, 'ft²').value, '1604.17');
  });
  it('one lb/1000 ft²·24 h is 56.51 µg/(s m²) and 4.882 g/(m²·24 h) (own arithmetic)', () => {
    const { value, unit } = toSI(1, 'lb/1000 ft²·24 h');
    expect(unit).toBe('kg/(m² s)');
    expectPublished(convert(value, unit, 'µg/(s m²)'), '56.51');
    expectPublished(convert(value, unit, 'g/(m²·24 h)'), '4.882');
  });
  it('one lb/gal is 119.826 g/L (own arithmetic)', () => {
    expectPublished(convert(toSI(1, 'lb/gal').value, 'kg/m³', 'g/L'), '119.826');
  });
  it('25 cfm for each inch of wheel is 0.46452 m²/s (own arithmetic)', () => {
    expectPublished(toSI(25, 'cfm/in').value, '0.46452');
  });
  it('five US gallons are 18.927 L (own arithmetic)', () => {
    expectPublished(convert(toSI(5, 'gal').value, 'm³', 'L'), '18.927');
  });
});

describe('temperature', () => {
  // Fixed points: ice and steam 32 and 212 °F by the definition of the scale; the scales meet at -40.
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [50, 10],
  ])('%d °F is %d °C', (fahrenheit, celsius) => {
    expect(toSI(fahrenheit, '°F')).toEqual({ value: celsius, unit: '°C' });
    expect(convert(celsius, '°C', '°F')).toBe(fahrenheit);
  });
  it('a difference has no offset', () => {
    expect(toSI(9, 'F°')).toEqual({ value: 5, unit: 'K' });
    expect(convert(5, 'K', '°F')).toBe(9);
    expect(convert(5, 'K', '°C')).toBe(5);
  });
});

describe('names', () => {
  it('offers units for every SI unit of the core but money', () => {
    for (const unit of UNITS) {
      const isMoney = unit.startsWith('money');
      expect(unitsOf(unit).length > 0).toBe(!isMoney);
      if (!isMoney) expect(convert(1, unit, unit)).toBe(1);
    }
  });
  it('gives every dimension a code of its own, in letters and dashes', () => {
    const codes = UNITS.filter((unit) => !unit.startsWith('money')).map(dimensionWords);
    expect(new Set(codes).size).toBe(codes.length);
    for (const code of codes) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(Object.keys(UNIT_NAMES_BY_DIMENSION).sort()).toEqual([...codes].sort());
  });
  it('finds every listed unit by its own name', () => {
    for (const unit of UNITS) {
      for (const listed of unitsOf(unit)) expect(unitNamed(listed.name)).toBe(listed);
    }
  });
  it.each([
    ['MILS', 'mil'],
    ['Gallons', 'gal'],
    ['sqft', 'ft²'],
    ['sq. ft.', 'ft²'],
    ['SF', 'ft²'],
    ['ft^2', 'ft²'],
    ['m2', 'm²'],
    ['square metres', 'm²'],
    ['cu ft', 'ft³'],
    ['um', 'µm'],
    ['μm', 'µm'],
    ['microns', 'µm'],
    ['PSI', 'psi'],
    ['ft^2 per gallon', 'ft²/gal'],
    ['lbs/1,000 sq. ft. per 24 hr', 'lb/1000 ft²·24 h'],
    ['g/m²/d', 'g/(m²·24 h)'],
    ['W/m²K', 'W/(m² K)'],
    ['W·m⁻²·K⁻¹', 'W/(m² K)'],
    ['kN/m²', 'kPa'],
    ['µm/m/°C', 'µm/(m K)'],
    ['/°F', '1/°F'],
    ['in/in/°F', '1/°F'],
    ['kg/kg', '1'],
    ['ft-lbf', 'ft lbf'],
    ['degF', '°F'],
    ['deg C', '°C'],
    ['C', '°C'],
    ['F', '°F'],
    ['Δ°F', 'F°'],
    ['%RH', '% RH'],
    ['imp. gal', 'gal(imp)'],
    ['US gal', 'gal'],
    ['oz(fl)', 'fl oz'],
    ['fluid ounces', 'fl oz'],
    ['oz avdp', 'oz(av)'],
    ['oz wt', 'oz(av)'],
    ['in. w.g.', 'inH₂O'],
    ['pcf', 'lb/ft³'],
    ['″', 'in'],
    ['′', 'ft'],
  ])('reads %s as %s', (spelling, name) => {
    const found = unitNamed(spelling);
    expect(found?.name).toBe(name);
  });
  it('does not guess between two units or across a prefix', () => {
    for (const name of ['oz', 'ounces', 'ton', 'mPa', 'Mg', 'foo', '', '()', '(m', 'm)', 'm0.5']) {
      expect(unitNamed(name)).toBeUndefined();
    }
  });
});

describe('mistakes of code', () => {
  it('throws for a unit that does not exist or is of another dimension', () => {
    expect(() => convert(1, 'm', 'foo')).toThrow('no unit is named foo');
    expect(() => convert(1, 'm', 'kg')).toThrow('kg is no unit of length (m)');
    expect(() => toSI(1, 'oz')).toThrow('no unit is named oz');
  });
});

describe('exact fractions', () => {
  it('keeps simple decimals free of rounding', () => {
    expect(scale(250, ratio(1n, 1_000_000n))).toBe(0.00025);
    expect(toSI(8, 'mil').value).toBe(0.0002032);
  });
  it('becomes the nearest floating number, large or small', () => {
    expect(asNumber(ratio(1n, 3n))).toBe(1 / 3);
    expect(asNumber(ratio(10n ** 40n))).toBe(1e40);
    expect(asNumber(ratio(1n, 10n ** 40n))).toBe(1e-40);
  });
  it('survives factors too long for whole floating numbers, and huge values', () => {
    expect(scale(2, ratio(10n ** 30n, 7n))).toBeCloseTo(2e30 / 7, -16);
    expect(scale(1e305, ratio(1_000_000n, 1_000_001n)) / 1e305).toBeCloseTo(0.999999, 9);
  });
  it('refuses a denominator that is not positive', () => {
    expect(() => ratio(1n, 0n)).toThrow(RangeError);
  });
});
