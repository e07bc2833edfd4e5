import type { Shown } from '../worker/api.ts';

/** Place of a fact on the shared limit line. One band is always as wide, so distance means how sure it is. */

export const LIMIT_AT = 24;
/** Pixels of one P10-P90 band. */
export const BAND_WIDTH = 26;

export interface Limited {
  readonly value: Shown;
  readonly limit: Shown;
  /** The value must stay at or above a least, at or below a most. */
  readonly side: 'least' | 'most';
  /** Past a solid limit is a stop, past a dashed one asks for care. */
  readonly dashed?: boolean;
}

export interface Place {
  /** Widths of the band between value and limit; negative is past it. Infinite where there is no band. */
  readonly bands: number;
  readonly past: boolean;
  readonly touches: boolean;
  readonly sure: boolean;
  /** Exactly on the limit. */
  readonly at: boolean;
}

export function placeOf({ value, limit, side }: Limited): Place | null {
  if (value.value === undefined || limit.value === undefined || value.in !== limit.in) return null;
  const room = side === 'least' ? value.value - limit.value : limit.value - value.value;
  const width = value.low !== undefined && value.high !== undefined ? value.high - value.low : 0;
  const past = room < 0;
  const at = room === 0;
  if (width <= 0) {
    const bands = past ? Number.NEGATIVE_INFINITY : at ? 0 : Number.POSITIVE_INFINITY;
    return { bands, past, touches: at, sure: false, at };
  }
  const end = side === 'least' ? (value.low as number) - limit.value : limit.value - (value.high as number);
  return { bands: room / width, past, touches: !past && end < 0, sure: true, at };
}

/** Nearest to its limit first: what is past, then by distance; without a band a fact stands after those that touch. */
export const order = (place: Place | null): number => {
  if (!place) return 1e6;
  if (place.sure || place.at) return place.bands;
  return place.past ? -1e6 : 1.5;
};
