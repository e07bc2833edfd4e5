import { SOURCES, type Source } from '../data/sources.ts';
import type { Entry } from '../kernel/entry.ts';
import type { AnyFormula } from '../kernel/formula.ts';
import type { Voice } from './say.ts';
import { show, showBand, showValue } from './show.ts';

/** The working of one number, ready to print or to lay out: what a person sees when he opens it. */
export interface Working {
  readonly id: string;
  readonly value: string;
  readonly band: string;
  /** Only for a Figure. */
  readonly says?: string;
  readonly formula?: string;
  readonly equation?: string;
  /** The equation with the numbers in it. */
  readonly numbers?: string;
  readonly inputs: readonly WorkingInput[];
  readonly source?: Source;
  readonly sourceKey?: string;
  readonly locator?: string;
  readonly notes?: string;
  /** Inputs outside the valid range, with the range in words. */
  readonly outside: readonly string[];
  /** Only for a Given. */
  readonly origin?: string;
  readonly where?: string;
  readonly when?: string;
  readonly typed?: string;
}

export interface WorkingInput {
  readonly name: string;
  readonly ids: readonly string[];
  readonly value: string;
  readonly holds?: string;
}

const escapeForRegex = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Puts the values into the equation, longest names first so that `dry` does not spoil `dryFilm`. */
function withNumbers(equation: string, values: ReadonlyMap<string, string>): string {
  const names = [...values.keys()].sort((a, b) => b.length - a.length).map(escapeForRegex);
  if (names.length === 0) return equation;
  return equation.replace(new RegExp(`\\b(${names.join('|')})\\b`, 'g'), (name) => values.get(name) ?? name);
}

function holdsText(f: AnyFormula, name: string, voice: Voice): string | undefined {
  const range = f.holds[name];
  if (!range) return undefined;
  const unit = (f.takes[name] ?? '1').replace('[]', '');
  if (unit === '*' || unit === 'money') return undefined;
  const shows = f.inputShows?.[name];
  const options = shows ? { shows } : {};
  const [least, most] = range.map((end) =>
    Number.isFinite(end) ? showValue(end, unit as Entry['unit'], voice.reader, options) : '…',
  );
  return `${least} – ${most}`;
}

/**
 * Works out what to show for an entry. `registry` holds every formula the plan used; without `ranges` the inputs come
 * without the range each holds in, which a sheet of paper has no room for.
 */
export function workingOf(
  entry: Entry,
  voice: Voice,
  registry: ReadonlyMap<string, AnyFormula>,
  ranges = true,
): Working {
  const head = { id: entry.id, value: show(entry, voice.reader), band: showBand(entry, voice.reader) };
  if (entry.kind === 'given') {
    const source = entry.source ? SOURCES.get(entry.source) : undefined;
    return {
      ...head,
      inputs: [],
      outside: [],
      origin: entry.origin,
      ...(entry.where ? { where: entry.where } : {}),
      ...(entry.when ? { when: entry.when } : {}),
      ...(entry.typed ? { typed: entry.typed } : {}),
      ...(source ? { source } : {}),
      ...(entry.source ? { sourceKey: entry.source } : {}),
    };
  }
  const f = registry.get(entry.formula);
  if (!f) throw new Error(`the figure ${entry.id} names a formula nobody declared: ${entry.formula}`);
  const values = new Map<string, string>();
  const inputs = Object.entries(entry.inputs).map(([name, at]): WorkingInput => {
    const ids = typeof at === 'string' ? [at] : at;
    const shown = ids.map((id) => voice.show(id));
    const value = shown.length > 8 ? `${shown.slice(0, 4).join(', ')} … (${shown.length})` : shown.join(', ');
    values.set(name, shown.length === 1 ? (shown[0] as string) : `[${value}]`);
    const holds = ranges ? holdsText(f, name, voice) : undefined;
    return { name, ids, value, ...(holds ? { holds } : {}) };
  });
  const source = SOURCES.get(entry.source);
  return {
    ...head,
    says: f.says,
    formula: f.id,
    equation: f.equation,
    numbers: withNumbers(f.equation, values),
    inputs,
    outside: entry.outside.map((name) => `${name}: ${holdsText(f, name, voice) ?? ''}`),
    sourceKey: entry.source,
    ...(source ? { source } : {}),
    ...(f.locator ? { locator: f.locator } : {}),
    ...(f.notes ? { notes: f.notes } : {}),
  };
}
