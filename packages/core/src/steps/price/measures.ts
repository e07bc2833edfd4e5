import { tabled } from '../../data/tabled.ts';
import type { Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { Per } from '../../price-book.ts';
import type { OptionContext } from '../context.ts';
import { crewDays, hoursPriced } from '../formulas/price-parts.ts';
import { totalMass } from '../formulas/quantities-broadcast.ts';
import { totalArea, totalLength } from '../formulas/survey.ts';
import { certain } from '../quantities/certain.ts';
import type { HoursPlan, QuantitiesPlan, SurveyPlan } from '../results.ts';
import type { Measure } from './amounts.ts';

/** What a price "per something" is multiplied with in this option. */

/** One of the unit as a Given: 1 h is 3600 s, 1 ft² is 0.0929 m². */
const ONE: Readonly<Record<Per, readonly [typed: string, unit: Unit]>> = {
  job: ['1', '1'],
  piece: ['1', '1'],
  day: ['1', '1'],
  h: ['1 h', 's'],
  'm²': ['1 m²', 'm²'],
  'ft²': ['1 ft²', 'm²'],
  m: ['1 m', 'm'],
  ft: ['1 ft', 'm'],
  kg: ['1 kg', 'kg'],
  lb: ['1 lb', 'kg'],
};

/** Length of a working day where nobody said: an assumption, common practice without a source. */
const WORKING_DAY = '8 h';
const QUARTER = '15 min';

/** Measures of an option, each traced once and only when a price asks for it. */
export class Measures {
  private readonly ctx: OptionContext;
  private readonly surveyed: SurveyPlan;
  private readonly quantified: QuantitiesPlan;
  private readonly timed: HoursPlan;
  private readonly trace: Trace;
  private readonly known = new Map<string, Known>();

  constructor(ctx: OptionContext, surveyed: SurveyPlan, quantified: QuantitiesPlan, timed: HoursPlan, trace: Trace) {
    this.ctx = ctx;
    this.surveyed = surveyed;
    this.quantified = quantified;
    this.timed = timed;
    this.trace = trace.within('measure');
  }

  /** One of the unit of a price. */
  one(per: Per): Given {
    const [typed, unit] = ONE[per];
    return this.once(`one-${per}`, (name) =>
      this.trace.given(name, { value: tabled(typed, unit), unit, origin: 'chosen', typed }),
    ) as Given;
  }

  /** How many of one thing: packs, jobs. */
  count(name: string, value: number): Known<'1'> {
    return this.once(name, (id) =>
      this.trace.given(id, { value, unit: '1', origin: 'chosen', shows: 'count' }),
    ) as Known<'1'>;
  }

  /** Floor of the option's areas, holes left out, stem walls not counted; none where no area could be measured. */
  floor(): Known<'m²'> | undefined {
    const areas = this.areas().map((area) => area.net);
    if (areas.length === 0) return undefined;
    return this.once('floor', (name) => this.trace.figure(name, totalArea, { areas })) as Known<'m²'>;
  }

  /**
   * What a line of the price book is multiplied with: the job, days of the crew, hours paid, the floor, the edges of
   * walls and columns, the grain that is bought. A piece is counted once.
   */
  of(per: Per): Measure | undefined {
    const quantity = this.quantityOf(per);
    return quantity && { quantity, per: this.one(per) };
  }

  private quantityOf(per: Per): Known | undefined {
    switch (per) {
      case 'job':
      case 'piece':
        return this.one(per);
      case 'h':
        return this.hours();
      case 'day':
        return this.days();
      case 'm²':
      case 'ft²':
        return this.floor();
      case 'm':
      case 'ft': {
        const lengths = this.areas().map((area) => area.edge);
        return lengths.length === 0
          ? undefined
          : this.once('edge', (name) => this.trace.figure(name, totalLength, { lengths }));
      }
      case 'kg':
      case 'lb':
        return this.grain();
    }
  }

  /** The firm's own hours as they are, worked-out ones in quarter hours: what is offered is a number, not a band. */
  hours(): Known<'s'> {
    const paid = this.timed.paidTime;
    if (paid.kind === 'given') return paid;
    return this.once('hours', (name) => {
      const step = this.trace.given('quarter-hour', {
        value: tabled(QUARTER, 's'),
        unit: 's',
        origin: 'chosen',
        typed: QUARTER,
        shows: 'duration',
      });
      return this.trace.figure(name, hoursPriced, { paid: certain(paid), step });
    }) as Known<'s'>;
  }

  private days(): Known<'1'> {
    return this.once('days', (name) => {
      const people = this.trace.given('people', {
        value: this.ctx.option.people,
        unit: '1',
        origin: 'chosen',
        shows: 'count',
      });
      const day = this.trace.given('working-day', {
        value: tabled(WORKING_DAY, 's'),
        unit: 's',
        origin: 'assumed',
        typed: WORKING_DAY,
        source: 'hours-common-practice',
        says: 'price-working-day-assumed',
        shows: 'duration',
      });
      return this.trace.figure(name, crewDays, { paid: this.hours(), people, day });
    }) as Known<'1'>;
  }

  private grain(): Known<'kg'> | undefined {
    const masses = this.quantified.broadcast.map((broadcast) => broadcast.thrown);
    return masses.length === 0
      ? undefined
      : (this.once('grain', (name) => this.trace.figure(name, totalMass, { masses })) as Known<'kg'>);
  }

  private areas() {
    const wanted = new Set(this.ctx.option.areas);
    return this.surveyed.areas.filter((area) => wanted.has(area.id));
  }

  private once(name: string, make: (name: string) => Known): Known {
    const known = this.known.get(name) ?? make(name);
    this.known.set(name, known);
    return known;
  }
}
