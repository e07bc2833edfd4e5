import type { Unit } from '../kernel/unit.ts';
import { BASE_UNITS } from './base.ts';
import { isMeasured, LISTED, type MeasuredUnit, type System } from './listed.ts';
import { power, product, type Ratio, ratio, scale } from './ratio.ts';
import { type Expression, keyOf, spell } from './spelling.ts';

/** A unit people write, with its exact size in the SI unit it belongs to. */
export type TradeUnit = {
  /** The canonical name; it can be typed. */
  readonly name: string;
  /** What is printed after the number. */
  readonly shows: string;
  readonly unit: MeasuredUnit;
  /** SI units in one of these. */
  readonly size: Ratio;
  /** What this unit reads where the SI unit reads zero: 32 for °F, otherwise 0. */
  readonly zero: number;
  /** `both` where the trade writes the same unit on either side. */
  readonly system: System | 'both';
};

export type Meaning =
  | { readonly is: 'units'; readonly units: readonly [TradeUnit, ...TradeUnit[]] }
  /** Known units whose combination is no quantity of this trade. */
  | { readonly is: 'nameless'; readonly name: string }
  | { readonly is: 'unknown' }
  | { readonly is: 'ambiguous'; readonly spellings: readonly string[] };

const MEASURED = Object.keys(LISTED).filter((unit): unit is MeasuredUnit => isMeasured(unit as Unit));

/** On a scale a Fahrenheit or Celsius reading has an offset; anywhere else its degree is a difference. */
const SCALES: Readonly<Record<string, { difference: string; zero: number }>> = {
  '°F': { difference: 'F°', zero: 32 },
  '°C': { difference: 'K', zero: 0 },
};

const asDifferences = ({ exponents, number }: Expression): Expression => {
  const plain = new Map<string, number>();
  for (const [name, exponent] of exponents) {
    const base = SCALES[name]?.difference ?? name;
    plain.set(base, (plain.get(base) ?? 0) + exponent);
  }
  return { number, exponents: new Map([...plain].filter(([, exponent]) => exponent !== 0)) };
};

const scaleOf = ({ exponents, number }: Expression): string | undefined => {
  const [only, more] = [...exponents];
  if (only === undefined || more !== undefined || only[1] !== 1 || number.over !== 1n || number.under !== 1n)
    return undefined;
  return Object.hasOwn(SCALES, only[0]) ? only[0] : undefined;
};

const measure = ({ exponents, number }: Expression): { size: Ratio; dimension: string } => {
  const dimension = [0, 0, 0, 0, 0, 0, 0];
  let size = number;
  for (const [name, exponent] of exponents) {
    const base = BASE_UNITS.get(name);
    if (base === undefined) throw new Error(`no base unit is named ${name}`);
    size = product(size, power(base.size, exponent));
    base.dimension.forEach((count, place) => {
      dimension[place] = (dimension[place] ?? 0) + count * exponent;
    });
  }
  return { size, dimension: dimension.join(' ') };
};

/** Our own names must be readable by our own reader; a name that is not is a mistake in the list. */
const expressionOf = (name: string): Expression => {
  if (name === '1') return { exponents: new Map(), number: ratio(1n) };
  const spelt = spell(name);
  if (spelt.is !== 'expression') throw new Error(`the unit name ${name} cannot be read`);
  return spelt.expression;
};

const dimensionOf = (unit: MeasuredUnit): string => measure(asDifferences(expressionOf(unit))).dimension;

const unitsByDimension = (): ReadonlyMap<string, readonly MeasuredUnit[]> => {
  const found = new Map<string, MeasuredUnit[]>();
  for (const unit of MEASURED) {
    if (unit === '°C') continue;
    const dimension = dimensionOf(unit);
    found.set(dimension, [...(found.get(dimension) ?? []), unit]);
  }
  return found;
};

const BY_DIMENSION = unitsByDimension();

