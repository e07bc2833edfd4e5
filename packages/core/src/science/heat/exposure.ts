import { FILM_DOOR_OPEN, FILM_FLOOR_COOLER, FILM_FLOOR_WARMER } from './films.ts';

/**
 * Garage or unheated hall. Its air follows the outdoor air in part:
 *
 *   indoor = dayMean + share · (outdoor − dayMean) + gain
 *
 * The law is our own proposal, tested on synthetic garages; the share and gain are fitted to readings on the slab.
 */
export interface Garage {
  readonly kind: 'garage';
  /** Share of the outdoor swing felt inside, door shut: 0.2 tight, 0.5 leaky. */
  readonly shareShut: number;
  /** The same with the door open. */
  readonly shareOpen: number;
  /** Warmer inside than outside on average, K. */
  readonly gain: number;
  /** Multiplies all film coefficients. */
  readonly filmScale: number;
  /** Film coefficient with the door open, W/(m² K). */
  readonly filmOpen: number;
  /** Share of the sun that the floor of a sunlit strip absorbs; 0 away from the door. */
  readonly absorptance: number;
}

/** Room kept at a temperature. */
export interface Room {
  readonly kind: 'room';
  /** °C */
  readonly airTemperature: number;
  readonly filmScale: number;
}

/** Floor under the open sky. */
export interface Patio {
  readonly kind: 'patio';
  /** Film coefficient by wind, or one fixed value, W/(m² K). */
  readonly film: 'wind' | number;
  readonly filmScale: number;
  /** Film of a floor cooler than the air, as a share of that of a warmer one: still air lies stable on a cold floor. */
  readonly stableShare: number;
  readonly absorptance: number;
  readonly emissivity: number;
  /** Share of the hemisphere over the floor that is sky, 0-1. */
  readonly skyView: number;
  /** Most water that rain leaves on or in the surface, m; the rest runs off. It evaporates before the floor is dry. */
  readonly holdsWater: number;
}

export type Exposure = Garage | Room | Patio;

export const GARAGE: Garage = {
  kind: 'garage',
  shareShut: 0.3,
  shareOpen: 0.9,
  gain: 1,
  filmScale: 1,
  filmOpen: FILM_DOOR_OPEN,
  absorptance: 0.65,
};

/** Grey concrete: absorptance 0.55-0.70, NISTIR 6551 takes 0.65 and emissivity 0.90 (from memory). */
export const PATIO: Patio = {
  kind: 'patio',
  film: 'wind',
  filmScale: 1,
  stableShare: 0.7,
  absorptance: 0.65,
  emissivity: 0.9,
  skyView: 0.9,
  // Half a millimetre: common practice for paved surfaces, no source.
  holdsWater: 0.0005,
};

export const heatedRoom = (airTemperature: number): Room => ({ kind: 'room', airTemperature, filmScale: 1 });

export const SHUT_FILMS = { warmer: FILM_FLOOR_WARMER, cooler: FILM_FLOOR_COOLER } as const;
