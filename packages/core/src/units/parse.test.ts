import { describe, expect, it } from 'vitest';
import type { Unit } from '../kernel/unit.ts';
import { type Parsed, parseAny, parseQuantity } from './parse.ts';

const readValue = (parsed: Parsed): number => {
  if (!parsed.ok) throw new Error(`refused: ${JSON.stringify(parsed.trouble)}`);
  return parsed.quantity.value;
};

const troubleOf = (text: string, expected: Unit) => {
  const parsed = parseQuantity(text, expected);
  return parsed.ok ? undefined : parsed.trouble;
};

describe('lengths as the tape is read (inch 0.0254 m, foot 12 in: exact)', () => {
  it.each([
    ['12 ft 6 1/2 in', 150.5],
    ['12 ft. 6 1/2 in.', 150.5],
    [`12' 6-1/2"`, 150.5],
    [`12'-6 1/2"`, 150.5],
    ['12′6½″', 150.5],
    ['12 feet, 6.5 inches', 150.5],
    ['12 FT 6 1/2 IN', 150.5],
    ['6½ in', 6.5],
    ['6 ½ in', 6.5],
    ['6 1/2 in', 6.5],
    ['6-1/2 in', 6.5],
    ['1/16 in', 0.0625],
    ['⅛"', 0.125],
    ['1⁄4 in', 0.25],
    ["5'", 60],
    ['.5in', 0.5],
    ['2 yd 1 ft', 84],
    ['-12 ft 6 in', -150],
    ['−3 in', -3],
    ['+3 in', 3],
    ['3\u00a0in', 3],
    ['250 mils', 0.25],
  ])('%s', (text, inches) => {
    expect(readValue(parseQuantity(text, 'm'))).toBeCloseTo(inches * 0.0254, 15);
  });
});

describe('what the trade writes', () => {
  it.each([
    ['3.2 m', 'm', 3.2, 'm'],
    ['200 µm', 'm', 0.0002, 'µm'],
    ['8 mils', 'm', 0.0002032, 'mil'],
    ['5 gal', 'm³', 0.01892705892, 'gal'],
    ['5 gal(imp)', 'm³', 0.02273045, 'gal(imp)'],
    ['16 fl oz', 'm³', 0.000473176473, 'fl oz'],
    ['16 oz(av)', 'kg', 0.45359237, 'oz(av)'],
    ['1450 psi', 'Pa', 9_997_398.0751, 'psi'],
    ['150 lbf', 'N', 667.233242, 'lbf'],
    ['72 °F', '°C', 200 / 9, '°F'],
    ['-40 F', '°C', -40, '°F'],
    ['22.5 C', '°C', 22.5, '°C'],
    ['8.1 °F', 'K', 4.5, 'F°'],
    ['76 F', 'K', 380 / 9, 'F°'],
    ['4.5 K', 'K', 4.5, 'K'],
    ['4.5 °C', 'K', 4.5, 'K'],
    ['5.5e-6/°F', '1/K', 9.9e-6, '1/°F'],
    ['5.5 × 10⁻⁶ /°F', '1/K', 9.9e-6, '1/°F'],
    ['5.5x10^-6/F', '1/K', 9.9e-6, '1/°F'],
    ['10e-6 1/K', '1/K', 1e-5, '1/K'],
    ['78 %', '1', 0.78, '%'],
    ['78 % RH', '1', 0.78, '% RH'],
    ['0.78', '1', 0.78, '1'],
    ['1/4', '1', 0.25, '1'],
    ['100 ppm', '1', 0.0001, 'ppm'],
    ['1 h 20 min', 's', 4800, 'h'],
    ['2 days 4 hours', 's', 187_200, 'd'],
    ['25 min', 's', 1500, 'min'],
    ['3 lb/1000 ft²·24 h', 'kg/(m² s)', 1.6952873737e-7, 'lb/1000 ft²·24 h'],
    ['3 lbs per 1,000 sq ft per 24 hours', 'kg/(m² s)', 1.6952873737e-7, 'lb/1000 ft²·24 h'],
    ['2 1/2 gal', 'm³', 0.00946352946, 'gal'],
    ['160 ft²/gal', '1/m', 3926.7818796, 'ft²/gal'],
    ['6 m²/L', '1/m', 6000, 'm²/L'],
    ['420 g/L', 'kg/m³', 420, 'g/L'],
    ['3.5 lb/gal', 'kg/m³', 419.3924956, 'lb/gal'],
    ['300 cfm', 'm³/s', 0.141584233, 'cfm'],
    ['500 ft²/h', 'm²/s', 0.0129032, 'ft²/h'],
    ['0.3 kg/m²', 'kg/m²', 0.3, 'kg/m²'],
    ['101.3 kPa', 'Pa', 101_300, 'kPa'],
    ['12 W/m²K', 'W/(m² K)', 12, 'W/(m² K)'],
    ['50 kJ/mol', 'J/mol', 50_000, 'kJ/mol'],
  ] as const)('%s as %s', (text, unit, value, typedUnit) => {
    const parsed = parseQuantity(text, unit);
    expect(readValue(parsed) / value).toBeCloseTo(1, 9);
    expect(parsed).toMatchObject({ ok: true, quantity: { unit, typed: text, typedUnit } });
  });

  it('keeps the text exactly as it was entered', () => {
    const parsed = parseQuantity('  12 ft  6 in ', 'm');
    expect(parsed).toMatchObject({ ok: true, quantity: { typed: '  12 ft  6 in ', typedUnit: 'ft' } });
  });
});