const shown = (name: string): string => name.replace('F°', '°F').replace(/^1\//, '/');

/** Units whose canonical name is for a keyboard; on paper they stand as the trade writes them. */
const SHOWN_AS: Readonly<Record<string, string>> = { 'oz(av)': 'oz wt', 'oz(av)/ft²': 'oz wt/ft²' };

const listedUnit = (unit: MeasuredUnit, name: string, system: System | 'both'): TradeUnit => {
  const expression = expressionOf(name);
  const { size, dimension } = measure(asDifferences(expression));
  if (dimension !== dimensionOf(unit)) throw new Error(`the unit ${name} is not listed under its own dimension`);
  const zero = unit === '°C' ? (SCALES[scaleOf(expression) ?? '']?.zero ?? 0) : 0;
  return { name, shows: SHOWN_AS[name] ?? shown(name), unit, size, zero, system };
};

const listedUnits = (unit: MeasuredUnit): readonly TradeUnit[] => {
  const { both, imperial, metric } = LISTED[unit];
  return [
    ...both.map((name) => listedUnit(unit, name, 'both')),
    ...imperial.map((name) => listedUnit(unit, name, 'imperial')),
    ...metric.map((name) => listedUnit(unit, name, 'metric')),
  ];
};

const UNITS_OF: ReadonlyMap<Unit, readonly TradeUnit[]> = new Map(MEASURED.map((unit) => [unit, listedUnits(unit)]));

const BY_KEY = new Map<string, TradeUnit[]>();
for (const units of UNITS_OF.values()) {
  for (const unit of units) {
    if (unit.unit === '°C') continue;
    const key = keyOf(asDifferences(expressionOf(unit.name)));
    BY_KEY.set(key, [...(BY_KEY.get(key) ?? []), unit]);
  }
}

/** The units offered for an SI unit of the core, the usual ones first; none for money, which has its own module. */
export const unitsOf = (unit: Unit): readonly TradeUnit[] => UNITS_OF.get(unit) ?? [];

/** A code for the message files: length, area, temperature, temperature-difference, share … */
export const dimensionWords = (unit: Unit): string => (isMeasured(unit) ? LISTED[unit].dimension : 'money');

/** Canonical unit names by dimension code, for pickers and error messages. */
export const UNIT_NAMES_BY_DIMENSION: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  MEASURED.map((unit) => [LISTED[unit].dimension, unitsOf(unit).map(({ name }) => name)]),
);

/** Base units whose one-word name inside this module is not what people write. */
const WRITTEN: Readonly<Record<string, string>> = {
  floz: 'fl oz',
  avoz: 'oz(av)',
  impgal: 'gal(imp)',
  impfloz: 'fl oz(imp)',
  uston: 'ton(US)',
  rh: '% RH',
  inhg: 'inHg',
  mmhg: 'mmHg',
  inwater: 'inH₂O',
};

/** Names a compound that no list holds, in a spelling the reader understands. */
const nameOf = ({ exponents, number }: Expression): string => {
  const written = (sign: 1 | -1): string[] =>
    [...exponents]
      .filter(([, exponent]) => Math.sign(exponent) === sign)
      .map(([name, exponent]) => [WRITTEN[name] ?? name, Math.abs(exponent)] as const)
      .map(([name, exponent]) => (exponent === 1 ? name : `${name}^${exponent}`));
  const over = [...(number.over === 1n ? [] : [String(number.over)]), ...written(1)].join(' ');
  const under = [...(number.under === 1n ? [] : [String(number.under)]), ...written(-1)].join(' ');
  return under === '' ? over || '1' : `${over || '1'}/(${under})`;
};

/** A compound of the trade's units that no list holds: it gets the listed name of the same size where there is one. */
const composed = (expression: Expression): Meaning => {
  const { size, dimension } = measure(expression);
  const name = nameOf(expression);
  const [first, ...others] = (BY_DIMENSION.get(dimension) ?? []).map((unit): TradeUnit => {
    const same = unitsOf(unit).find((listed) => listed.size.over === size.over && listed.size.under === size.under);
    return same ?? { name, shows: shown(name), unit, size, zero: 0, system: 'both' };
  });
  return first === undefined ? { is: 'nameless', name } : { is: 'units', units: [first, ...others] };
};

const meaningOfExpression = (expression: Expression): Meaning => {
  const plain = asDifferences(expression);
  const onScale = scaleOf(expression);
  const listed = BY_KEY.get(keyOf(plain)) ?? [];
  const units = [...unitsOf('°C').filter(({ name }) => name === onScale), ...listed];
  const [first, ...others] = units;
  return first === undefined ? composed(plain) : { is: 'units', units: [first, ...others] };
};

/** The canonical names, understood beforehand: most texts use one, and taking a text apart is the slow step. */
const BY_NAME: ReadonlyMap<string, Meaning> = new Map(
  [...UNITS_OF.values()].flat().map(({ name }) => [name, meaningOfExpression(expressionOf(name))]),
);

/** What a unit's text may mean. `°F` means a temperature first and a difference second. */
export const meaningOf = (text: string): Meaning => {
  const known = BY_NAME.get(text.trim());
  if (known !== undefined) return known;
  const spelt = spell(text);
  return spelt.is === 'expression' ? meaningOfExpression(spelt.expression) : spelt;
};

/** The unit of that name or spelling; undefined where the text names none, or two. */
export const unitNamed = (name: string): TradeUnit | undefined => {
  const meaning = meaningOf(name);
  return meaning.is === 'units' ? meaning.units[0] : undefined;
};

/** A reading in this unit, in SI. */
export const intoSI = (value: number, { size, zero }: TradeUnit): number => scale(value - zero, size);

/** The width of a span of SI values in this unit; a width has no offset. */
export const spanOutOfSI = (spanSI: number, { size }: TradeUnit): number =>
  scale(spanSI, { over: size.under, under: size.over });

/** An SI value, as this unit reads. */
export const outOfSI = (valueSI: number, unit: TradeUnit): number => spanOutOfSI(valueSI, unit) + unit.zero;
