import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { UNITS, type Unit } from '../kernel/unit.ts';
import { convert, toSI } from './convert.ts';
import { decimalMarkOf } from './digits.ts';
import { formatQuantity } from './format.ts';
import { KINDS, type Kind } from './kinds.ts';
import type { MeasuredUnit } from './listed.ts';
import { parseAny, parseQuantity } from './parse.ts';
import { slipsBetween } from './suggest.ts';
import { intoSI, outOfSI, type TradeUnit, unitNamed, unitsOf } from './trade-unit.ts';

const everyUnit: readonly TradeUnit[] = UNITS.flatMap((unit) => unitsOf(unit));
const anyUnit = fc.constantFrom(...everyUnit);
const system = fc.constantFrom('imperial' as const, 'metric' as const);
const locale = fc.constantFrom('en-US', 'es-ES', 'de-DE', 'en-GB', 'es-MX');
// Numbers so small that a floating number has lost digits already (below 1e-300) keep no law.
const ordinary = fc
  .double({ min: -1e6, max: 1e6, noNaN: true })
  .filter((value) => value === 0 || Math.abs(value) > 1e-200);

const closeTo = (found: number, wanted: number, share: number, floor = 0): boolean =>
  Math.abs(found - wanted) <= Math.max(share * Math.abs(wanted), floor);

const mustParse = (text: string, unit: Unit, decimalMark: '.' | ',' = '.'): number => {
  const parsed = parseQuantity(text, unit, { decimalMark });
  if (!parsed.ok) throw new Error(`${text} was refused: ${JSON.stringify(parsed.trouble)}`);
  return parsed.quantity.value;
};

describe('conversion', () => {
  it('there and back is the same to 1e-12, for every unit', () => {
    for (const unit of everyUnit) {
      fc.assert(
        fc.property(ordinary, (value) => {
          // An offset scale loses digits near its zero: 32 °F is the size to compare with there.
          const back = outOfSI(intoSI(value, unit), unit);
          expect(closeTo(back, value, 1e-12, 1e-12 * Math.abs(unit.zero))).toBe(true);
        }),
        { numRuns: 20 },
      );
    }
  });

  it('scales: twice the reading is twice the value, but for temperatures', () => {
    fc.assert(
      fc.property(anyUnit, ordinary, (unit, value) => {
        fc.pre(unit.zero === 0);
        expect(intoSI(2 * value, unit)).toBe(2 * intoSI(value, unit));
      }),
    );
  });

  it('a difference of two thermometer readings is the same difference converted', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -200, max: 400, noNaN: true }),
        fc.double({ min: -200, max: 400, noNaN: true }),
        (a, b) => {
          const difference = toSI(a, '°F').value - toSI(b, '°F').value;
          expect(closeTo(difference, toSI(a - b, 'F°').value, 1e-9, 1e-9)).toBe(true);
        },
      ),
    );
  });

  it('an area is a length twice and a volume three times', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('in', 'ft', 'yd', 'm', 'mm'),
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        (name, side) => {
          const length = toSI(side, name).value;
          expect(closeTo(toSI(side ** 2, `${name}²`).value, length ** 2, 1e-12)).toBe(true);
          expect(closeTo(toSI(side ** 3, `${name}³`).value, length ** 3, 1e-12)).toBe(true);
        },
      ),
    );
  });
});

describe('reading', () => {
  it('any unit by its own name gives what conversion gives', () => {
    fc.assert(
      fc.property(anyUnit, fc.double({ min: 0, max: 1e6, noNaN: true }), (unit, value) => {
        const text = unit.name === '1' ? String(value) : `${value} ${unit.name}`;
        expect(mustParse(text, unit.unit)).toBe(intoSI(value, unit));
      }),
      { numRuns: 500 },
    );
  });

  it('°F is never offset where a difference is expected', () => {
    fc.assert(
      fc.property(ordinary, (value) => {
        const found = mustParse(`${value} °F`, 'K');
        expect(closeTo(found, (value * 5) / 9, 1e-14)).toBe(true);
        expect(mustParse(`${value} °C`, 'K')).toBe(value === 0 ? found : value);
      }),
    );
  });

  it('feet, inches and sixteenths add up', () => {
    const whole = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(whole(500), whole(11), fc.integer({ min: 1, max: 15 }), (feet, inches, sixteenths) => {
        const wanted = (feet * 12 + inches + sixteenths / 16) * 0.0254;
        for (const text of [
          `${feet} ft ${inches} ${sixteenths}/16 in`,
          `${feet}' ${inches}-${sixteenths}/16"`,
          `${feet}'-${inches} ${sixteenths}/16"`,
        ]) {
          expect(closeTo(mustParse(text, 'm'), wanted, 1e-14)).toBe(true);
        }
      }),
    );
  });

  it('refuses every whole number with one thousands mark, offering both readings', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 999 }), anyUnit, (head, tail, unit) => {
        fc.pre(unit.name !== '1');
        const last = String(tail).padStart(3, '0');
        const parsed = parseQuantity(`${head},${last} ${unit.name}`, unit.unit);
        expect(parsed).toMatchObject({
          ok: false,
          trouble: { code: 'number-ambiguous', didYouMean: [`${head}${last}`, `${head}.${last}`] },
        });
      }),
    );
  });

  it('never throws and never yields a number that is not finite, whatever is typed', () => {
    const scrap = fc.constantFrom(
      ...'0 1 5 12 . , / - + e × 10⁻⁶ ½ ft in m² lb gal ( ) oz °F % RH 1000 ² ^ · " \' h min $'.split(' '),
      ' ',
    );
    const typed = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.array(scrap, { maxLength: 10 }).map((parts) => parts.join('')),
    );
    const measured = fc.constantFrom(...UNITS.filter((unit) => unitsOf(unit).length > 0));
    fc.assert(
      fc.property(typed, measured, (text, unit) => {
        const parsed = parseQuantity(text, unit);
        if (parsed.ok) expect(Number.isFinite(parsed.quantity.value)).toBe(true);
        else expect(parsed.trouble).toMatchObject({ typed: text, expected: unit });
        const any = parseAny(text);
        if (any.ok) expect(Number.isFinite(any.quantity.value)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('suggestions', () => {
  it('one slip in a unit of four letters or more still finds it', () => {
    const long = everyUnit.filter(({ name }) => /^[A-Za-z]{4,}$/.test(name));
    const words = [
      ...long.map(({ name, unit }) => [name, name, unit] as const),
      ['gallon', 'gal', 'm³'],
      ['inches', 'in', 'm'],
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...words),
        fc.nat(),
        fc.constantFrom('q', 'x', 'z', ''),
        ([word, name, unit], at, letter) => {
          const place = at % word.length;
          const typed = word.slice(0, place) + letter + word.slice(place + 1);
          fc.pre(unitNamed(typed) === undefined);
          const parsed = parseQuantity(`3 ${typed}`, unit);
          expect(parsed.ok ? [] : parsed.trouble.didYouMean).toContain(name);
        },
      ),
    );
  });

  it('slips are counted like a distance: none to itself, the same both ways, at most the longer word', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        expect(slipsBetween(a, a)).toBe(0);
        expect(slipsBetween(a, b)).toBe(slipsBetween(b, a));
        expect(slipsBetween(a, b)).toBeLessThanOrEqual(Math.max([...a].length, [...b].length));
        expect(slipsBetween(a, b) === 0).toBe(a === b);
      }),
    );
  });
});

