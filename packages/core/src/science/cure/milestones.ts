import {
  type CureLaw,
  type CurePlace,
  cureLaw,
  type SheetLimits,
  type SheetTime,
  type TimeWithBand,
  timeAt,
} from './law.ts';
import { type FilmHistory, type Milestone, milestoneAt } from './progress.ts';

/** What a laid film goes through, in order. `open` is the sheet's open or working time, or gel, on the floor. */
export const MILESTONES = [
  'open',
  'touch',
  'recoat opens',
  'recoat closes',
  'foot',
  'light',
  'vehicle',
  'full',
] as const;
export type MilestoneName = (typeof MILESTONES)[number];

/**
 * Which side of the band is used when something depends on the milestone: what must happen before it takes the short
 * side, what may only happen after it the long one.
 */
export const GOVERNS: Readonly<Record<MilestoneName, 'short' | 'long'>> = {
  open: 'short',
  touch: 'long',
  'recoat opens': 'long',
  'recoat closes': 'short',
  foot: 'long',
  light: 'long',
  vehicle: 'long',
  full: 'long',
};

/** The cure part of a product's data sheet. */
export interface CureSheet {
  /** Pot life in the pail. */
  readonly pail: readonly SheetTime[];
  readonly film: Readonly<Partial<Record<MilestoneName, readonly SheetTime[]>>>;
  readonly limits: SheetLimits;
}

export interface ProductCure {
  readonly pail?: CureLaw;
  readonly film: Readonly<Partial<Record<MilestoneName, CureLaw>>>;
}

/** Laws of a product, each fitted to its own times. What the sheet does not give stays absent. */
export const productCure = (sheet: CureSheet): ProductCure => {
  const law = (points: readonly SheetTime[], place: CurePlace): CureLaw => cureLaw(points, place, sheet.limits);
  const film: Partial<Record<MilestoneName, CureLaw>> = {};
  for (const name of MILESTONES) {
    const points = sheet.film[name];
    if (points !== undefined && points.length > 0) film[name] = law(points, 'film');
  }
  return { film, ...(sheet.pail.length > 0 ? { pail: law(sheet.pail, 'pail') } : {}) };
};

/**
 * Pot life of one batch in its pail, or undefined where the sheet does not speak.
 *
 * The material's own temperature when it is mixed decides, not the slab's: beyond a can the mass matters by a few
 * per cent only, while 10 K of material halve or double it.
 *
 * @param materialTemperature °C
 */
export const potLife = (cure: ProductCure, materialTemperature: number, deviation: number): TimeWithBand | undefined =>
  cure.pail === undefined ? undefined : timeAt(cure.pail, materialTemperature, deviation);

export interface Reaching extends Milestone {
  readonly name: MilestoneName;
  /** The bound that what depends on it must use, ms since 1970; absent when that bound is not reached. */
  readonly governing?: number;
}

/** All milestones the sheet gives for a film laid at `start` (ms since 1970) on a slab with this history. */
export const milestonesOf = (cure: ProductCure, history: FilmHistory, start: number): readonly Reaching[] => {
  const out: Reaching[] = [];
  for (const name of MILESTONES) {
    const law = cure.film[name];
    const found = law === undefined ? undefined : milestoneAt(law, history, start);
    if (found === undefined) continue;
    const governing = GOVERNS[name] === 'short' ? found.low : found.high;
    out.push({ ...found, name, ...(governing === undefined ? {} : { governing }) });
  }
  return out;
};
