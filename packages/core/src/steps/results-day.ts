import type { Figure, Known, Series } from '../kernel/entry.ts';
import type { Instant } from '../kernel/instant.ts';
import type { Said } from '../kernel/said.ts';
import type { Reason, Verdict, VerdictWord } from '../kernel/verdict.ts';
import type { StepBase } from './results.ts';

/** What the steps `day` and `schedule` hand on. Instants are data; every number is an entry. */

export type WeatherKind = 'forecast' | 'measured' | 'typical year' | 'typed';

/** An instant with its P10 and P90; `high` is absent when the slow side never gets there. */
export interface Span {
  readonly at: Instant;
  readonly low: Instant;
  readonly high?: Instant;
}

/** The weather and the slab of the site, the same for every option. */
export interface SitePlan extends StepBase {
  /** Where the weather came from, what it is, and when it was issued. */
  readonly weather: {
    readonly source: string;
    readonly kind: WeatherKind;
    readonly issued?: Instant;
    readonly place?: string;
  };
  readonly from: Instant;
  readonly until: Instant;
  readonly slab: Series<'°C'>;
  readonly dew: Series<'°C'>;
  readonly air: Series<'°C'>;
  readonly humidity: Series<'1'>;
  readonly margin: Series<'K'>;
  /** Readings on the slab that the run was fitted to, and the worst that is left between them and it. */
  readonly readings: Known<'1'>;
  readonly worstFit?: Figure<'K'>;
}

/** Neighbouring starts with one answer. */
export interface StartStretch {
  readonly from: Instant;
  readonly until: Instant;
  readonly word: VerdictWord;
  /** What limits most, with the smallest change that would open a part of the stretch; none for a go. */
  readonly limiting?: Reason;
}

export interface RankedStart {
  readonly at: Instant;
  readonly word: VerdictWord;
  readonly margin: Figure<'K'>;
}

/** The start of a coat: the one chosen in the option, or the one proposed where none was. */
export interface CoatStart {
  readonly at: Instant;
  readonly by: 'chosen' | 'proposed';
  readonly verdict: Verdict;
  /** Last metre laid, and the end of the stage that dew, rain and dust spoil. */
  readonly laid: Instant;
  readonly sensitiveUntil: Instant;
  /** Lowest margin above the dew point from the start to that end, and when. */
  readonly margin?: Figure<'K'>;
  readonly marginAt?: Instant;
  /** Nearest start that may be used, where this one may not. */
  readonly nearest?: Instant;
}

export type Milestone = 'open' | 'touch' | 'recoat opens' | 'recoat closes' | 'foot' | 'light' | 'vehicle' | 'full';

/** When the film reaches a stage, for the metre placed first and the one placed last. */
export interface CoatMilestone {
  readonly what: Milestone;
  readonly first: Span;
  readonly last: Span;
  /** Coldest slab until then: colder, and it takes longer. */
  readonly warm: Known<'°C'>;
  /** The condition in words, and what is assumed. */
  readonly holds: readonly Said[];
}

export interface BatchLife {
  /** `1`, `2`, …: the batch in the order mixed. */
  readonly batch: string;
  readonly at: Instant;
  readonly material: Known<'°C'>;
  readonly time?: Figure<'s'>;
}

export interface CoatDay {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  /** First metre to last with the hands there are. */
  readonly laying: Figure<'s'>;
  readonly starts: readonly StartStretch[];
  /** Starts that may be used, best first, an hour apart at least. */
  readonly best: readonly RankedStart[];
  readonly start?: CoatStart;
  readonly pots: readonly BatchLife[];
  readonly milestones: readonly CoatMilestone[];
}

/** What the customer needs and whether this system gives it by then. */
export interface DayPromise {
  readonly what: 'foot' | 'vehicle';
  readonly by: Instant;
  readonly ready?: Span;
  readonly odds: 'likely' | 'even' | 'unlikely' | 'not known';
  readonly chance?: Figure<'1'>;
  /** The sentence with its conditions, and what the chance stands on. */
  readonly says: Said;
  readonly basis: Said;
}

export interface DayPlan extends StepBase {
  readonly coats: readonly CoatDay[];
  readonly promises: readonly DayPromise[];
}

/** One stretch of one task done by one hand. */
export interface ScheduledTask {
  readonly task: string;
  readonly work: string;
  readonly area?: string;
  readonly layer?: string;
  /** `1`, `2`, …: the hand. */
  readonly who: string;
  readonly from: Instant;
  readonly until: Instant;
}

export interface ScheduledWait {
  readonly who: string;
  readonly from: Instant;
  readonly until: Instant;
  /** Coat that is waited for, where one is. */
  readonly layer?: string;
}

export interface SchedulePlan extends StepBase {
  /** Whether coats stand in windows of the weather, at chosen starts only, or nowhere. */
  readonly from: 'weather' | 'chosen starts' | 'sheet times';
  readonly tasks: readonly ScheduledTask[];
  readonly waits: readonly ScheduledWait[];
  readonly begins?: Instant;
  readonly ends?: Instant;
  /** Hands on site, each from the first task of a day to its last. */
  readonly onSite: readonly Figure<'s'>[];
  readonly waiting?: Figure<'s'>;
  readonly paid?: Figure<'s'>;
}
