import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { slowedRate } from '../formulas/hours-tasks.ts';
import { timeFromArea, timeFromCount, timeFromLength } from '../formulas/preparation.ts';
import type { Task } from '../results.ts';
import { WORKS, type Work, type WorkBy, type WorkRates } from './rates.ts';

export interface Place {
  /** What it is done on: layer, area, wall. With the work before it, the id of the task. */
  readonly on: readonly string[];
  readonly area?: string;
  readonly layer?: string;
  readonly after: readonly string[];
  /** How many times longer it takes than on a smooth floor. */
  readonly slower?: Known<'1'>;
}

/** Tasks of one option as they are gathered, each with its quantity, its rate and its person-time. */
export class TaskList {
  readonly tasks: Task[] = [];
  private readonly trace: Trace;
  private readonly rates: WorkRates;
  private readonly slowed = new Map<string, Figure>();

  constructor(trace: Trace, rates: WorkRates) {
    this.trace = trace;
    this.rates = rates;
  }

  area(work: WorkBy<'area'>, place: Place, area: Known<'m²'>): string {
    const rate = this.slowedRate(work, this.rates.rate<'area'>(work, 'area'), place.slower);
    return this.put(work, place, area, rate, (id) => this.trace.figure(id, timeFromArea, { area, rate }));
  }

  length(work: WorkBy<'length'>, place: Place, length: Known<'m'>): string {
    const rate = this.slowedRate(work, this.rates.rate<'length'>(work, 'length'), place.slower);
    return this.put(work, place, length, rate, (id) => this.trace.figure(id, timeFromLength, { length, rate }));
  }

  /** `row` names the line of the table of rates where one work has several. */
  count(work: WorkBy<'whole'>, place: Place, count: Known<'1'>, row: string = work): string {
    const each = this.rates.rate<'whole'>(work, 'whole', row);
    return this.put(work, place, count, each, (id) => this.trace.figure(id, timeFromCount, { count, each }));
  }

  private slowedRate<K extends Known>(work: Work, rate: K, slower: Known<'1'> | undefined): K {
    if (!slower) return rate;
    const known = this.slowed.get(work) ?? this.trace.figure(`slowed.${work}`, slowedRate, { rate, times: slower });
    this.slowed.set(work, known);
    return known as Known as K;
  }

  private put(work: Work, place: Place, quantity: Known, rate: Known, time: (id: string) => Figure<'s'>): string {
    const id = [work, ...place.on].join('/');
    this.tasks.push({
      id,
      work,
      ...(place.area ? { area: place.area } : {}),
      ...(place.layer ? { layer: place.layer } : {}),
      quantity,
      rate,
      time: time(`task.${id}.time`),
      after: place.after,
    });
    return id;
  }
}

/** Works of this step, for whoever lists words or rates. */
export const workKeys = (): readonly Work[] => Object.keys(WORKS) as Work[];
