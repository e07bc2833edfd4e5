import { power, product, quotient, type Ratio, ratio } from './ratio.ts';

/**
 * Every unit that is not made of others, with its exact size in coherent SI units.
 *
 * The definitions are those of the 1959 yard and pound agreement, the US gallon and the standard acceleration of free
 * fall, as tabulated in NIST SP 811 appendix B and NIST Handbook 44 appendix C (from memory; each is exact by
 * definition). A size is written here once; everything else, compound units included, is computed from it.
 */
export type Dimension = readonly [
  metre: number,
  kilogram: number,
  second: number,
  kelvin: number,
  mole: number,
  ampere: number,
  radian: number,
];

export type BaseUnit = { readonly size: Ratio; readonly dimension: Dimension };

const whole = (count: number): Ratio => ratio(BigInt(count));
const one = ratio(1n);

const LENGTH: Dimension = [1, 0, 0, 0, 0, 0, 0];
const AREA: Dimension = [2, 0, 0, 0, 0, 0, 0];
const VOLUME: Dimension = [3, 0, 0, 0, 0, 0, 0];
const MASS: Dimension = [0, 1, 0, 0, 0, 0, 0];
const TIME: Dimension = [0, 0, 1, 0, 0, 0, 0];
const DIFFERENCE: Dimension = [0, 0, 0, 1, 0, 0, 0];
const AMOUNT: Dimension = [0, 0, 0, 0, 1, 0, 0];
const CURRENT: Dimension = [0, 0, 0, 0, 0, 1, 0];
const ANGLE: Dimension = [0, 0, 0, 0, 0, 0, 1];
const SHARE: Dimension = [0, 0, 0, 0, 0, 0, 0];
const FORCE: Dimension = [1, 1, -2, 0, 0, 0, 0];
const STRESS: Dimension = [-1, 1, -2, 0, 0, 0, 0];
const ENERGY: Dimension = [2, 1, -2, 0, 0, 0, 0];
const POWER: Dimension = [2, 1, -3, 0, 0, 0, 0];
const VOLTAGE: Dimension = [2, 1, -3, 0, 0, -1, 0];
const FLOW: Dimension = [3, 0, -1, 0, 0, 0, 0];

const kilo = whole(1000);
const centi = ratio(1n, 100n);
const milli = ratio(1n, 1000n);
const micro = ratio(1n, 1_000_000n);

/** International inch: 25.4 mm exactly. */
const inch = ratio(254n, 10_000n);
const foot = product(inch, whole(12));
const yard = product(foot, whole(3));
/** Avoirdupois pound: 0.45359237 kg exactly. */
const pound = ratio(45_359_237n, 100_000_000n);
const ounce = quotient(pound, whole(16));
/** US gallon: 231 cubic inches exactly. */
const gallon = product(whole(231), power(inch, 3));
/** Imperial gallon: 4.54609 L exactly. */
const imperialGallon = ratio(454_609n, 100_000_000n);
const litre = milli;
const gram = milli;
const minute = whole(60);
const hour = whole(3600);
/** Standard acceleration of free fall: 9.80665 m/s² exactly. */
const freeFall = ratio(980_665n, 100_000n);
const poundForce = product(pound, freeFall);
/** A fall of one degree Fahrenheit is 5/9 K. */
const fahrenheitDegree = ratio(5n, 9n);
/** Conventional mercury: 13 595.1 kg/m³ under standard free fall. */
const millimetreOfMercury = product(ratio(135_951n, 10n), freeFall, milli);
/** Conventional water: 1000 kg/m³ under standard free fall. */
const inchOfWater = product(kilo, freeFall, inch);
/** International Table British thermal unit: 2326 J/kg on one pound, exactly. */
const britishThermalUnit = product(whole(2326), pound);

/** The floating number nearest to pi, written exactly; a degree is the one size here that no fraction can hold. */
const pi = ratio(884_279_719_003_555n, 281_474_976_710_656n);

const unit = (size: Ratio, dimension: Dimension): BaseUnit => ({ size, dimension });

