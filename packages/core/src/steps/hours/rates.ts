import type { Rate } from '../../catalogue.ts';
import { tabled } from '../../data/tabled.ts';
import table from '../../data/work-rates.json' with { type: 'json' };
import type { Fact } from '../../fields.ts';
import type { Given } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { StepContext } from '../context.ts';
import { causesOfRate } from '../pace-of-crew.ts';

/** What a rate counts, and the unit it then has. */
export const RATE_UNITS = { area: 'm²/s', length: 'm/s', whole: 's' } as const;
const RATE_SHOWS = { area: 'area-rate', length: 'length-rate', whole: 'duration' } as const;
export type Counts = keyof typeof RATE_UNITS;
export type RateOf<C extends Counts> = Given<(typeof RATE_UNITS)[C]>;

/** Works of this step and what each counts; those of the preparation have rates of their own. */
export const WORKS = {
  'set-up': 'whole',
  mask: 'length',
  mix: 'whole',
  'cut-in': 'length',
  squeegee: 'area',
  'back-roll': 'area',
  'roll-thin': 'area',
  'broadcast-flake': 'area',
  'broadcast-quartz': 'area',
  scrape: 'area',
  screen: 'area',
  'stem-coat': 'length',
  'stem-roll': 'length',
  'joint-recut-and-fill': 'length',
  'pack-and-hand-over': 'whole',
} as const satisfies Readonly<Record<string, Counts>>;
export type Work = keyof typeof WORKS;
export type WorkBy<C extends Counts> = { [W in Work]: (typeof WORKS)[W] extends C ? W : never }[Work];

/** The fact of a rate when it counts what the task counts. */
function factOf(rate: Rate, counts: Counts): Fact | undefined {
  if (counts === 'area') return 'area' in rate ? rate.area : undefined;
  if (counts === 'length') return 'length' in rate ? rate.length : undefined;
  return 'whole' in rate ? rate.whole : undefined;
}

/** Rates of one option, each recorded once: the firm's own before the table of defaults. */
export class WorkRates {
  readonly notes: Said[] = [];
  private readonly ctx: StepContext;
  private readonly trace: Trace;
  private readonly found = new Map<string, Given>();

  constructor(ctx: StepContext, trace: Trace) {
    this.ctx = ctx;
    this.trace = trace.within('rate');
  }

  /** True when the firm has a rate of its own for a work. */
  ownRate = (work: string): boolean => this.firms(work) !== undefined;

  /** `row` names the line of the table where one work has several. */
  rate<C extends Counts>(work: WorkBy<C>, counts: C, row: string = work): RateOf<C> {
    const known = this.found.get(row) ?? this.own(work, counts) ?? this.fromTable(work, counts, row);
    this.found.set(row, known);
    return known as RateOf<C>;
  }

  private firms(work: string) {
    return this.ctx.catalogue.rates?.find(({ task }) => task === work);
  }

  private own(work: string, counts: Counts): Given | undefined {
    const rate = this.firms(work);
    if (!rate) return undefined;
    const fact = factOf(rate, counts);
    if (!fact) {
      // A rate that counts something else cannot be used; the table is, and the note says so.
      this.notes.push({ code: `hours-rate-counts-${counts}`, names: { work: `@task-${work}` } });
      return undefined;
    }
    const band = [fact.low ?? fact.value, fact.high ?? fact.value] as const;
    return this.trace.given(work, {
      value: fact.value,
      unit: RATE_UNITS[counts],
      origin: fact.origin,
      typed: fact.typed,
      where: fact.where ?? this.ctx.catalogue.id,
      ...(fact.when ? { when: fact.when } : {}),
      shows: RATE_SHOWS[counts],
      ...(band[1] > band[0] ? { band, causes: causesOfRate(work, counts, band) } : {}),
    });
  }

  private fromTable(work: string, counts: Counts, name: string): Given {
    const row = table.rates.find(({ task }) => task === name);
    if (!row) throw new Error(`no rate for ${name} in the table`);
    const unit = RATE_UNITS[counts];
    const band = [tabled(row.low, unit), tabled(row.high, unit)] as const;
    return this.trace.given(name, {
      value: tabled(row.typical, unit),
      unit,
      origin: row.mark === 'MEM' ? 'table' : 'assumed',
      where: row.locator,
      typed: row.typical,
      source: row.mark === 'MEM' ? table.source : table.practice,
      says: 'hours-rate-assumed',
      shows: RATE_SHOWS[counts],
      band,
      causes: causesOfRate(work, counts, band),
    });
  }
}