describe('decimal mark', () => {
  it('reads the comma only for a reader who writes it', () => {
    expect(readValue(parseQuantity('1,5 m', 'm', { decimalMark: ',' }))).toBe(1.5);
    expect(readValue(parseQuantity('12,5 ft', 'm', { decimalMark: ',' }))).toBeCloseTo(3.81, 15);
    expect(troubleOf('1,5 m', 'm')).toMatchObject({ code: 'number-unreadable', didYouMean: ['1.5'] });
  });
  it('refuses a number that a thousands mark would change, with both readings', () => {
    expect(troubleOf('1,234 ft', 'm')).toMatchObject({ code: 'number-ambiguous', didYouMean: ['1234', '1.234'] });
    expect(parseQuantity('1.234 m', 'm', { decimalMark: ',' })).toMatchObject({
      ok: false,
      trouble: { code: 'number-ambiguous', didYouMean: ['1234', '1,234'] },
    });
  });
  it.each([
    ['1,234.5 ft', ['1234.5']],
    ['1,234,567 ft', ['1234567']],
    ['1 234 ft', ['1234']],
    ['0,234 ft', ['0.234']],
    ['0,5 ft', ['0.5']],
  ])('%s has one reading, which is offered', (text, didYouMean) => {
    expect(troubleOf(text, 'm')).toMatchObject({ code: 'number-unreadable', didYouMean });
  });
  it.each([
    '1.2.3 ft',
    '1,23,4 ft',
    '1,,2 ft',
    '1, ft',
    '1,23.4,5 ft',
    '12 34 ft',
    'about 5 ft',
    '$5 ft',
    '--5 ft',
    '.. ft',
  ])('%s has none', (text) => {
    const trouble = troubleOf(text, 'm');
    expect(trouble?.code).toBe('number-unreadable');
    expect(trouble?.didYouMean).toBeUndefined();
  });
});

