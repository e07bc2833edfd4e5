/**
 * The question "in what order do we spread this floor?" as plain data.
 *
 * Lengths in m, areas in m², volumes in L, durations in min, moments in minutes after midnight.
 * The first group of fields is the instance format `spread-instance-1`; the optional ones belong to the product
 * and leave the format's own rules untouched when they are absent.
 */
export type Point = readonly [number, number];
export type Ring = readonly Point[];

/** A door or gate a person can leave by; `outside` doors are joined by a walk around the building. */
export interface Exit {
  readonly a: Point;
  readonly b: Point;
  readonly outside: boolean;
}

/** A line where the film may end: what lies on its two sides need not tie in wet. */
export interface StopLine {
  readonly a: Point;
  readonly b: Point;
  readonly kind: 'joint' | 'threshold' | 'tape';
}

export interface Crew {
  readonly people: number;
  /** One person does nothing but mix: mixing then overlaps spreading. */
  readonly dedicatedMixer: boolean;
  /** m²/min of one spreader. */
  readonly rateM2PerMinPerPerson: number;
  readonly laneM: number;
  readonly walkMPerMin: number;
  /** People who only cut in edges; absent or 0: the spreaders cut in. */
  readonly cutters?: number | undefined;
  /** m of edge per minute of one cutter; absent: cutting in takes no time of its own. */
  readonly cutMPerMinPerPerson?: number | undefined;
  /** People who only broadcast; absent or 0: the spreaders broadcast. */
  readonly broadcasters?: number | undefined;
  /** m²/min of one broadcaster; absent: nothing is broadcast. */
  readonly broadcastM2PerMinPerPerson?: number | undefined;
  /** The crew may walk on fresh film. */
  readonly spikedShoes?: boolean | undefined;
}

export interface Zone {
  readonly poly: Ring;
  readonly factor: number;
}

export interface Batch {
  readonly litres: number;
  readonly litresPerM2: number;
  readonly mixMin: number;
  readonly handoverMin: number;
  /** Where the floor drinks more or less: factor on litresPerM2 (profile, porosity). */
  readonly zones?: readonly Zone[] | undefined;
}

/** [minute after midnight, value in min]; straight between the points, flat outside. */
export type DayTable = readonly (readonly [number, number])[];

export interface DayClock {
  readonly startMin: number;
  /** Mixed until spread, by the hour of mixing. */
  readonly workingMin: DayTable;
  /** Spread until it no longer ties in, by the hour of spreading. */
  readonly openMin: DayTable;
}

export interface SpreadCase {
  readonly name: string;
  readonly outline: Ring;
  readonly holes: readonly Ring[];
  readonly walls: readonly (readonly [Point, Point])[];
  readonly exits: readonly Exit[];
  readonly stopLines: readonly StopLine[];
  readonly mixAt: { readonly exit: number } | { readonly point: Point };
  readonly crew: Crew;
  readonly batch: Batch;
  readonly clock: DayClock;
  readonly cellM: number;
  /** Narrowest passage a person takes, m; absent: 0.45 (assumed, shoulders of a working adult). */
  readonly passageM?: number | undefined;
  /** Floor not spread today (an earlier or a later day's); `walkable` says whether it carries people today. */
  readonly done?: readonly { readonly ring: Ring; readonly walkable: boolean }[] | undefined;
  /** The open time is a guess, not a sheet's or the cure step's: the plan is caution at best. */
  readonly openTimeAssumed?: boolean | undefined;
}

/** Something the user can mend: where, what was found, what would do. */
export interface SpreadIssue {
  readonly code: string;
  readonly path: string;
  readonly value: number | string;
  readonly limits: Readonly<Record<string, number | string>>;
}

/** Pours in spreading order, each the squares (column, row) in spreading order. */
export interface SpreadSolution {
  readonly format: 'spread-solution-1';
  readonly instance: string;
  readonly pours: readonly { readonly pour: number; readonly cells: readonly number[] }[];
}
