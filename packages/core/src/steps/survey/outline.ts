import type { Field } from '../../fields.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { turned } from '../../science/shape/index.ts';
import type { Point } from '../results.ts';

/** A point as typed: x and y along the tape. */
export type TypedPoint = readonly [Field<'m'>, Field<'m'>];

/** Corners of a ring or line with an entry for each coordinate, so that every area shows what it was computed from. */
export interface TracedPoints {
  readonly points: readonly Point[];
  readonly x: readonly Known<'m'>[];
  readonly y: readonly Known<'m'>[];
}

const coordinate = (trace: Trace, name: string, field: Field<'m'>): Given<'m'> =>
  trace.given(name, { value: field.value, unit: 'm', origin: 'reading', typed: field.typed, shows: 'length' });

/** Records the points of a drawing under `name.0.x`, `name.0.y`, … */
export function tracePoints(trace: Trace, name: string, typed: readonly TypedPoint[]): TracedPoints {
  const x = typed.map(([field], i) => coordinate(trace, `${name}.${i}.x`, field));
  const y = typed.map(([, field], i) => coordinate(trace, `${name}.${i}.y`, field));
  return { points: typed.map(([px, py]) => [px.value, py.value] as const), x, y };
}

/** Drawing data of a ring, counter-clockwise, for the spread and the floor plan. */
export const drawn = (ring: readonly Point[]): readonly Point[] => turned(ring);

/** How an area came to be known, and the relative error of its lengths. */
export interface Outline {
  readonly ring: TracedPoints;
  readonly tapeError: Known<'1'>;
  readonly assumed: boolean;
}

/**
 * Standard deviation of a length where the job states none: half a per cent. An assumption without a source; 3 cm in
 * a side of six metres is what a sagging tape and a hand sketch easily miss.
 */
const ASSUMED_TAPE_ERROR = 0.005;

/** Corners typed as coordinates, with the error of the tape assumed and said. */
export function outlineFromCorners(trace: Trace, corners: readonly TypedPoint[]): Outline {
  const tapeError = trace.given('tape-error', {
    value: ASSUMED_TAPE_ERROR,
    unit: '1',
    origin: 'assumed',
    source: 'tape-assumption',
    says: 'survey-assumed-tape-error',
    shows: 'share',
  });
  return { ring: tracePoints(trace, 'corner', corners), tapeError, assumed: true };
}
