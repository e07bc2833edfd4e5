import type { Field } from './fields.ts';
import type { FloorSquares } from './floor-squares.ts';

/** How lanes are laid: each from one side, each from the other, to and fro, or from whichever end is nearer. */
export type LaneStyle = 'one way' | 'other way' | 'to and fro' | 'nearest end';

/** The styles a plain growth can tell apart. */
export const LANE_STYLES: readonly LaneStyle[] = ['one way', 'other way', 'to and fro'];

/** A preferred order before it is grown: areas in turn, in each a field cut into lanes, in each lane a place. */
export interface Sketch {
  readonly name: string;
  /** Turn of the square's area: small = spread late. */
  readonly turn: Int32Array;
  readonly field: Field;
  /** Place along the lane, 0..1. */
  readonly along: Float64Array;
  readonly lanes: LaneStyle;
}

/** A sketch not yet drawn: drawing every one of a large floor would cost more than growing some. */
export type Idea = () => Sketch;

/** More lanes than any floor of a million squares has. */
const LANES_PER_AREA = 100_000;

/** Key for the backward growth; `nearest end` leaves the place in the lane to the growth. */
export function keyOf(squares: FloorSquares, sketch: Sketch): Float64Array {
  const { turn, field, along, lanes } = sketch;
  const { count, cellM } = squares;
  const key = new Float64Array(count);
  const toAndFro = lanes === 'to and fro';
  const back = lanes === 'other way';
  const nearest = lanes === 'nearest end';
  for (let s = 0; s < count; s++) {
    const lane = Math.floor((field[s] as number) / cellM + 1e-6);
    let place = nearest ? 0 : (along[s] as number);
    if (back || (toAndFro && (lane & 1) !== 0)) place = 1 - place;
    key[s] = (turn[s] as number) * LANES_PER_AREA + lane + 0.999 * place;
  }
  return key;
}

/** Scales values to 0..1 (all equal: 0). */
export function toUnit(values: Float64Array): Float64Array {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const span = high - low;
  const unit = new Float64Array(values.length);
  if (span > 0) for (let s = 0; s < unit.length; s++) unit[s] = ((values[s] as number) - low) / span;
  return unit;
}
