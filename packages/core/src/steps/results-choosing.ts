import type { FillerKind } from '../catalogue.ts';
import type { Figure, Known } from '../kernel/entry.ts';
import type { Instant } from '../kernel/instant.ts';
import type { Said } from '../kernel/said.ts';
import type { StepBase } from './results.ts';

/** What needs, bond and cracks hand on: what the floor asks of a system, what governs it, and what moves under it. */

/** One link of the chain that is pulled together: the concrete, a coat, or the plane between two of them. */
export interface BondLink {
  /** `concrete`, `concrete/base`, `base`, `base/clear`: layer ids. */
  readonly id: string;
  readonly kind: 'concrete' | 'interface' | 'coat';
  /** As the pull-off standards letter the plane: A, A/B, B. */
  readonly letter: string;
  readonly says: Said;
  /** A lower bound says only that a pull went by and broke something else. */
  readonly from: 'failed here' | 'data sheet' | 'lower bound' | 'estimate' | 'not known';
  readonly strength?: Known<'Pa'>;
  readonly deviation?: Known<'Pa'>;
  /** Pulls the strength comes from. */
  readonly counted?: Known<'1'>;
}

export interface GovernsPlan extends StepBase {
  readonly links: readonly BondLink[];
  /** The weakest of the links whose strength is known, and that strength. */
  readonly governing?: string;
  readonly strength?: Known<'Pa'>;
  /** That the concrete parts before any coating link of known strength. */
  readonly chance?: Figure<'1'>;
  /** Most that more adhesion or a stronger film could add. */
  readonly worth?: Figure<'Pa'>;
  /** Surface strength of ordinary slabs, beside what was measured. */
  readonly ordinary: { readonly least: Known<'Pa'>; readonly most: Known<'Pa'> };
}

/** A must-have that follows from the use, or that the job states. */
export interface Need {
  readonly id: string;
  /** A property of the table of test methods, or foot, vehicle, budget, smell. */
  readonly what: string;
  readonly from: 'use' | 'entered';
  readonly why: Said;
  /** Any one of these tests is enough; none where no test decides. */
  readonly tests: readonly {
    readonly method: string;
    readonly least?: Known;
    readonly most?: Known;
    readonly conditions: readonly Said[];
  }[];
  readonly source?: string;
  readonly met: 'met' | 'not met' | 'not known' | 'elsewhere';
  /** How it was judged on the products of the option. */
  readonly judged: readonly Said[];
  /** Claim nearest to its limit, where every product asked states a number of the test asked for. */
  readonly closest?: {
    readonly claimed: Known;
    readonly limit: Known;
    readonly end: 'least' | 'most';
    readonly product: string;
  };
}

export interface NeedsPlan extends StepBase {
  readonly needs: readonly Need[];
}

export type CrackHandling = 'fill rigid' | 'fill flexible' | 'reinforce' | 'honour and re-cut';

/** One crack or joint: how far it opens, what bridges it, what is done with it and what the first winter shows. */
export interface CrackPlan {
  readonly id: string;
  readonly area: string;
  readonly kind: 'crack' | 'isolation' | 'contraction' | 'construction';
  readonly length: Known<'m'>;
  readonly state: 'dormant' | 'moving' | 'not known';
  /** Two widths at two temperatures beat the word of a person, which beats the formula. */
  readonly from: 'two readings' | 'said' | 'formula';
  /** Slab whose shortening opens it. */
  readonly slabLength?: Figure<'m'>;
  /** Opening by the cold season, with its band. */
  readonly season?: Figure<'m'>;
  /** Opening between the warmest and coldest hour of a day. */
  readonly day?: Figure<'m'>;
  /** Upper end of the season's opening: what a film over it must bear. */
  readonly toBear?: Figure<'m'>;
  /** What the readings cannot show of a crack that seems to rest. */
  readonly unseen?: Figure<'m'>;
  /** Classes of EN 1062-7, from memory. */
  readonly classNeeded?: string;
  readonly classNeededByDay?: string;
  readonly bridges: {
    readonly answer: 'yes' | 'no' | 'not known';
    /** The coat that was shown to bridge, and how much at which temperature. */
    readonly layer?: string;
    readonly width?: Known<'m'>;
    readonly at?: Known<'°C'>;
  };
  readonly freeLength?: Known<'m'>;
  readonly strain?: Figure<'1'>;
  readonly handling: CrackHandling;
  /** What the tasks of this option do with it. */
  readonly planned: 'filled' | 'filled and reinforced' | 'filled and coated over' | 're-cut and filled' | 'held';
  /** Change of the price book that prices this handling; none where the price is not known. */
  readonly change?: string;
  /** Person-time of its treatment; none where it is held or its work has no rate. */
  readonly work?: Figure<'s'>;
  /** That time at the wage of the price book. */
  readonly labour?: Figure<'money'>;
  /** Filler it takes, and of which kind. */
  readonly filler?: Figure<'m³'>;
  readonly fillerKind?: FillerKind;
  /** Its share, by volume, of what the packs of that filler cost; none where they have no price. */
  readonly fillerCost?: Figure<'money'>;
  /** Labour and filler together. */
  readonly cost?: Figure<'money'>;
  /** Earliest moment at which the finished film bears the saw, for a line that is cut again. */
  readonly earliest?: Instant;
  readonly winter: Said;
}

export interface CracksPlan extends StepBase {
  readonly cracks: readonly CrackPlan[];
}
