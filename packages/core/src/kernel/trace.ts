import { addCauses, bandOf, deviationOf } from './band.ts';
import type { Causes, Entry, Figure, FigureList, Given, Known, Series } from './entry.ts';
import { type AnyFormula, evaluate, type Formula, type OutputUnit, type Takes, type Values } from './formula.ts';
import { Refuse } from './refusal.ts';
import type { Unit } from './unit.ts';

/** Where entries go. The plan keeps them in one flat table; a benchmark drops them. */
export interface Recorder {
  put(entry: Entry): void;
}

/** Keeps every entry by id. A second entry under one id is a mistake of ours, so it throws. */
export class Ledger implements Recorder {
  /** The one flat table, as a plan carries it: filled once, never copied. Without a prototype no id is there before. */
  readonly table: Record<string, Entry> = Object.create(null);
  put(entry: Entry): void {
    const { id } = entry;
    if (id in this.table) throw new Error(`two entries with the id ${id}`);
    this.table[id] = entry;
  }

  /** The same as a map. */
  get entries(): ReadonlyMap<string, Entry> {
    return new Map(Object.entries(this.table));
  }
}

type InputOf<U> = U extends '*[]'
  ? readonly Known[]
  : U extends '*'
    ? Known
    : U extends `${infer One}[]`
      ? readonly Known<One & Unit>[]
      : Known<U & Unit>;

/** Traced inputs of a formula: a missing or misnamed one does not compile; those with a default may be left out. */
export type Inputs<T extends Takes, D extends string> = {
  readonly [K in Exclude<keyof T, D>]: InputOf<T[K]>;
} & { readonly [K in Extract<keyof T, D>]?: InputOf<T[K]> };

export type UnitGiven<G extends OutputUnit> = G extends '*' | '*[]'
  ? Unit
  : G extends `${infer One}[]`
    ? One & Unit
    : G & Unit;

export type GivenParts<U extends Unit> = Omit<Given<U>, 'kind' | 'id'>;
export type SeriesParts<U extends Unit> = Omit<Series<U>, 'kind' | 'id'>;

/**
 * Hands out Givens and Figures and records each. Every step works through one, so no number reaches a Plan without
 * its working.
 */
export class Trace {
  protected readonly recorder: Recorder;
  protected readonly prefix: string;
  /** False where only values are compared, so that what explains a value may be left out. */
  readonly bands: boolean;

  /** Without bands a figure is its value alone: for ranking many systems, where only the values are compared. */
  constructor(recorder: Recorder, prefix = '', bands = true) {
    this.recorder = recorder;
    this.prefix = prefix;
    this.bands = bands;
  }

  /** The same trace with ids under `name.` */
  within(name: string): Trace {
    return new Trace(this.recorder, `${this.prefix}${name}.`, this.bands);
  }

  idOf(name: string): string {
    return this.prefix + name;
  }

  given<U extends Unit>(name: string, parts: GivenParts<U>): Given<U> {
    if (!Number.isFinite(parts.value)) throw new Error(`given ${this.prefix + name} is not a number`);
    const causes = parts.causes;
    const entry = {
      kind: 'given',
      id: this.prefix + name,
      ...parts,
      ...(causes && !parts.band ? { band: bandOf(parts.value, causes) } : {}),
    } as Given<U>;
    this.recorder.put(entry);
    return entry;
  }

  /** Evaluates a formula and records the Figure. Throws `FormulaRefused` where no honest number exists. */
  figure<T extends Takes, G extends OutputUnit, D extends string & keyof T = never>(
    name: string,
    f: Formula<T, G, D>,
    inputs: Inputs<T, D>,
  ): Figure<UnitGiven<G>> {
    const { values, ids, uncertain, unit } = this.gather(name, f, inputs as never);
    const { value, outside } = evaluate(f, values);
    const own = this.bands ? f.band?.(values, value as number) : undefined;
    const causes = uncertain && this.bands ? propagate(f, values, inputs as never, own?.causes) : own?.causes;
    const band = own?.band ?? (causes ? bandOf(value as number, causes) : undefined);
    // Fields are set one by one: spreading three optional objects cost more than the evaluation.
    const entry: { -readonly [K in keyof Figure]: Figure[K] } = {
      kind: 'figure',
      id: this.prefix + name,
      value: value as number,
      unit,
      formula: f.id,
      inputs: ids,
      source: f.source,
      outside,
    };
    if (band) entry.band = band;
    if (causes) entry.causes = causes;
    if (f.shows) entry.shows = f.shows;
    this.recorder.put(entry);
    return entry as Figure<UnitGiven<G>>;
  }

  /** The same for a formula that gives a list. */
  list<T extends Takes, G extends OutputUnit, D extends string & keyof T = never>(
    name: string,
    f: Formula<T, G, D>,
    inputs: Inputs<T, D>,
  ): FigureList<UnitGiven<G>> {
    const { values, ids, unit } = this.gather(name, f, inputs as never);
    const { value, outside } = evaluate(f, values);
    const entry = {
      kind: 'list',
      id: this.prefix + name,
      values: value,
      unit,
      formula: f.id,
      inputs: ids,
      source: f.source,
      outside,
      ...(f.shows ? { shows: f.shows } : {}),
    } as unknown as FigureList<UnitGiven<G>>;
    this.recorder.put(entry);
    return entry;
  }

