import type { Band, Causes } from './entry.ts';
import { FormulaRefused, Refuse } from './refusal.ts';
import type { Shows } from './shows.ts';
import type { Unit } from './unit.ts';

/** `'m'` takes one number, `'m[]'` a list; `'*'` and `'*[]'` take any one unit, the same throughout a call. */
export type InputUnit = Unit | `${Unit}[]` | '*' | '*[]';
export type OutputUnit = Unit | `${Unit}[]` | '*' | '*[]';
export type Range = readonly [least: number, most: number];
export type Takes = Readonly<Record<string, InputUnit>>;

/** The plain SI numbers `compute` receives. */
export type Values<T extends Takes> = {
  readonly [K in keyof T]: T[K] extends `${string}[]` ? readonly number[] : number;
};

export interface OwnBand {
  readonly band?: Band;
  readonly causes?: Causes;
}

export interface FormulaRecord<
  T extends Takes = Takes,
  G extends OutputUnit = OutputUnit,
  D extends string & keyof T = never,
> {
  /** Stable id, `family/name`. */
  readonly id: string;
  /** One sentence: what comes out. */
  readonly says: string;
  /** The equation in the names of the inputs. */
  readonly equation: string;
  readonly takes: T;
  readonly gives: G;
  /** Valid range by input, in SI. Outside it the Figure is flagged. */
  readonly holds: { readonly [K in keyof T]?: Range };
  /** Range by input beyond which no number is given at all: outside physics or sense. */
  readonly refuses?: { readonly [K in keyof T]?: Range };
  /** Values assumed when an input is not given, in SI. */
  readonly defaults?: { readonly [K in D]: number };
  /** Lists that must have the same length. */
  readonly together?: readonly (readonly (string & keyof T)[])[];
  /** Key of the source in data/sources.json. */
  readonly source: string;
  /** Section, equation or table in that source. */
  readonly locator?: string;
  /** Why this law and not a rival, its accuracy, the trap. */
  readonly notes?: string;
  /** Why no published check value exists, where none does. */
  readonly noOutsideRow?: string;
  readonly shows?: Shows;
  /** How each input is shown, where its unit alone does not say. */
  readonly inputShows?: { readonly [K in keyof T]?: Shows };
  readonly compute: (values: Values<T>) => G extends `${string}[]` ? readonly number[] : number;
  /** A band or named causes of its own, beside what the inputs carry. */
  readonly band?: (values: Values<T>, value: number) => OwnBand;
  /** Inputs to flag beside those outside their range, where only several of them together show it. */
  readonly flags?: (
    values: Values<T>,
    value: G extends `${string}[]` ? readonly number[] : number,
  ) => readonly (string & keyof T)[];
}

interface Check {
  readonly name: string;
  readonly holds: Range | undefined;
  readonly refuses: Range | undefined;
}

interface Prepared {
  readonly scalars: readonly Check[];
  readonly lists: readonly Check[];
  /** The unit that comes out; none where it is the one unit of the inputs. */
  readonly gives: Unit | undefined;
}

export interface Formula<T extends Takes = Takes, G extends OutputUnit = OutputUnit, D extends string & keyof T = never>
  extends FormulaRecord<T, G, D> {
  /** Range checks laid out once, so that evaluating costs no look-ups. */
  readonly prepared: Prepared;
}

/**
 * Any formula, its exact types forgotten: what registries, pages and the terminal calculator hold. The functions
 * take `never` because only the typed record may call them directly.
 */
export interface AnyFormula
  extends Omit<
    FormulaRecord,
    'compute' | 'band' | 'flags' | 'holds' | 'refuses' | 'defaults' | 'together' | 'inputShows'
  > {
  readonly holds: Readonly<Record<string, Range | undefined>>;
  readonly refuses?: Readonly<Record<string, Range | undefined>>;
  readonly defaults?: Readonly<Record<string, number>>;
  readonly together?: readonly (readonly string[])[];
  readonly inputShows?: Readonly<Record<string, Shows | undefined>>;
  readonly compute: (values: never) => number | readonly number[];
  readonly band?: (values: never, value: number) => OwnBand;
  readonly flags?: (values: never, value: never) => readonly string[];
  readonly prepared: Prepared;
}

