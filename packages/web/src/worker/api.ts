import type {
  CatalogueFile,
  Entry,
  Instant,
  JobFile,
  Origin,
  Plan,
  PriceBookFile,
  VerdictWord,
  Working,
} from '@slabwright/core';

import type { Changes } from './changes.ts';
import type { WeatherAsked, WeatherMade } from './weather-api.ts';

/** What the screen asks of the plan worker and what it gets back: everything already in the reader's words. */

export type Units = 'imperial' | 'metric';

export type WeatherSent = 'same' | 'none' | { readonly file: unknown };

export interface PlanRequest {
  readonly job: JobFile;
  /** Null when it is the same as in the request before. */
  readonly catalogue: CatalogueFile | null;
  readonly priceBook: PriceBookFile | null;
  /** The weather file as it is stored, or that it is the one sent before, or that the job has none. */
  readonly weather: WeatherSent;
  /** Milliseconds since 1970, or a moment the job is planned as of. */
  readonly now: number | Instant;
  readonly units?: Units;
  readonly locale: string;
  /** True when the screen has nothing of the answers before. */
  readonly afresh: boolean;
  /** Under what the plan is kept on this device, to be shown at once when the job is opened again. */
  readonly keepAs?: KeptAs;
  /** Mark of the plan kept before, where the screen shows it already. */
  readonly known?: string;
}

export interface KeptAs {
  /** Id of the job. */
  readonly id: string;
  readonly version: string;
  readonly key: string;
}

/** A plan as it was last shown on this device. */
export interface KeptPlan extends KeptAs {
  readonly mark: string;
  readonly job: JobFile;
  readonly planned: Planned;
  readonly words: Readonly<Record<string, string>>;
}

/** One entry of the plan as this reader sees it. */
export interface Shown {
  readonly kind: Entry['kind'];
  readonly text: string;
  readonly number: string;
  readonly unit: string;
  readonly band: string;
  /** SI value, where the entry has a single one. */
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly in: string;
  readonly shows?: Entry['shows'];
  readonly origin?: Origin;
  readonly where?: string;
  readonly when?: string;
  readonly typed?: string;
  /** What the formula gives, in a sentence. */
  readonly says?: string;
  readonly outside: boolean;
}

export interface IssueShown {
  readonly file: 'job' | 'catalogue' | 'price-book' | 'weather';
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly text: string;
}

export type Dot = readonly [x: number, y: number];

/** The drawing of one area in metres, read from what was typed. */
export interface AreaDrawing {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Dot[];
  readonly holes: readonly (readonly Dot[])[];
  readonly exits: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: Dot;
    readonly to: Dot;
    readonly shut: boolean;
    readonly outside: boolean;
  }[];
  readonly joints: readonly { readonly id: string; readonly kind: string; readonly along: readonly Dot[] }[];
  readonly cracks: readonly { readonly id: string; readonly along: readonly Dot[] }[];
  readonly spots: readonly { readonly id: string; readonly kind: string; readonly at: Dot; readonly area: number }[];
  readonly points: readonly { readonly id: string; readonly name: string; readonly at: Dot }[];
  readonly sun: readonly {
    readonly id: string;
    readonly outline: readonly Dot[];
    readonly from?: Instant;
    readonly until?: Instant;
  }[];
  /** Overall width and depth as this reader writes them. */
  readonly width: string;
  readonly depth: string;
}

/** Where a room lies when rooms are put together by their doors: turned and moved, never stretched. */
export interface RoomPlace {
  readonly area: string;
  readonly cos: number;
  readonly sin: number;
  readonly dx: number;
  readonly dy: number;
}

/** The rooms of a job put together by their doors, in metres. */
export interface RoomsTogether {
  readonly rooms: readonly RoomPlace[];
  readonly doors: readonly {
    readonly id: string;
    readonly name: string;
    readonly shut: boolean;
    readonly areas: readonly [string, string];
    /** The opening as each room has it. */
    readonly sides: readonly [readonly [Dot, Dot], readonly [Dot, Dot]];
    /** How far its two sides miss each other; empty where they meet. */
    readonly misses: string;
  }[];
  /** Rooms that lie over each other, by how much. */
  readonly overlaps: readonly { readonly areas: readonly [string, string]; readonly text: string }[];
}

/** A line of the temperature axis: place in °C, text in the reader's degrees. */
export interface AxisTick {
  readonly value: number;
  readonly text: string;
}