  series<U extends Unit>(name: string, parts: SeriesParts<U>): Series<U> {
    const entry: Series<U> = { kind: 'series', id: this.prefix + name, ...parts };
    this.recorder.put(entry);
    return entry;
  }

  /**
   * A number taken out of a series by a formula: its least, its value at a moment. The caller works it out on the
   * series at its full fineness; the Figure names the formula and the ids it was taken from.
   */
  taken<U extends Unit>(
    name: string,
    f: AnyFormula,
    parts: Pick<Figure<U>, 'value' | 'unit' | 'inputs' | 'band' | 'causes' | 'shows'>,
  ): Figure<U> {
    if (!Number.isFinite(parts.value)) throw new Error(`figure ${this.prefix + name} is not a number`);
    const entry: Figure<U> = {
      kind: 'figure',
      id: this.prefix + name,
      formula: f.id,
      source: f.source,
      outside: [],
      ...parts,
    };
    this.recorder.put(entry);
    return entry;
  }

  private gather<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
    name: string,
    f: Formula<T, G, D>,
    inputs: Readonly<Record<string, Known | readonly Known[] | undefined>>,
  ) {
    const values: Record<string, number | readonly number[]> = {};
    const ids: Record<string, string | readonly string[]> = {};
    let uncertain = false;
    let same: Unit | undefined;
    for (const { name: key } of f.prepared.scalars) {
      const known = (inputs[key] as Known | undefined) ?? this.assumedDefault(name, f, key);
      values[key] = known.value;
      ids[key] = known.id;
      uncertain ||= known.causes !== undefined;
      if (f.takes[key] === '*') same = sameUnit(f.id, same, known.unit);
    }
    for (const { name: key } of f.prepared.lists) {
      const list = inputs[key] as readonly Known[];
      values[key] = list.map((k) => k.value);
      ids[key] = list.map((k) => k.id);
      uncertain ||= list.some((k) => k.causes !== undefined);
      if (f.takes[key] === '*[]') for (const k of list) same = sameUnit(f.id, same, k.unit);
    }
    const unit = f.prepared.gives ?? same ?? '1';
    return { values: values as Values<T>, ids, uncertain, unit };
  }

  protected assumedDefault<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
    name: string,
    f: Formula<T, G, D>,
    key: string,
  ): Given {
    const value = (f.defaults as Readonly<Record<string, number>> | undefined)?.[key];
    if (value === undefined) throw new Error(`${f.id} needs ${key}`);
    const shows = f.inputShows?.[key as keyof T];
    return this.given(`${name}~${key}`, {
      value,
      unit: f.takes[key] as Unit,
      origin: 'assumed',
      where: f.id,
      ...(shows ? { shows } : {}),
    });
  }
}

function sameUnit(id: string, before: Unit | undefined, now: Unit): Unit {
  if (before !== undefined && before !== now) throw new Error(`${id} mixes ${before} with ${now}`);
  return now;
}

/**
 * First-order propagation: the slope of the formula at the value, by a central difference half a standard deviation
 * wide, times each named cause of that input. Causes shared by several inputs add with their sign.
 */
function propagate<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
  f: Formula<T, G, D>,
  values: Values<T>,
  inputs: Readonly<Record<string, Known | readonly Known[] | undefined>>,
  own: Causes | undefined,
): Causes {
  const onto: Record<string, number> = { ...own };
  // One copy is moved input by input: a copy for each side of each slope cost more than the slopes.
  const moved = { ...values } as Record<string, number | number[]>;
  const slope = (put: (value: number) => void, value: number, step: number): number => {
    put(value + step);
    const high = tryCompute(f, moved as Values<T>);
    put(value - step);
    const low = tryCompute(f, moved as Values<T>);
    put(value);
    if (high !== undefined && low !== undefined) return (high - low) / (2 * step);
    const here = f.compute(values) as number;
    if (high !== undefined) return (high - here) / step;
    return low === undefined ? 0 : (here - low) / step;
  };
  for (const key in inputs) {
    const input = inputs[key];
    if (input === undefined) continue;
    if (!Array.isArray(input)) {
      const known = input as Known;
      if (!known.causes) continue;
      const step = deviationOf(known.causes) / 2;
      const put = (value: number): void => {
        moved[key] = value;
      };
      if (step > 0) addCauses(onto, known.causes, slope(put, known.value, step));
      continue;
    }
    const list = [...(values[key] as readonly number[])];
    moved[key] = list;
    (input as readonly Known[]).forEach((known, i) => {
      if (!known.causes) return;
      const step = deviationOf(known.causes) / 2;
      if (step === 0) return;
      const put = (value: number): void => {
        list[i] = value;
      };
      addCauses(onto, known.causes, slope(put, known.value, step));
    });
  }
  return onto;
}

/** `compute` may refuse just beside a limit; the slope is then taken from the other side. */
function tryCompute<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
  f: Formula<T, G, D>,
  values: Values<T>,
): number | undefined {
  try {
    const value = f.compute(values) as number;
    return Number.isFinite(value) ? value : undefined;
  } catch (trouble) {
    if (trouble instanceof Refuse) return undefined;
    throw trouble;
  }
}
