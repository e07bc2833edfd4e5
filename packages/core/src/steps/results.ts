import type { Figure, FigureList, Known } from '../kernel/entry.ts';
import type { Instant } from '../kernel/instant.ts';
import type { Missing } from '../kernel/missing.ts';
import type { Said } from '../kernel/said.ts';
import type { Verdict } from '../kernel/verdict.ts';

export type * from './results-choosing.ts';
export type * from './results-day.ts';
export type * from './results-spread.ts';

/**
 * What each step hands to the next. Inside the steps these hold whole Figures; the Plan keeps the same shape with ids
 * in their place (see plan.ts), so a number exists once.
 */

export interface StepBase {
  readonly verdict: Verdict;
  readonly missing: readonly Missing[];
  /** Sentences beside the verdict: cautions, explanations, what was assumed. */
  readonly notes: readonly Said[];
}

export interface VerticalMeasure {
  readonly id: string;
  readonly kind: 'stem wall' | 'cove' | 'steps';
  readonly length: Known<'m'>;
  readonly face: Figure<'m²'>;
  /** Material that rounds a cove, none for the others. */
  readonly fill?: Figure<'m³'>;
}

export interface CrackMeasure {
  readonly id: string;
  readonly area: string;
  readonly length: Figure<'m'>;
  /** Widest reading. */
  readonly width?: Known<'m'>;
  readonly moves: 'yes' | 'no' | 'not known';
}

export interface JointMeasure {
  readonly id: string;
  readonly area: string;
  readonly kind: 'isolation' | 'contraction' | 'construction';
  readonly length: Figure<'m'>;
}

export interface SpotMeasure {
  readonly id: string;
  readonly area: string;
  readonly kind: string;
  readonly extent: Known<'m²'>;
  readonly depth?: Known<'m'>;
}

export type Point = readonly [x: number, y: number];

export interface AreaMeasure {
  readonly id: string;
  readonly name: string;
  /** Outline and holes in metres, counter-clockwise: drawing data, not figures. */
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  /** Floor less holes. */
  readonly net: Figure<'m²'>;
  /** Walls and columns a hand machine must follow, door openings left out. */
  readonly edge: Figure<'m'>;
  /** All edges, doors included. */
  readonly perimeter: Figure<'m'>;
  readonly verticals: readonly VerticalMeasure[];
  readonly cracks: readonly CrackMeasure[];
  readonly joints: readonly JointMeasure[];
  readonly spots: readonly SpotMeasure[];
}

export interface MoistureJudged {
  readonly id: string;
  readonly method: string;
  readonly where?: string;
  readonly value?: Known;
  readonly counts: boolean;
  /** Why it does not count, when it does not. */
  readonly why: readonly Said[];
}

export interface SurveyPlan extends StepBase {
  readonly areas: readonly AreaMeasure[];
  readonly total: Figure<'m²'>;
  readonly moisture: {
    readonly tests: readonly MoistureJudged[];
    /** Highest reading that counts, by method; never the mean. */
    readonly highest: readonly { readonly method: string; readonly value: Known; readonly where?: string }[];
    readonly needed?: Figure<'1'>;
    readonly counted: Known<'1'>;
    /** Seepage, salt line, blisters or below grade: pressure from below, which no humidity test answers. */
    readonly pressureFromBelow: 'yes' | 'no' | 'not known';
  };
  /** Whether grinding off what lies on the floor may be planned at all. */
  readonly removal: 'nothing to remove' | 'may be planned' | 'held';
  /** Whether drilling, chasing or sawing may be planned. */
  readonly cutting: 'may be planned' | 'held';
  readonly slabAge?: Figure<'s'>;
  /** Least single pull-off after preparation and mean of those that count, when there are any. */
  readonly pullOff?: { readonly mean: Figure<'Pa'>; readonly least: Known<'Pa'>; readonly counted: Known<'1'> };
  /** Dew margin at each climate reading that has a slab temperature. */
  readonly margins: readonly {
    readonly at: Instant;
    readonly margin: Figure<'K'>;
    readonly dewPoint: Figure<'°C'>;
    readonly slab: Known<'°C'>;
  }[];
}

export interface MethodRanked {
  readonly method: string;
  readonly reaches: { readonly least: Known<'1'>; readonly most: Known<'1'> };
  readonly fits: boolean;
  readonly why: readonly Said[];
  readonly time?: Figure<'s'>;
  readonly dust: 'low' | 'middle' | 'high';
  readonly microCracking: 'low' | 'raised';
}