/** Declares a formula once. The function, checks, manual page, calculator and reference table all read this record. */
export function formula<const T extends Takes, const G extends OutputUnit, const D extends string & keyof T = never>(
  record: FormulaRecord<T, G, D>,
): Formula<T, G, D> {
  const scalars: Check[] = [];
  const lists: Check[] = [];
  for (const [name, unit] of Object.entries(record.takes)) {
    const check = { name, holds: record.holds[name], refuses: record.refuses?.[name] };
    (unit.endsWith('[]') ? lists : scalars).push(check);
  }
  const unit: string = record.gives;
  const gives = unit.startsWith('*') ? undefined : (unit.replace('[]', '') as Unit);
  return { ...record, prepared: { scalars, lists, gives } };
}

type Loose = Readonly<Record<string, number | readonly number[]>>;

const within = (value: number, range: Range | undefined): boolean =>
  range === undefined || (value >= range[0] && value <= range[1]);

function refuseOutside(f: AnyFormula, input: string, value: number, range: Range | undefined): void {
  const limits = range ?? f.holds[input];
  throw new FormulaRefused({
    code: Number.isFinite(value) ? 'formula-input-refused' : 'formula-input-not-a-number',
    formula: f.id,
    input,
    value,
    ...(limits ? { limits } : {}),
  });
}

/** Names of inputs outside the valid range; throws `FormulaRefused` for inputs no number can be given for. */
function outsideOf(f: AnyFormula, values: Loose): readonly string[] {
  let outside: string[] | undefined;
  for (const { name, holds, refuses } of f.prepared.scalars) {
    const value = values[name] as number;
    if (!Number.isFinite(value) || !within(value, refuses)) refuseOutside(f, name, value, refuses);
    if (!within(value, holds)) {
      outside ??= [];
      outside.push(name);
    }
  }
  for (const { name, holds, refuses } of f.prepared.lists) {
    let flagged = false;
    for (const value of values[name] as readonly number[]) {
      if (!Number.isFinite(value) || !within(value, refuses)) refuseOutside(f, name, value, refuses);
      flagged ||= !within(value, holds);
    }
    if (flagged) {
      outside ??= [];
      outside.push(name);
    }
  }
  for (const group of f.together ?? []) {
    const lengths = group.map((name) => (values[name] as readonly number[]).length);
    const odd = lengths.findIndex((length) => length !== lengths[0]);
    if (odd >= 0) {
      throw new FormulaRefused({
        code: 'formula-lists-differ-in-length',
        formula: f.id,
        input: group[odd] as string,
        value: lengths[odd] as number,
        limits: [lengths[0] as number, lengths[0] as number],
      });
    }
  }
  return outside ?? NONE;
}

const NONE: readonly string[] = Object.freeze([]);

export interface Evaluated<V> {
  readonly value: V;
  readonly outside: readonly string[];
}

/** Runs a formula on plain SI values with all its checks. Throws `FormulaRefused`; never returns NaN or infinity. */
export function evaluate<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
  f: Formula<T, G, D>,
  values: Values<T>,
): Evaluated<G extends `${string}[]` ? readonly number[] : number> {
  const outside = outsideOf(f as unknown as AnyFormula, values as Loose);
  let value: number | readonly number[];
  try {
    value = f.compute(values) as number | readonly number[];
  } catch (trouble) {
    if (!(trouble instanceof Refuse)) throw trouble;
    const input = trouble.input;
    const at = input === undefined ? undefined : (values as Loose)[input];
    throw new FormulaRefused({
      code: trouble.code,
      formula: f.id,
      ...(input !== undefined ? { input } : {}),
      ...(typeof at === 'number' ? { value: at } : {}),
      ...(trouble.limits ? { limits: trouble.limits } : {}),
    });
  }
  if (typeof value === 'number' ? !Number.isFinite(value) : value.some((v) => !Number.isFinite(v))) {
    throw new FormulaRefused({ code: 'formula-gives-no-number', formula: f.id });
  }
  const flagged = f.flags?.(values, value as never).filter((name) => !outside.includes(name));
  return { value: value as never, outside: flagged?.length ? [...outside, ...flagged] : outside };
}

/** The same for a formula taken out of a registry; the caller has checked names and units. */
export const evaluateAny = (f: AnyFormula, values: Loose): Evaluated<number | readonly number[]> =>
  evaluate(f as unknown as Formula, values as never);
