import type { Product } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { AnyFormula } from '../../kernel/formula.ts';
import type { Shows } from '../../kernel/shows.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { LEAST_P10, SMALL_RISE, type WindowReason } from '../../science/windows/index.ts';
import { givenField, sheetOf } from '../context.ts';
import { leastOf, mostOf, riseOf, shortOf } from '../formulas/day.ts';
import { marginLimit } from '../hours/margin.ts';
import type { SitePlan } from '../results.ts';

type Climate = Exclude<keyof NonNullable<Product['climate']>, 'onlyFalling'>;

interface Kind {
  readonly unit: Unit;
  readonly shows: Shows;
  readonly from: AnyFormula;
  readonly series?: (site: SitePlan) => string;
  /** Field of the sheet that sets the bound. */
  readonly limit?: Climate;
  /** Unit of the change that would open it, where it is another. */
  readonly lift?: readonly [Unit, Shows];
}

const slab = (site: SitePlan): string => site.slab.id;
const air = (site: SitePlan): string => site.air.id;
const wet = (site: SitePlan): string => site.humidity.id;
const dew = (site: SitePlan): string => site.margin.id;
const KELVIN: readonly [Unit, Shows] = ['K', 'difference'];
const SECONDS: readonly [Unit, Shows] = ['s', 'duration'];
/** Changes that are so long earlier, later or longer, whatever the reason is counted in. */
const IN_TIME = new Set(['lift-start-later', 'lift-prepare-earlier', 'lift-longer-hours', 'lift-more-weather']);
const TIME: Kind = { unit: 's', shows: 'duration', from: shortOf };

/** What each reason's numbers are, and which series they were taken from. */
const KINDS: Readonly<Record<string, Kind>> = {
  'window-slab-cold': {
    unit: '°C',
    shows: 'temperature',
    from: leastOf,
    series: slab,
    limit: 'slabLeast',
    lift: KELVIN,
  },
  'window-slab-hot': { unit: '°C', shows: 'temperature', from: mostOf, series: slab, limit: 'slabMost', lift: KELVIN },
  'window-slab-near-limit': { unit: '°C', shows: 'temperature', from: leastOf, series: slab, lift: KELVIN },
  'window-air-cold': { unit: '°C', shows: 'temperature', from: leastOf, series: air, limit: 'airLeast', lift: KELVIN },
  'window-air-hot': { unit: '°C', shows: 'temperature', from: mostOf, series: air, limit: 'airMost', lift: KELVIN },
  'window-humidity-high': { unit: '1', shows: 'humidity', from: mostOf, series: wet, limit: 'humidityMost' },
  'window-humidity-low': { unit: '1', shows: 'humidity', from: leastOf, series: wet, limit: 'humidityLeast' },
  'window-dew-margin': { unit: 'K', shows: 'difference', from: leastOf, series: dew },
  'window-dew-margin-uncertain': { unit: 'K', shows: 'difference', from: leastOf, series: dew },
  'window-rising': { unit: 'K', shows: 'difference', from: riseOf, series: slab },
  'window-rising-little': { unit: 'K', shows: 'difference', from: riseOf, series: slab },
  'window-cure-unknown': { unit: '°C', shows: 'temperature', from: leastOf, series: slab, lift: KELVIN },
  'window-wind': { unit: 'm/s', shows: 'plain', from: mostOf, limit: 'windMost' },
  'window-wind-strong': { unit: 'm/s', shows: 'plain', from: mostOf },
  'window-rain-before': { unit: 'm', shows: 'small-length', from: mostOf },
  'window-rain': { ...TIME, lift: ['m', 'small-length'] },
};

/** Limits of one product as the windows use them, each recorded once however many reasons name it. */
export class Bounds {
  private readonly known = new Map<string, Known>();
  private readonly product: Product;
  private readonly trace: Trace;

  constructor(product: Product, trace: Trace) {
    this.product = product;
    this.trace = trace;
  }

  of(code: string, value: number, kind: Kind): Known {
    const key = kind.limit ?? `${code} ${value}`;
    const known = this.known.get(key) ?? this.recorded(code, value, kind);
    this.known.set(key, known);
    return known;
  }

  private recorded(code: string, value: number, kind: Kind): Known {
    const where = sheetOf(this.product);
    const field = kind.limit && this.product.climate?.[kind.limit];
    if (field && kind.limit) return givenField<Unit>(this.trace, kind.limit, field, 'data sheet', { where });
    if (code === 'window-dew-margin') return marginLimit(this.trace, this.product);
    const name = `${code}.${this.known.size}`;
    const parts = { value, unit: kind.unit, shows: kind.shows };
    if (value === LEAST_P10 || value === SMALL_RISE || value === 0 || code === 'window-wind-strong')
      return this.trace.given(name, { ...parts, origin: 'assumed', says: 'day-bound-assumed' });
    return this.trace.given(name, { ...parts, origin: 'data sheet', where });
  }
}

/** A reason of the search as a reason of the plan: its numbers become entries, its codes stay. */
export function reasonOf(
  reason: WindowReason,
  site: SitePlan,
  bounds: Bounds,
  trace: Trace,
  names: Readonly<Record<string, string>>,
  prefix = '',
): Reason {
  const kind = KINDS[reason.code] ?? TIME;
  const series = kind.series?.(site);
  const bound = bounds.of(reason.code, reason.bound, kind);
  const value = trace.taken('value', kind.from, {
    value: reason.value,
    unit: kind.unit,
    shows: kind.shows,
    inputs: series ? { values: series } : {},
  });
  const [unit, shows] = IN_TIME.has(reason.lift.code) ? SECONDS : (kind.lift ?? [kind.unit, kind.shows]);
  const by = trace.taken('by', shortOf, {
    value: reason.lift.by,
    unit,
    shows,
    inputs: { value: value.id, bound: bound.id },
  });
  return {
    verdict: reason.verdict,
    code: `${prefix}${reason.code}`,
    figures: { value: value.id, bound: bound.id },
    names,
    source: bound.id,
    lift: { code: `${prefix}${reason.lift.code}`, figures: { by: by.id } },
  };
}