export interface Task {
  readonly id: string;
  /** Kind of work, a key of the words and of the firm's rates. */
  readonly work: string;
  readonly area?: string;
  readonly layer?: string;
  readonly quantity: Known;
  readonly rate: Known;
  /** Person-time, with its band. */
  readonly time: Figure<'s'>;
  readonly after: readonly string[];
}

export interface PreparationPlan extends StepBase {
  readonly target: {
    readonly least: Known<'1'>;
    readonly most: Known<'1'>;
    readonly from: 'data sheet' | 'film thickness';
  };
  readonly methods: readonly MethodRanked[];
  readonly chosen?: string;
  readonly passes: Known<'1'>;
  /** Removal, grinding, edges, cracks, patches, vacuum: in order. */
  readonly tasks: readonly Task[];
  /** Mean void depth used for the profile fill, by area id. */
  readonly profileDepth: Readonly<Record<string, Known<'m'>>>;
  readonly tooling: readonly Said[];
  /** Water drops, dust tape, comparator, pull-offs after preparation. */
  readonly gate: Verdict;
  readonly dust: readonly Said[];
}

export interface LayerFit {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  readonly wet: Known<'m'>;
  readonly dry: Known<'m'>;
  readonly wetVertical?: Known<'m'>;
  readonly solids: Known<'1'>;
  readonly thinnerRatio?: Known<'1'>;
  readonly reasons: Verdict;
}

export interface SystemPlan extends StepBase {
  readonly system: string;
  readonly name: string;
  readonly layers: readonly LayerFit[];
  /** The least moisture limit of all layers, by method. */
  readonly moistureLimit: readonly { readonly method: string; readonly limit: Known; readonly layer: string }[];
}

export interface LayerAreaQuantity {
  readonly area: string;
  readonly film: Figure<'m³'>;
  readonly verticals?: Figure<'m³'>;
  readonly profile?: Figure<'m³'>;
  readonly texture?: Figure<'m³'>;
  readonly porosity?: Figure<'m³'>;
}

/** What thinner does to one coat, and how much of it sheet and place bear. */
export interface CoatThinner {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  readonly allowed: 'yes' | 'no' | 'not known';
  readonly thinner?: string;
  /** Chosen in this option: volume of thinner per volume of mixed coating. */
  readonly ratio?: Known<'1'>;
  /** The same with and without thinner. */
  readonly dry: Known<'m'>;
  /** Gauge to read on the floor. */
  readonly wet: Known<'m'>;
  /** What stays when the gauge is not raised for the thinner. */
  readonly dryAtOldGauge?: Figure<'m'>;
  readonly mostBySheet?: Known<'1'>;
  readonly limit?: Known<'kg/m³'>;
  readonly mostByLimit?: Figure<'1'>;
  /** The lower of both; the sheet's alone where the limit of the place is not known or never reached. */
  readonly most?: Known<'1'>;
  /** VOC of the coating as it is used. */
  readonly voc?: Known<'kg/m³'>;
  readonly againstLimit: 'at or below the figure you entered' | 'above' | 'not known';
  readonly exempt: boolean;
  readonly longerOpenTime: 'yes' | 'no' | 'not known';
}

export interface ThinnerPlan extends StepBase {
  readonly coats: readonly CoatThinner[];
}

export interface PackChoice {
  readonly pack: string;
  readonly count: Known<'1'>;
}

export interface LayerQuantity {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  readonly areas: readonly LayerAreaQuantity[];
  /** Sum of film, verticals, profile, texture, porosity. */
  readonly net: Figure<'m³'>;
  /** Net with surplus and loss. */
  readonly needed: Figure<'m³'>;
  readonly thinner?: Figure<'m³'>;
  /** Volume of each component to be mixed in all. */
  readonly components: readonly {
    readonly component: string;
    readonly volume: Figure<'m³'>;
    readonly mass?: Figure<'kg'>;
  }[];
  readonly batches?: FigureList<'m³'>;
}

export interface BuyingLine {
  readonly kind: 'product' | 'media' | 'thinner' | 'filler';
  readonly item: string;
  readonly name: string;
  readonly layers: readonly string[];
  readonly needed: Figure<'m³' | 'kg'>;
  readonly packs: readonly PackChoice[];
  readonly bought: Figure<'m³' | 'kg'>;
  readonly left: Figure<'m³' | 'kg'>;
  readonly leftByComponent?: readonly { readonly component: string; readonly volume: Figure<'m³'> }[];
  /** `3; 4 if the texture exceeds 0.20 mm`: the driver and its break point, when one is near. */
  readonly turns?: Said;
}

export interface BroadcastQuantity {
  readonly layer: string;
  readonly media: string;
  readonly name: string;
  readonly thrown: Figure<'kg'>;
  readonly kept?: Figure<'kg'>;
  readonly back?: Figure<'kg'>;
}