/** The base units by their one spelling; other spellings are folded to these in `spelling.ts`. */
export const BASE_UNITS: ReadonlyMap<string, BaseUnit> = new Map(
  Object.entries({
    m: unit(one, LENGTH),
    km: unit(kilo, LENGTH),
    cm: unit(centi, LENGTH),
    mm: unit(milli, LENGTH),
    µm: unit(micro, LENGTH),
    nm: unit(product(micro, milli), LENGTH),
    in: unit(inch, LENGTH),
    ft: unit(foot, LENGTH),
    yd: unit(yard, LENGTH),
    mi: unit(product(foot, whole(5280)), LENGTH),
    mil: unit(product(inch, milli), LENGTH),
    acre: unit(product(power(yard, 2), whole(4840)), AREA),
    L: unit(litre, VOLUME),
    mL: unit(product(litre, milli), VOLUME),
    µL: unit(product(litre, micro), VOLUME),
    gal: unit(gallon, VOLUME),
    qt: unit(quotient(gallon, whole(4)), VOLUME),
    pt: unit(quotient(gallon, whole(8)), VOLUME),
    floz: unit(quotient(gallon, whole(128)), VOLUME),
    impgal: unit(imperialGallon, VOLUME),
    impfloz: unit(quotient(imperialGallon, whole(160)), VOLUME),
    kg: unit(one, MASS),
    g: unit(gram, MASS),
    mg: unit(product(gram, milli), MASS),
    µg: unit(product(gram, micro), MASS),
    t: unit(kilo, MASS),
    lb: unit(pound, MASS),
    avoz: unit(ounce, MASS),
    uston: unit(product(pound, whole(2000)), MASS),
    s: unit(one, TIME),
    min: unit(minute, TIME),
    h: unit(hour, TIME),
    d: unit(product(hour, whole(24)), TIME),
    week: unit(product(hour, whole(168)), TIME),
    K: unit(one, DIFFERENCE),
    'F°': unit(fahrenheitDegree, DIFFERENCE),
    mol: unit(one, AMOUNT),
    mmol: unit(milli, AMOUNT),
    A: unit(one, CURRENT),
    mA: unit(milli, CURRENT),
    rad: unit(one, ANGLE),
    '°': unit(quotient(pi, whole(180)), ANGLE),
    '%': unit(centi, SHARE),
    rh: unit(centi, SHARE),
    ppm: unit(micro, SHARE),
    ppb: unit(product(micro, milli), SHARE),
    N: unit(one, FORCE),
    kN: unit(kilo, FORCE),
    MN: unit(product(kilo, kilo), FORCE),
    lbf: unit(poundForce, FORCE),
    kip: unit(product(poundForce, kilo), FORCE),
    kgf: unit(freeFall, FORCE),
    Pa: unit(one, STRESS),
    hPa: unit(whole(100), STRESS),
    kPa: unit(kilo, STRESS),
    MPa: unit(product(kilo, kilo), STRESS),
    GPa: unit(product(kilo, kilo, kilo), STRESS),
    mbar: unit(whole(100), STRESS),
    bar: unit(whole(100_000), STRESS),
    psi: unit(quotient(poundForce, power(inch, 2)), STRESS),
    ksi: unit(quotient(product(poundForce, kilo), power(inch, 2)), STRESS),
    mmhg: unit(millimetreOfMercury, STRESS),
    inhg: unit(quotient(product(millimetreOfMercury, inch), milli), STRESS),
    inwater: unit(inchOfWater, STRESS),
    J: unit(one, ENERGY),
    kJ: unit(kilo, ENERGY),
    MJ: unit(product(kilo, kilo), ENERGY),
    Wh: unit(hour, ENERGY),
    kWh: unit(product(kilo, hour), ENERGY),
    Btu: unit(britishThermalUnit, ENERGY),
    W: unit(one, POWER),
    kW: unit(kilo, POWER),
    hp: unit(product(whole(550), foot, poundForce), POWER),
    V: unit(one, VOLTAGE),
    mV: unit(milli, VOLTAGE),
    kV: unit(kilo, VOLTAGE),
    cfm: unit(quotient(power(foot, 3), minute), FLOW),
  }),
);
