import { describe, expect, it } from 'vitest';
import type { Unit } from '../kernel/unit.ts';
import { decimalMarkOf } from './digits.ts';
import { type FormatOptions, formatQuantity } from './format.ts';

type Extra = Omit<FormatOptions, 'system' | 'locale'>;

/** Text with plain spaces, so that a failing test can be read; the no-break spaces have a test of their own. */
const show = (value: number, unit: Unit, options: FormatOptions): string =>
  formatQuantity(value, unit, options).text.replaceAll('\u00a0', ' ');

const imperial = (value: number, unit: Unit, extra: Extra = {}): string =>
  show(value, unit, { system: 'imperial', locale: 'en-US', ...extra });

const metric = (value: number, unit: Unit, extra: Extra = {}): string =>
  show(value, unit, { system: 'metric', locale: 'en-US', ...extra });

describe('each kind in both systems (own arithmetic from the exact factors)', () => {
  it.each([
    [3.8227, 'm', {}, '12 ft 6 1/2 in', '3.823 m'],
    [0.0002032, 'm', { kind: 'film' }, '8 mil', '203 µm'],
    [0.003175, 'm', { kind: 'small-length' }, '0.125 in', '3.18 mm'],
    [0.0008, 'm', { kind: 'small-length' }, '31 mil', '0.8 mm'],
    [0.00317, 'm', { kind: 'small-length' }, '120 mil', '3.17 mm'],
    [92.90304, 'm²', {}, '1,000 ft²', '92.9 m²'],
    [1146.9, 'm²', {}, '12,345 ft²', '1,147 m²'],
    [0.01892705892, 'm³', {}, '5 gal', '18.9 L'],
    [0.000295735295625, 'm³', {}, '10 fl oz', '296 mL'],
    [3926.78, '1/m', {}, '160 ft²/gal', '3.93 m²/L'],
    [1200, 'kg/m³', {}, '10 lb/gal', '1.2 kg/L'],
    [2400, 'kg/m³', { kind: 'bulk-density' }, '150 lb/ft³', '2,400 kg/m³'],
    [250, 'kg/m³', { kind: 'voc' }, '250 g/L', '250 g/L'],
    [5e-8, 'kg/m³', { kind: 'concentration' }, '50 µg/m³', '50 µg/m³'],
    [1e-4, '1', { kind: 'concentration' }, '100 ppm', '100 ppm'],
    [0.784, '1', { kind: 'humidity' }, '78.4 % RH', '78.4 % RH'],
    [0.1234, '1', { kind: 'share' }, '12.3 %', '12.3 %'],
    [12, '1', {}, '12', '12'],
    [7, '1', { kind: 'count' }, '7', '7'],
    [200 / 9, '°C', {}, '72 °F', '22.2 °C'],
    [4.5, 'K', {}, '8.1 °F', '4.5 K'],
    [0, 'K', {}, '0 °F', '0 K'],
    [1.69528737e-7, 'kg/(m² s)', {}, '3 lb/1000 ft²·24 h', '14.6 g/(m²·24 h)'],
    [9.9e-6, '1/K', {}, '5.5 × 10⁻⁶ /°F', '9.9 × 10⁻⁶ /K'],
    [9.997e6, 'Pa', {}, '1,450 psi', '10 MPa'],
    [2000, 'Pa', {}, '0.29 psi', '2 kPa'],
    [101_325, 'Pa', { kind: 'pressure' }, '29.92 inHg', '1,013 hPa'],
    [2500, 'N', {}, '562 lbf', '2.5 kN'],
    [0.2359737216, 'm³/s', {}, '500 cfm', '850 m³/h'],
    [0.46452, 'm²/s', { kind: 'airflow' }, '25 cfm/in', '1,670 m²/h'],
    [4.88242764, 'kg/m²', {}, '1 lb/ft²', '4.88 kg/m²'],
    [10, 'kg', {}, '22 lb', '10 kg'],
    [0.05, 'kg', {}, '1.76 oz wt', '50 g'],
    [0.0129032, 'm²/s', {}, '500 ft²/h', '46.5 m²/h'],
    [0.0254, 'm/s', {}, '300 ft/h', '91.4 m/h'],
    [4800, 's', {}, '1 h 20 min', '1 h 20 min'],
    [1500, 'W', {}, '1.5 kW', '1.5 kW'],
    [16, 'A', {}, '16 A', '16 A'],
    [230, 'V', {}, '230 V', '230 V'],
    [50_000, 'J/mol', {}, '50 kJ/mol', '50 kJ/mol'],
    [880, 'J/(kg K)', {}, '0.2102 Btu/(lb °F)', '0.88 kJ/(kg K)'],
  ] as const)('%d %s %o', (value, unit, extra, inImperial, inMetric) => {
    expect(imperial(value, unit, extra)).toBe(inImperial);
    expect(metric(value, unit, extra)).toBe(inMetric);
  });
});