describe('troubles name what was entered and what was expected', () => {
  it('a bare number needs a unit', () => {
    expect(troubleOf('3', 'm')).toEqual({
      code: 'unit-missing',
      typed: '3',
      didYouMean: ['ft', 'm', 'in', 'mm'],
      expected: 'm',
      expectedDimension: 'length',
    });
    expect(troubleOf(`12' 6`, 'm')?.code).toBe('unit-missing');
  });
  it('a mistyped unit gets near ones of the expected dimension', () => {
    expect(troubleOf('3 fet', 'm')).toMatchObject({ code: 'unit-unknown', got: 'fet', didYouMean: ['ft'] });
    expect(troubleOf('3 glalons', 'm³')?.didYouMean?.[0]).toBe('gal');
    expect(troubleOf('3 mPa', 'Pa')).toMatchObject({ code: 'unit-unknown', got: 'mPa' });
    expect(troubleOf('3 mPa', 'Pa')?.didYouMean).toContain('MPa');
    expect(troubleOf('3 xyzzy', 'm')?.didYouMean).toEqual(['ft', 'm', 'in']);
  });
  it('a unit of another dimension is named with both dimensions', () => {
    expect(troubleOf('3 kg', 'm')).toMatchObject({
      code: 'unit-wrong-dimension',
      got: 'kg',
      gotDimension: 'mass',
      expectedDimension: 'length',
    });
    expect(troubleOf('150 lb', 'N')).toMatchObject({ got: 'lb', gotDimension: 'mass', expectedDimension: 'force' });
    expect(troubleOf('150 lb', 'N')?.didYouMean?.[0]).toBe('lbf');
    expect(troubleOf('3 kg m', 'm')).toMatchObject({ code: 'unit-wrong-dimension', gotDimension: 'none' });
    expect(troubleOf('78 %', 'm')).toMatchObject({ gotDimension: 'share' });
    expect(troubleOf('3 ft 2 lb', 'm')).toMatchObject({ code: 'unit-wrong-dimension', got: 'lb' });
  });
  it('a difference is no temperature', () => {
    expect(troubleOf('72 K', '°C')).toMatchObject({
      code: 'unit-wrong-dimension',
      gotDimension: 'temperature-difference',
      expectedDimension: 'temperature',
      didYouMean: ['°F', '°C'],
    });
    expect(troubleOf('72 F°', '°C')?.code).toBe('unit-wrong-dimension');
  });
  it('a bare oz is refused with its two spellings, whatever is expected', () => {
    for (const expected of ['kg', 'm³', 'm'] as const) {
      expect(troubleOf('3 oz', expected)).toMatchObject({
        code: 'unit-ambiguous',
        got: 'oz',
        didYouMean: ['fl oz', 'oz(av)'],
      });
    }
    expect(troubleOf('2 lb 3 oz', 'kg')?.code).toBe('unit-ambiguous');
    expect(troubleOf('2 tons', 'kg')?.didYouMean).toEqual(['ton(US)', 't']);
  });
  it.each(['', ' ', 'ft', 'wide', '-'])('no number in "%s"', (text) => {
    expect(troubleOf(text, 'm')?.code).toBe('number-missing');
  });
  it.each(['1e999 m', '1/0 in', '5 0/0 in', '1e308 km'])('%s is not finite', (text) => {
    expect(troubleOf(text, 'm')?.code).toBe('not-finite');
  });
  it.each(['5 in 3 ft', '5 ft 3 ft', '5 ft 3 ft 2 in'])('%s is no way to write one length', (text) => {
    expect(troubleOf(text, 'm')).toMatchObject({ code: 'number-unreadable', got: 'ft' });
  });
  it('two readings of a thermometer cannot be added', () => {
    expect(troubleOf('20 C 5 F', '°C')?.code).toBe('number-unreadable');
  });
});

describe('any dimension', () => {
  it('takes the SI unit of what was written', () => {
    expect(parseAny('8 mils')).toMatchObject({ ok: true, quantity: { unit: 'm', typedUnit: 'mil' } });
    expect(parseAny('50 °F')).toMatchObject({ ok: true, quantity: { value: 10, unit: '°C' } });
    expect(parseAny('9 F°')).toMatchObject({ ok: true, quantity: { value: 5, unit: 'K' } });
    expect(parseAny('0.78')).toMatchObject({ ok: true, quantity: { value: 0.78, unit: '1' } });
    expect(parseAny('1,5 m', { decimalMark: ',' })).toMatchObject({ ok: true, quantity: { value: 1.5 } });
  });
  it('tells torque from energy by what was written', () => {
    expect(parseAny('5 N m')).toMatchObject({ ok: true, quantity: { unit: 'N m' } });
    expect(parseAny('5 kWh')).toMatchObject({ ok: true, quantity: { unit: 'J' } });
  });
  it('refuses with what may have been meant', () => {
    const parsed = parseAny('3 psii');
    expect(parsed).toMatchObject({ ok: false, trouble: { code: 'unit-unknown', typed: '3 psii', got: 'psii' } });
    expect(parsed.ok ? [] : parsed.trouble.didYouMean).toContain('psi');
    expect(parseAny('3 ft 2 lb')).toMatchObject({ ok: false, trouble: { code: 'unit-wrong-dimension', got: 'lb' } });
  });
});

it('money is not read as a physical quantity', () => {
  expect(() => parseQuantity('3 kg', 'money')).toThrow('money');
});
