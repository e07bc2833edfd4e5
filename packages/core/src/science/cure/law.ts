import { Z90 } from '../../kernel/band.ts';
import { GAS_CONSTANT, ZERO_CELSIUS } from '../constants.ts';

/** One line of a data sheet: at this temperature it takes this long. */
export interface SheetTime {
  /** °C */
  readonly temperature: number;
  /** s */
  readonly time: number;
}

/** `pail`: mixed resin in the mass. `film`: the same resin poured out. They cure by laws of their own. */
export type CurePlace = 'pail' | 'film';

/**
 * Time of one milestone of one product by temperature.
 *
 *   ln time = centreLog + (energy / R) · (1/T − centreInverse)        fitted
 *
 * or, where no such line passes through the sheet's points, straight lines between them in the same coordinates.
 */
export interface CureLaw {
  readonly kind: 'fitted' | 'interpolated' | 'assumed energy';
  readonly place: CurePlace;
  readonly points: readonly SheetTime[];
  /** J/mol; for an interpolated law the overall one, not used. */
  readonly energy: number;
  readonly energyDeviation: number;
  readonly centreInverse: number;
  readonly centreLog: number;
  /** Deviation of ln time at the centre. */
  readonly centreDeviation: number;
  /** Largest distance of a point from the law, share of its time. */
  readonly worstResidual: number;
  /** Temperatures between which the law speaks, °C. */
  readonly range: readonly [number, number];
  readonly cautions: readonly string[];
}

export interface SheetLimits {
  /** Least and most slab or air temperature at which the sheet allows the product, °C. */
  readonly least?: number;
  readonly most?: number;
}

/** Energies that a real cure of resin can have, J/mol; outside, the sheet's times follow something else. */
const PLAUSIBLE: Readonly<Record<CurePlace, readonly [number, number]>> = {
  pail: [35_000, 80_000],
  film: [10_000, 80_000],
};
/** Taken when the sheet gives one time only: an assumption, with its deviation. */
const ASSUMED: Readonly<Record<CurePlace, { energy: number; deviation: number }>> = {
  pail: { energy: 50_000, deviation: 10_000 },
  film: { energy: 35_000, deviation: 15_000 },
};
/** How far beyond the sheet's points a fitted law is followed, K. */
export const BEYOND_POINTS = 5;
/** The same for a law with one point and an assumed energy, where the sheet states no limits of use, K. */
const BEYOND_ONE_POINT = 10;
/** A fit that misses a point by more than this share is no fit. */
const WORST_RESIDUAL = 0.1;
/** Sheets round their times: about a tenth (assumed). */
const SHEET_DEVIATION = 0.1;

const inverseOf = (celsius: number): number => 1 / (celsius + ZERO_CELSIUS);

/**
 * Law of one milestone out of the times on the product's own sheet.
 *
 * @throws RangeError on an empty list, a time that is not positive or two times at one temperature: the catalogue is
 *   checked before.
 */