describe('feet and inches', () => {
  it.each([
    [0, '0 in'],
    [0.25, '1/4 in'],
    [6, '6 in'],
    [6.5, '6 1/2 in'],
    [11.99, '1 ft'],
    [12, '1 ft'],
    [12.0625, '1 ft 1/16 in'],
    [144, '12 ft'],
    [35.9375, '2 ft 11 15/16 in'],
    [150.4375, '12 ft 6 1/2 in'],
    [807.1, '67 ft 3 1/8 in'],
    [1683.1, '140 ft 3 in'],
    [-150, '-12 ft 6 in'],
    [-0.01, '0 in'],
    [15_006, '1,250 ft 6 in'],
  ])('%d in', (inches, text) => {
    expect(imperial(inches * 0.0254, 'm')).toBe(text);
  });
  it.each([
    [0.03, '10 ft 3 3/8 in'],
    [0.1, '10 ft 3 3/8 in'],
    [0.2, '10 ft 3 1/2 in'],
    [0.4, '10 ft 3 1/2 in'],
    [0.9, '10 ft 3 in'],
    [5, '10 ft 3 in'],
  ])('a band of ± %d in keeps only the fractions it supports', (half, text) => {
    const at = 123.42;
    expect(imperial(at * 0.0254, 'm', { band: [(at - half) * 0.0254, (at + half) * 0.0254] })).toBe(text);
  });
});

describe('lengths of time', () => {
  it.each([
    [0, '0 s'],
    [5.25, '5.25 s'],
    [45, '45 s'],
    [60, '1 min'],
    [450, '7 min 30 s'],
    [599.7, '10 min'],
    [1500, '25 min'],
    [3599, '1 h'],
    [4800, '1 h 20 min'],
    [36 * 3600, '36 h'],
    [172_799, '2 d'],
    [187_200, '2 d 4 h'],
    [14 * 86_400 + 5 * 3600, '14 d'],
    [-4800, '-1 h 20 min'],
  ])('%d s', (seconds, text) => {
    expect(metric(seconds, 's')).toBe(text);
  });
  it('a band keeps only the minutes it supports', () => {
    expect(metric(4860, 's', { band: [4800, 4920] })).toBe('1 h 21 min');
    expect(metric(4860, 's', { band: [4260, 5460] })).toBe('1 h 20 min');
    expect(metric(4860, 's', { band: [0, 9000] })).toBe('1 h');
    expect(metric(300, 's', { band: [0, 90_000] })).toBe('5 min');
  });
});

describe('digits', () => {
  it('never shows more than the band supports', () => {
    const area = 1146.9;
    expect(metric(area, 'm²', { band: [1146.85, 1146.95] })).toBe('1,147 m²');
    expect(metric(area, 'm²', { band: [1142, 1152] })).toBe('1,147 m²');
    expect(metric(area, 'm²', { band: [1100, 1200] })).toBe('1,150 m²');
    expect(metric(area, 'm²', { band: [900, 1400] })).toBe('1,100 m²');
    expect(metric(area, 'm²', { band: [0, 9000] })).toBe('1,000 m²');
    expect(metric(22.22, '°C', { band: [21, 23.5] })).toBe('22 °C');
    expect(imperial(200 / 9, '°C', { band: [22.2, 22.24] })).toBe('72 °F');
    expect(imperial(4.5, 'K', { band: [2, 7] })).toBe('8 °F');
  });
  it('what is rounded up to the next unit is told in it', () => {
    expect(metric(0.000953, 'm³', { band: [0, 0.0019] })).toBe('1 L');
    expect(metric(0.000953, 'm³')).toBe('953 mL');
    expect(metric(0.0009999, 'm³')).toBe('1 L');
    expect(metric(0.9996, 'kg')).toBe('1 kg');
  });
  it('the band outranks digits asked for', () => {
    expect(metric(1146.9, 'm²', { digits: 2 })).toBe('1,100 m²');
    expect(metric(1146.9, 'm²', { digits: 6 })).toBe('1,146.9 m²');
    expect(metric(1146.9, 'm²', { digits: 6, band: [1100, 1200] })).toBe('1,150 m²');
  });
  it('a band of no width changes nothing', () => {
    expect(metric(3.8227, 'm', { band: [3.8227, 3.8227] })).toBe('3.823 m');
    expect(imperial(3.8227, 'm', { band: [3.8227, 3.8227] })).toBe('12 ft 6 1/2 in');
  });
  it('writes very small and very large numbers by powers of ten in steps of three', () => {
    expect(metric(1.7e-7, 'kg/(m² s)', { in: 'kg/(m² s)' })).toBe('170 × 10⁻⁹ kg/(m² s)');
    expect(metric(1.234567e18, '1')).toBe('1.235 × 10¹⁸');
    expect(metric(-2.5e-8, '1')).toBe('-25 × 10⁻⁹');
  });
  it('has no negative zero', () => {
    expect(metric(-0.001, '°C')).toBe('0 °C');
    expect(metric(-0, '1')).toBe('0');
  });
});