/** Slab, dew point and air of the site in °C, one value each `step` from `from`; margins in K with their P10 and P90. */
export interface SiteCurves {
  /** Milliseconds since 1970, and between two values. */
  readonly from: number;
  readonly step: number;
  readonly slab: readonly number[];
  readonly slabLow: readonly number[];
  readonly slabHigh: readonly number[];
  readonly dew: readonly number[];
  readonly dewLow: readonly number[];
  readonly dewHigh: readonly number[];
  readonly air: readonly number[];
  readonly margin: readonly number[];
}

/** Where the weather came from and when it was issued. */
export interface WeatherTold {
  readonly source: string;
  readonly issued?: Instant;
  readonly from: Instant;
  readonly until: Instant;
}

export type LeanPlan = Omit<Plan, 'entries'>;

/** Everything the screen shows of a plan. */
export interface Planned {
  readonly plan: LeanPlan;
  readonly shown: Readonly<Record<string, Shown>>;
  /** Sentences of the plan by `saidKey`. */
  readonly texts: Readonly<Record<string, string>>;
  readonly areas: readonly AreaDrawing[];
  /** Null where no door joins two rooms. */
  readonly together: RoomsTogether | null;
  readonly axis: readonly AxisTick[];
  /** Null without weather, or where it makes no hours. */
  readonly curves: SiteCurves | null;
  readonly weather: WeatherTold | null;
  /** Least margins with the band of their hour, by the id of their entry. */
  readonly banded: Readonly<Record<string, Shown>>;
  readonly warnings: readonly IssueShown[];
  readonly units: Units;
  readonly currency?: string;
  readonly zone: string;
  /** Names of packs by `product/pack`, of products and media by id. */
  readonly names: Readonly<Record<string, string>>;
}

/** Whole, or what changed since the answer before, or that it is the one kept on the device. */
export type PlanAnswer =
  | { readonly ok: true; readonly is: 'whole'; readonly planned: Planned }
  | { readonly ok: true; readonly is: 'changes'; readonly changes: Changes | null }
  | { readonly ok: true; readonly is: 'known' }
  | { readonly ok: false; readonly issues: readonly IssueShown[] };

/** How a law was checked from outside: rows counted by where the published value was seen. */
export interface OutsideState {
  readonly read: number;
  readonly memory: number;
  readonly own: number;
  readonly none?: string;
}

/** Share of the uncertainty by cause, the largest first. */
export interface CauseShare {
  readonly cause: string;
  readonly share: number;
}

/** An input with its valid range as shares of the drawn line, for the mark that says where we are. */
export interface RangeMark {
  readonly name: string;
  readonly least: string;
  readonly most: string;
  readonly value: string;
  /** Place of the value between the ends; below 0 or above 1 is outside. */
  readonly at: number;
}

export interface WorkingView extends Working {
  readonly unitless: boolean;
  readonly ranges: readonly RangeMark[];
  readonly causes: readonly CauseShare[];
  readonly checked?: OutsideState;
  /** Entries that are computed from this one. */
  readonly usedBy: readonly string[];
}

export interface FileReport {
  readonly kind: 'job' | 'catalogue' | 'price-book' | 'weather' | 'share' | 'backup' | 'not known';
  readonly title: string;
  readonly id: string;
  readonly value: unknown;
  readonly issues: readonly string[];
}

export type LocalAnswer =
  | { readonly kind: 'one'; readonly instant: Instant }
  | { readonly kind: 'none' | 'two'; readonly choices: readonly [Instant, Instant] }
  | { readonly kind: 'unreadable' };

export interface PlanWorker {
  /** Words that take no numbers: names of tasks, methods, steps. */
  words(): Readonly<Record<string, string>>;
  plan(request: PlanRequest): PlanAnswer;
  /** Working of an entry of the last plan; null when that plan holds no such entry. */
  working(id: string): WorkingView | null;
  /** Moment of a wall-clock time in a zone. */
  local(local: string, zone: string): LocalAnswer;
  /** What is wrong with a catalogue or price book, each with its place. */
  issues(kind: 'catalogue' | 'price-book', value: unknown): readonly IssueShown[];
  /** Hours of an option of the last plan as the text of a calendar file. */
  calendar(optionId: string): Promise<string>;
  /** Reads a file a person chose, checking it as far as one file alone can be. */
  read(text: string): FileReport;
  /** A stored catalogue with what older files say in a place of its own brought to where its form shows it. */
  broughtUp(catalogue: unknown): unknown;
  /** Weather of the last planned job out of what a person gave; asks outside only where they allowed it. */
  weather(asked: WeatherAsked, now: number): Promise<WeatherMade>;
}

export type { VerdictWord };
