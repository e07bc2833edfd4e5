import type { Figure, Known } from '../kernel/entry.ts';
import type { Instant } from '../kernel/instant.ts';
import type { Said } from '../kernel/said.ts';
import type { StepBase } from './results.ts';

/** What the spread hands on. Outlines, arrows, edges and maps are drawings; instants are data. */

type Point = readonly [x: number, y: number];

export interface SpreadPart {
  readonly component: string;
  readonly name: string;
  readonly volume: Figure<'m³'>;
  readonly mass?: Figure<'kg'>;
}

/** The part of the floor that one batch covers. */
export interface SpreadPour {
  /** `1`, `2`, …: the order they are spread in. */
  readonly pour: string;
  readonly areas: readonly string[];
  readonly volume: Figure<'m³'>;
  readonly area: Figure<'m²'>;
  readonly parts: readonly SpreadPart[];
  /** Stirred into this batch, beside its parts; only where the option thins the coat. */
  readonly thinner?: Figure<'m³'>;
  readonly mixFrom: Instant;
  readonly start: Instant;
  readonly end: Instant;
  /** Down and rolled by then, or the batch goes off. */
  readonly placeBy: Instant;
  /** Where it ends, as a tape would measure it. */
  readonly ends: Said;
  /** How late it may start, all else as planned. */
  readonly spare?: Figure<'s'>;
  readonly outline: readonly (readonly Point[])[];
  readonly arrow: readonly Point[];
  /** Where its number stands: on the pour, near its middle. */
  readonly mark: Point;
  /** Lines where it ends against floor that is still dry. */
  readonly edge: readonly (readonly Point[])[];
}

/** Where to stop when something goes wrong. */
export interface SpreadBailOut {
  readonly pour: string;
  readonly at: Instant;
  /** Edge that would need tape. */
  readonly tape: Figure<'m'>;
  readonly joints: readonly string[];
  readonly edge: readonly (readonly Point[])[];
}

export interface SpreadSeam {
  readonly pours: readonly string[];
  readonly length: Figure<'m'>;
  readonly age: Figure<'s'>;
  /** Share of the open time used before it is closed. */
  readonly share: Figure<'1'>;
}

/** Rooms that doors join, spread as one floor; in the coordinates of the first of them. A drawing. */
export interface JoinedSpread {
  /** Floor of all its rooms. */
  readonly net: Figure<'m²'>;
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  readonly rooms: readonly {
    readonly area: string;
    /** From the room's own coordinates: `x' = cos·x − sin·y + dx`, `y' = sin·x + cos·y + dy`. */
    readonly placed: { readonly cos: number; readonly sin: number; readonly dx: number; readonly dy: number };
    readonly outline: readonly Point[];
  }[];
  readonly doorways: readonly { readonly door: string; readonly along: readonly Point[] }[];
  readonly exits: readonly { readonly name: string; readonly along: readonly Point[]; readonly outside: boolean }[];
}

/** One day's part of a floor of several days. */
export interface SpreadDay {
  /** From 1, of all. */
  readonly number: number;
  readonly of: number;
  /** Floor of this day. */
  readonly area: Figure<'m²'>;
  /** Where it ends towards the next day, how the two days meet, and whether what was laid before may be walked on. */
  readonly says: readonly Said[];
}

/** A coat on floor that hangs together, from the far end to the way out. Nothing is shown that the checker refuses. */
export interface CoatSpread {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  readonly areas: readonly string[];
  readonly state: 'planned' | 'none found' | 'not planned';
  readonly start?: Instant;
  readonly laid?: Instant;
  readonly openTime?: Known<'s'>;
  readonly workingTime?: Known<'s'>;
  readonly openFrom?: 'day' | 'data sheet' | 'own test' | 'assumed';
  readonly pours: readonly SpreadPour[];
  /** Names of the doors the crew leaves by. */
  readonly wayOut: readonly string[];
  readonly bailOuts: readonly SpreadBailOut[];
  readonly seams: readonly SpreadSeam[];
  readonly largestAge?: Figure<'s'>;
  readonly ageShare?: Figure<'1'>;
  readonly worstPour?: { readonly pour: string; readonly time: Figure<'s'>; readonly share: Figure<'1'> };
  readonly seamLength?: Figure<'m'>;
  readonly walk?: Figure<'m'>;
  readonly leftOver?: Figure<'m³'>;
  /** Changes that were planned and make it possible, smallest of each kind. */
  readonly repairs: readonly Said[];
  /** The floor in characters, a mark to each square. */
  readonly map: readonly string[];
  /** Only where the floor is more than a day's work. */
  readonly day?: SpreadDay;
  /** Only where doors join several areas: then outlines, marks and edges lie on this floor. */
  readonly joined?: JoinedSpread;
}

export interface SpreadsPlan extends StepBase {
  readonly coats: readonly CoatSpread[];
  /** How often hours and pours were worked out in turn until the starts stood still; only where weather was given. */
  readonly rounds?: Figure<'1'>;
  /** By how much the last of them still moved a start. */
  readonly moved?: Figure<'s'>;
}