export const cureLaw = (points: readonly SheetTime[], place: CurePlace, limits: SheetLimits = {}): CureLaw => {
  if (points.length === 0) throw new RangeError('cureLaw: no points');
  const sorted = [...points].sort((a, b) => a.temperature - b.temperature);
  for (const [i, point] of sorted.entries()) {
    const repeated = i > 0 && (sorted[i - 1] as SheetTime).temperature === point.temperature;
    if (!(point.time > 0) || !Number.isFinite(point.temperature) || repeated) {
      throw new RangeError(`cureLaw: point ${i} is no time at a temperature of its own`);
    }
  }
  const n = sorted.length;
  const x = sorted.map((point) => inverseOf(point.temperature));
  const y = sorted.map((point) => Math.log(point.time));
  const centreInverse = x.reduce((a, b) => a + b, 0) / n;
  const centreLog = y.reduce((a, b) => a + b, 0) / n;
  const least = (sorted[0] as SheetTime).temperature;
  const most = (sorted[n - 1] as SheetTime).temperature;
  const base = { place, points: sorted, centreInverse, centreLog };

  if (n === 1) {
    const { energy, deviation } = ASSUMED[place];
    return {
      ...base,
      kind: 'assumed energy',
      energy,
      energyDeviation: deviation,
      centreDeviation: SHEET_DEVIATION,
      worstResidual: 0,
      range: [limits.least ?? least - BEYOND_ONE_POINT, limits.most ?? most + BEYOND_ONE_POINT],
      cautions: ['cure-energy-assumed'],
    };
  }

  let sxx = 0;
  let sxy = 0;
  for (let i = 0; i < n; i++) {
    const dx = (x[i] as number) - centreInverse;
    sxx += dx * dx;
    sxy += dx * ((y[i] as number) - centreLog);
  }
  const slope = sxy / sxx;
  const energy = slope * GAS_CONSTANT;
  let squares = 0;
  let worstResidual = 0;
  for (let i = 0; i < n; i++) {
    const residual = (y[i] as number) - centreLog - slope * ((x[i] as number) - centreInverse);
    squares += residual * residual;
    worstResidual = Math.max(worstResidual, Math.abs(Math.expm1(residual)));
  }
  const scatter = Math.max(SHEET_DEVIATION, n > 2 ? Math.sqrt(squares / (n - 2)) : 0);
  const [lowest, highest] = PLAUSIBLE[place];
  const cautions: string[] = [];
  if (energy < lowest || energy > highest) cautions.push('cure-energy-implausible');
  if (worstResidual > WORST_RESIDUAL) cautions.push('cure-sheet-not-one-law');
  const interpolated = cautions.length > 0;
  const beyond = interpolated ? 0 : BEYOND_POINTS;
  return {
    ...base,
    kind: interpolated ? 'interpolated' : 'fitted',
    energy,
    energyDeviation: (GAS_CONSTANT * scatter) / Math.sqrt(sxx),
    centreDeviation: scatter / Math.sqrt(n),
    worstResidual,
    range: [Math.max(least - beyond, limits.least ?? Number.NEGATIVE_INFINITY), most + beyond],
    cautions,
  };
};

/** True when the law speaks at a temperature (°C). */
export const speaksAt = (law: CureLaw, temperature: number): boolean =>
  temperature >= law.range[0] && temperature <= law.range[1];

/**
 * ln time at a temperature, moved by `energyMove` standard deviations of the energy.
 *
 * Callers keep the temperature in the law's range; an interpolated law is flat beyond its end points.
 */
export const logTimeAt = (law: CureLaw, temperature: number, energyMove = 0): number => {
  const x = inverseOf(temperature);
  if (law.kind !== 'interpolated') {
    const energy = law.energy + energyMove * law.energyDeviation;
    return law.centreLog + (energy / GAS_CONSTANT) * (x - law.centreInverse);
  }
  const { points } = law;
  let i = 1;
  while (i < points.length - 1 && temperature > (points[i] as SheetTime).temperature) i++;
  const [a, b] = [points[i - 1] as SheetTime, points[i] as SheetTime];
  const share = (x - inverseOf(a.temperature)) / (inverseOf(b.temperature) - inverseOf(a.temperature));
  const clamped = Math.min(1, Math.max(0, share));
  return Math.log(a.time) * (1 - clamped) + Math.log(b.time) * clamped;
};

export interface TimeWithBand {
  /** s */
  readonly time: number;
  /** P10 and P90, s */
  readonly low: number;
  readonly high: number;
  readonly cautions: readonly string[];
}

/**
 * Time at a constant temperature with its band, or undefined where the law does not speak.
 *
 * @param temperature °C
 * @param temperatureDeviation K
 */
export const timeAt = (law: CureLaw, temperature: number, temperatureDeviation = 0): TimeWithBand | undefined => {
  if (!speaksAt(law, temperature)) return undefined;
  const log = logTimeAt(law, temperature);
  const byEnergy = logTimeAt(law, temperature, 1) - log;
  const kelvin = temperature + ZERO_CELSIUS;
  const byTemperature = (law.energy / GAS_CONSTANT / (kelvin * kelvin)) * temperatureDeviation;
  const spread = Z90 * Math.hypot(law.centreDeviation, byEnergy, byTemperature);
  return { time: Math.exp(log), low: Math.exp(log - spread), high: Math.exp(log + spread), cautions: law.cautions };
};
