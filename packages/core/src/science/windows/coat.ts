import type { CureLaw } from '../cure/law.ts';

export type Limits = readonly [least: number | undefined, most: number | undefined];

/** One coat to be placed in the hours: what its sheet, the firm and the job ask of them. */
export interface CoatToPlace {
  /** Time to lay it, s. */
  readonly laying: number;
  /** Open time or gel on the floor; without it the film is taken as open until it is touch-dry. */
  readonly open?: CureLaw;
  /** Touch-dry: the end of the stage in which dew, rain and dust spoil it. */
  readonly touch?: CureLaw;
  /** Stage taken where the sheet gives neither, s. */
  readonly sensitive: number;
  /** Least margin above the dew point, K: 3, or 5 °F = 2.78, or the sheet's; its own unit is kept by the caller. */
  readonly marginRule: number;
  /** Limits of the sheet over the open time: slab and air °C, relative humidity 0-1. */
  readonly slab: Limits;
  readonly air: Limits;
  readonly humidity: Limits;
  /** Coat on bare or still porous concrete: what the slab breathes out goes through it. */
  readonly porous: boolean;
  /** True only where the sheet or the firm's rule makes rising temperature a stop. */
  readonly risingStops: boolean;
  /** Rain and wind reach the floor. */
  readonly outdoors: boolean;
  /** Most wind while laying, m/s. */
  readonly windMost?: number;
  /** Preparation ends, ms since 1970. */
  readonly prepared: number;
  /** Recoat window left by the coat before, ms since 1970: opens at the long bound, closes at the short one. */
  readonly recoatOpens?: number;
  readonly recoatCloses?: number;
}

/** Customary rules for the margin, K. They are two rules, not one in two units. */
export const THREE_KELVIN = 3;
export const FIVE_FAHRENHEIT = 25 / 9;

/** At P10 the margin must still be this wide for a go, K. */
export const LEAST_P10 = 1;
/** Rise of the top 50 mm up to which a porous coat is only a caution, K: a proposal to be tuned, not a standard. */
export const SMALL_RISE = 0.5;

/** Wind that carries dust and leaves into a wet floor, m/s (common practice, no source); said where no sheet speaks. */
export const STRONG_WIND = 8;

/** A stretch in which the crew works, ms since 1970. */
export interface WorkingHours {
  readonly from: number;
  readonly to: number;
}