export interface QuantitiesPlan extends StepBase {
  readonly layers: readonly LayerQuantity[];
  readonly broadcast: readonly BroadcastQuantity[];
  readonly buying: readonly BuyingLine[];
}

export interface HoursPlan extends StepBase {
  /** All tasks of the option in order: set-up, preparation, coats, broadcast, scrape, joints, handover. */
  readonly tasks: readonly Task[];
  readonly personTime?: Figure<'s'>;
  readonly paidTime: Known<'s'>;
  /** Gate of each coat on the climate readings given. */
  readonly gates: readonly {
    readonly layer: string;
    readonly at?: Instant;
    readonly verdict: Verdict;
    readonly margin?: Figure<'K'>;
  }[];
}

/** Batches of one size, in the order they are mixed. */
export interface BatchGroup {
  readonly count: Known<'1'>;
  readonly volume: Figure<'m³'>;
  readonly parts: readonly {
    readonly component: string;
    readonly name: string;
    readonly volume: Figure<'m³'>;
    readonly mass?: Figure<'kg'>;
  }[];
}

/** What the crew needs of one coat and its data sheet. */
export interface CoatSheet {
  readonly layer: string;
  readonly product: string;
  readonly name: string;
  readonly sheet: string;
  /** Area a volume covers at the planned film, without loss. */
  readonly coverage?: Figure<'1/m'>;
  readonly broadcast?: Known<'kg/m²'>;
  readonly mixTime?: Known<'s'>;
  readonly batches: readonly BatchGroup[];
  readonly dewMargin: Known<'K'>;
  /** Keys as the catalogue names them: slabLeast, humidityMost and so on. */
  readonly limits: readonly { readonly what: string; readonly value: Known }[];
  readonly times: readonly {
    readonly what: string;
    readonly at: Known<'°C'>;
    readonly value: Known<'s'>;
    readonly humidity?: Known<'1'>;
  }[];
  /** By temperature: pot life of material, open time on a slab that warm, batch poured out before it sets. */
  readonly ladder?: readonly {
    readonly at: Known<'°C'>;
    readonly potLife?: Figure<'s'>;
    readonly openTime?: Figure<'s'>;
    readonly batch?: Figure<'m³'>;
  }[];
}

export interface CoatsPlan extends StepBase {
  readonly coats: readonly CoatSheet[];
}

/** Solvent of one coat in the air of the room. Figures without verdict. */
export interface CoatVapour {
  readonly layer: string;
  readonly name: string;
  /** From its VOC, from everything that is not solid, or nothing leaves by its sheet. */
  readonly from: 'voc' | 'not solid' | 'none' | 'not known';
  readonly solvent?: string;
  readonly liquid?: Figure<'m³'>;
  readonly vapour?: Figure<'m³'>;
  readonly lowerLimit?: Known<'1'>;
  /** Share of the lower explosive limit in the shut room, evenly mixed. */
  readonly share?: Figure<'1'>;
  /** Air that thins it to a quarter of that limit. */
  readonly air?: Figure<'m³'>;
}

export interface SafetyPlan extends StepBase {
  readonly room?: Figure<'m³'>;
  readonly vapour: readonly CoatVapour[];
  /** What one bought pack weighs, its tins left out. */
  readonly kits: readonly {
    readonly product: string;
    readonly name: string;
    readonly pack: string;
    readonly mass: Figure<'kg'>;
  }[];
  /** What to ask the fire official about. */
  readonly permit: readonly Said[];
  readonly isocyanate: readonly string[];
  readonly amine: readonly string[];
}

export interface PriceLine {
  readonly id: string;
  readonly kind: 'material' | 'labour' | 'line' | 'contingency';
  readonly name: string;
  readonly quantity: Known;
  readonly rate: Known<'money'>;
  readonly amount: Figure<'money'>;
}

export interface PricePlan extends StepBase {
  readonly currency?: string;
  readonly lines: readonly PriceLine[];
  readonly direct?: Figure<'money'>;
  readonly price?: Figure<'money'>;
  readonly perArea?: Figure<'money/m²'>;
  readonly overhead?: Figure<'money'>;
  readonly profit?: Figure<'money'>;
  readonly tax?: Figure<'money'>;
  readonly total?: Figure<'money'>;
  readonly deposit?: Figure<'money'>;
  readonly changes: readonly {
    readonly id: string;
    readonly name: string;
    readonly amount: Figure<'money'>;
    readonly deducts: boolean;
    readonly trigger?: string;
  }[];
}