/** Every kind with each SI unit it can show. */
const shownKinds = Object.entries(KINDS).flatMap(([kind, byUnit]) =>
  Object.keys(byUnit).map((unit) => [kind as Kind, unit as MeasuredUnit] as const),
);

/** Half of the last step shown, in SI, from the steps each kind states. */
const roundingOf = (kind: Kind, unit: MeasuredUnit, value: number, imperial: boolean): number => {
  if (kind === 'length' && imperial) return convertHalf('in', 1 / 16);
  if (kind === 'duration') {
    const size = Math.abs(value);
    if (size < 10) return 0.005 * size;
    if (size < 600) return 0.5;
    return size < 2 * 86_400 ? 30 : size < 14 * 86_400 ? 1800 : 43_200;
  }
  if (kind === 'count') return 0.5;
  // Mils of a crack have two digits.
  if (kind === 'small-length' && imperial && Math.abs(value) < 0.0032) return 0.05 * Math.abs(value);
  if (unit === '°C' || unit === 'K') return imperial ? 0.05 / 1.8 : 0.05;
  // Three digits at least: half of the last one is half a percent at most.
  return 0.005 * Math.abs(value);
};

const convertHalf = (name: string, step: number): number => toSI(step / 2, name).value;

describe('showing and reading again', () => {
  const value = fc.double({ min: 1e-3, max: 1e5, noNaN: true }).chain((size) => fc.constantFrom(size, -size));

  it('gives the value back within the digits shown', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownKinds),
        system,
        locale,
        value,
        ([kind, unit], inSystem, forLocale, valueSI) => {
          const { text } = formatQuantity(valueSI, unit, { kind, system: inSystem, locale: forLocale, forEntry: true });
          const again = mustParse(text, unit, decimalMarkOf(forLocale));
          const allowed =
            roundingOf(kind, unit, valueSI, inSystem === 'imperial') * (1 + 1e-9) + 1e-12 * Math.abs(valueSI);
          expect(Math.abs(again - valueSI)).toBeLessThanOrEqual(allowed);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('shows the same text for the value read again', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownKinds),
        system,
        locale,
        value,
        ([kind, unit], inSystem, forLocale, valueSI) => {
          const options = { kind, system: inSystem, locale: forLocale, forEntry: true };
          const { text } = formatQuantity(valueSI, unit, options);
          const again = mustParse(text, unit, decimalMarkOf(forLocale));
          const shownAgain = formatQuantity(again, unit, options).text;
          // Where rounding reaches the next unit of a ladder (999.9 mL) the same amount is told in that unit.
          if (shownAgain !== text) {
            expect(mustParse(shownAgain, unit, decimalMarkOf(forLocale))).toBeCloseTo(again, 9);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('a unit asked for with twelve digits comes back to 1e-11', () => {
    fc.assert(
      fc.property(anyUnit, locale, fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (unit, forLocale, reading) => {
        const valueSI = intoSI(reading, unit);
        const { text } = formatQuantity(valueSI, unit.unit, {
          system: 'metric',
          locale: forLocale,
          in: unit.name,
          digits: 12,
          forEntry: true,
        });
        const again = convert(mustParse(text, unit.unit, decimalMarkOf(forLocale)), unit.unit, unit.name);
        expect(closeTo(again, reading, 1e-11, 1e-11 * Math.abs(unit.zero))).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('shows no digit finer than the leading digit of half the band', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-3, max: 0.3, noNaN: true }),
        (area, share) => {
          const half = area * share;
          const { number } = formatQuantity(area, 'm²', {
            system: 'metric',
            locale: 'en-US',
            digits: 12,
            band: [area - half, area + half],
            forEntry: true,
          });
          const step = 10 ** Math.floor(Math.log10(half * (1 + 1e-12)));
          expect(Math.abs(Number(number) / step - Math.round(Number(number) / step))).toBeLessThan(1e-6);
          expect(Math.abs(Number(number) - area)).toBeLessThanOrEqual(step / 2 + 1e-9 * area);
        },
      ),
    );
  });
});
