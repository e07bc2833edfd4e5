import type { Figure, FigureList, Known } from '../../kernel/entry.ts';
import { evaluate, type Formula, type OutputUnit, type Takes, type Values } from '../../kernel/formula.ts';
import { type Inputs, Trace, type UnitGiven } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';

const NO_INPUTS: Figure['inputs'] = Object.freeze({});

type AnyInputs = Readonly<Record<string, Known | readonly Known[] | undefined>>;

/**
 * Values alone, by the same formulas with the same checks: what two hundred systems are ranked by. A figure knows its
 * id and how it is shown, not what it was worked out from; the working of one system is asked for by itself.
 */
export class QuickTrace extends Trace {
  override within(name: string): QuickTrace {
    return new QuickTrace(this.recorder, `${this.prefix}${name}.`, false);
  }

  override figure<T extends Takes, G extends OutputUnit, D extends string & keyof T = never>(
    name: string,
    f: Formula<T, G, D>,
    inputs: Inputs<T, D>,
  ): Figure<UnitGiven<G>> {
    const { value, outside } = evaluate(f, this.valuesOf(name, f, inputs as AnyInputs));
    const entry: { -readonly [K in keyof Figure]: Figure[K] } = {
      kind: 'figure',
      id: this.prefix + name,
      value: value as number,
      unit: unitOf(f, inputs as AnyInputs),
      formula: f.id,
      inputs: NO_INPUTS,
      source: f.source,
      outside,
    };
    if (f.shows) entry.shows = f.shows;
    this.recorder.put(entry);
    return entry as Figure<UnitGiven<G>>;
  }

  override list<T extends Takes, G extends OutputUnit, D extends string & keyof T = never>(
    name: string,
    f: Formula<T, G, D>,
    inputs: Inputs<T, D>,
  ): FigureList<UnitGiven<G>> {
    const { value, outside } = evaluate(f, this.valuesOf(name, f, inputs as AnyInputs));
    const entry = {
      kind: 'list',
      id: this.prefix + name,
      values: value as unknown as readonly number[],
      unit: unitOf(f, inputs as AnyInputs),
      formula: f.id,
      inputs: NO_INPUTS,
      source: f.source,
      outside,
      ...(f.shows ? { shows: f.shows } : {}),
    };
    this.recorder.put(entry as FigureList);
    return entry as FigureList as FigureList<UnitGiven<G>>;
  }

  private valuesOf<T extends Takes, G extends OutputUnit, D extends string & keyof T>(
    name: string,
    f: Formula<T, G, D>,
    inputs: AnyInputs,
  ): Values<T> {
    const values: Record<string, number | readonly number[]> = {};
    for (const { name: key } of f.prepared.scalars)
      values[key] = ((inputs[key] as Known | undefined) ?? this.assumedDefault(name, f, key)).value;
    for (const { name: key } of f.prepared.lists) values[key] = (inputs[key] as readonly Known[]).map((k) => k.value);
    return values as Values<T>;
  }
}

/** The unit that comes out: the formula's own, else the one of its inputs, which the full trace holds to be one. */
function unitOf(f: Pick<Formula, 'prepared' | 'takes'>, inputs: AnyInputs): Unit {
  if (f.prepared.gives) return f.prepared.gives;
  for (const key in inputs) {
    const input = inputs[key];
    if (input === undefined || !f.takes[key]?.startsWith('*')) continue;
    const one = Array.isArray(input) ? (input as readonly Known[])[0] : (input as Known);
    if (one) return one.unit;
  }
  return '1';
}