describe('a unit asked for', () => {
  it('is used whatever the system', () => {
    expect(metric(3.81, 'm', { in: 'ft' })).toBe('12.5 ft');
    expect(imperial(200 / 9, '°C', { in: '°C' })).toBe('22.2 °C');
    expect(imperial(4.5, 'K', { in: '°F' })).toBe('8.1 °F');
    expect(metric(4800, 's', { in: 'min' })).toBe('80 min');
    expect(metric(0.01, 'm³', { in: 'gal(imp)' })).toBe('2.2 gal(imp)');
  });
});

describe('a reader of another language', () => {
  it('gets her own marks', () => {
    const spanish = { system: 'metric', locale: 'es-ES' } as const;
    expect(show(1146.94, 'm²', { ...spanish, digits: 6 })).toBe('1146,94 m²');
    expect(show(12_345.6, 'm²', spanish)).toBe('12.346 m²');
    expect(decimalMarkOf('es-ES')).toBe(',');
    expect(decimalMarkOf('en-US')).toBe('.');
  });
  it('gets no thousands mark in a field that is typed in again', () => {
    expect(metric(12_345.6, 'm²', { forEntry: true })).toBe('12346 m²');
    expect(imperial(15_006 * 0.0254, 'm', { forEntry: true })).toBe('1250 ft 6 in');
    // and keeps every sixteenth somebody read
    expect(imperial(807.0625 * 0.0254, 'm', { forEntry: true })).toBe('67 ft 3 1/16 in');
  });
});

describe('number and unit', () => {
  it('never part at the end of a line', () => {
    for (const text of [
      formatQuantity(3.8227, 'm', { system: 'imperial', locale: 'en-US' }),
      formatQuantity(1.7e-7, 'kg/(m² s)', { system: 'imperial', locale: 'en-US' }),
      formatQuantity(9.9e-6, '1/K', { system: 'metric', locale: 'en-US' }),
      formatQuantity(4800, 's', { system: 'metric', locale: 'en-US' }),
      formatQuantity(0.784, '1', { system: 'metric', locale: 'en-US', kind: 'humidity' }),
    ]) {
      expect(text.text).not.toMatch(/ /);
      expect(text.text).toBe(`${text.number}\u00a0${text.unit}`);
    }
    expect(formatQuantity(12, '1', { system: 'metric', locale: 'en-US' })).toEqual({
      text: '12',
      number: '12',
      unit: '',
    });
  });
});

describe('mistakes of code', () => {
  it('throws instead of showing them', () => {
    const options = { system: 'metric', locale: 'en-US' } as const;
    expect(() => formatQuantity(Number.NaN, 'm', options)).toThrow('not a finite number');
    expect(() => formatQuantity(Number.POSITIVE_INFINITY, 'm', options)).toThrow('not a finite number');
    expect(() => formatQuantity(1, 'money', options)).toThrow('money');
    expect(() => formatQuantity(1, 'kg', { ...options, kind: 'film' })).toThrow(
      'a value in kg cannot be shown as film',
    );
    expect(() => formatQuantity(1, 'kg', { ...options, in: 'm' })).toThrow('m is no unit of mass (kg)');
  });
});
