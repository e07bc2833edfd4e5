import {
  ALL_FORMULAS,
  type AnyFormula,
  type Entry,
  FormulaRefused,
  type Issue,
  isDecimalText,
  Ledger,
  parseAny,
  parseQuantity,
  type Reader,
  Trace,
  type Unit,
  unitNamed,
  unitsOf,
  voice,
  workingOf,
} from '@slabwright/core';
import { displayOf } from '../display.ts';
import { nearest } from '../nearest.ts';
import { printWorking } from '../print/working.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';
import { plainVoice } from '../voice.ts';

/**
 * `calc <formula-id> name=value ... [--in UNIT]`: any formula, units in and out. Works through the same trace as a
 * plan, so the working it prints is the working a plan would show.
 */
export function calc(
  id: string,
  pairs: readonly string[],
  options: { readonly in?: string; readonly json?: boolean },
  terminal: Terminal,
): number {
  const f = ALL_FORMULAS.get(id);
  if (!f) {
    const close = nearest(id, [...ALL_FORMULAS.keys()]);
    throw new BadInput([
      `There is no formula "${id}".${close.length ? ` Did you mean ${close.join(', ')}?` : ''} List them with: slabwright formulas`,
    ]);
  }
  const ledger = new Ledger();
  const trace = new Trace(ledger);
  const inputs = readInputs(f, pairs, trace);
  const entry = evaluated(f, inputs, trace, ledger);
  checkUnitAsked(f, entry.unit, options.in);
  const reader: Reader = { locale: 'en-US', units: imperialTyped(ledger) ? 'imperial' : 'metric', currency: 'USD' };
  const display = displayOf(entry, reader, options.in);
  if (options.json) {
    terminal.out(
      `${JSON.stringify({ ...entry, given: [...ledger.entries.values()].filter((e) => e.kind === 'given'), display }, null, 2)}\n`,
    );
    return EXIT.fine;
  }
  const entries = Object.fromEntries(ledger.entries);
  const working = workingOf(entry, voice('en', reader, entries), ALL_FORMULAS);
  terminal.out(printWorking(working, terminal, display));
  return EXIT.fine;
}

const isList = (f: AnyFormula, name: string): boolean => (f.takes[name] as string).endsWith('[]');

function readInputs(f: AnyFormula, pairs: readonly string[], trace: Trace): Record<string, Entry | readonly Entry[]> {
  const texts = new Map<string, string>();
  for (const pair of pairs) {
    const cut = pair.indexOf('=');
    if (cut <= 0)
      throw new BadInput([`"${pair}" is not name=value. This formula takes ${Object.keys(f.takes).join(', ')}.`]);
    const name = pair.slice(0, cut);
    if (!(name in f.takes)) {
      const close = nearest(name, Object.keys(f.takes));
      throw new BadInput([
        `${f.id} has no input "${name}".${close.length ? ` Did you mean ${close.join(', ')}?` : ''} It takes ${Object.keys(f.takes).join(', ')}.`,
      ]);
    }
    if (texts.has(name)) throw new BadInput([`"${name}" is given twice.`]);
    texts.set(name, pair.slice(cut + 1));
  }
  const inputs: Record<string, Entry | readonly Entry[]> = {};
  for (const [name, unit] of Object.entries(f.takes)) {
    const typed = texts.get(name);
    if (typed === undefined) {
      if (f.defaults?.[name] !== undefined) continue;
      throw new BadInput([`${f.id} needs ${name} (${unitWords(unit)}). Write for example ${name}=${exampleOf(unit)}`]);
    }
    inputs[name] = isList(f, name)
      ? splitList(typed).map((text, i) => readOne(f, name, text, `${name}.${i + 1}`, trace))
      : readOne(f, name, typed, name, trace);
  }
  return inputs;
}

/** `1,2,3 ft`: the unit of the last one serves those that have none. */
function splitList(typed: string): readonly string[] {
  const parts = typed.split(',').map((part) => part.trim());
  const unit = /[^\d.\-+eE/\s].*$/.exec(parts.at(-1) ?? '')?.[0] ?? '';
  return parts.map((part) => (/^[-+]?[\d./\s]+(e[-+]?\d+)?$/i.test(part) && unit ? `${part} ${unit}` : part));
}

const unitWords = (unit: string): string => {
  const one = unit.replace('[]', '');
  const list = unit.endsWith('[]') ? 'a list, ' : '';
  if (one === '*') return `${list}any unit`;
  if (one === 'money') return `${list}an amount such as 1200.00`;
  return (
    list +
    unitsOf(one as Unit)
      .slice(0, 4)
      .map((u) => u.name)
      .join(', ')
  );
};

const exampleOf = (unit: string): string => {
  const one = unit.replace('[]', '');
  if (one === 'money') return '1200.00';
  if (one === '1' || one === '*') return '0.5';
  const name = unitsOf(one as Unit)[0]?.name ?? one;
  return `"5 ${name}"`;
};

function readOne(f: AnyFormula, name: string, typed: string, id: string, trace: Trace): Entry {
  const unit = (f.takes[name] as string).replace('[]', '');
  const shows = f.inputShows?.[name];
  const more = { origin: 'chosen', typed, ...(shows ? { shows } : {}) } as const;
  if (unit === 'money') {
    if (!isDecimalText(typed)) throw issueOf({ code: 'amount-malformed', path: [name], value: typed });
    return trace.given(id, { value: Math.round(Number(typed) * 100), unit: 'money', ...more });
  }
  const parsed = unit === '*' ? parseAny(typed) : parseQuantity(typed, unit as Unit);
  if (parsed.ok) return trace.given(id, { value: parsed.quantity.value, unit: parsed.quantity.unit, ...more });
  const { code, got = '', gotDimension = '', didYouMean = [] } = parsed.trouble;
  const expected = 'expectedDimension' in parsed.trouble ? String(parsed.trouble.expectedDimension) : '';
  const meant = didYouMean.length
    ? didYouMean
    : unit === '*'
      ? []
      : unitsOf(unit as Unit)
          .slice(0, 3)
          .map((u) => u.name);
  throw issueOf({
    code,
    path: [name],
    value: typed,
    names: {
      got,
      gotDimension: gotDimension.replaceAll('-', ' '),
      expectedDimension: `${expected.replaceAll('-', ' ')}: ${unitWords(unit)}`,
      didYouMean: meant.join(', '),
    },
  });
}

const issueOf = (issue: Issue): BadInput => new BadInput([plainVoice().sayIssue(issue)], [issue]);

function evaluated(
  f: AnyFormula,
  inputs: Record<string, Entry | readonly Entry[]>,
  trace: Trace,
  ledger: Ledger,
): Entry {
  try {
    return (f.gives as string).endsWith('[]')
      ? trace.list('result', f as never, inputs as never)
      : trace.figure('result', f as never, inputs as never);
  } catch (trouble) {
    if (trouble instanceof FormulaRefused) throw refusalOf(f, trouble, ledger);
    if (trouble instanceof Error && / mixes /.test(trouble.message)) {
      throw new BadInput([`All values of ${f.id} must have one unit. ${trouble.message}.`]);
    }
    throw trouble;
  }
}

function refusalOf(f: AnyFormula, { refusal }: FormulaRefused, ledger: Ledger): BadInput {
  const entry = refusal.input ? ledger.entries.get(refusal.input) : undefined;
  const typed = entry?.kind === 'given' ? (entry.typed ?? '') : refusal.value === undefined ? '' : `${refusal.value}`;
  const unit = refusal.input ? String(f.takes[refusal.input] ?? '').replace('[]', '') : '';
  const limits = refusal.limits?.map((end) => limitText(end, unit));
  const issue: Issue = {
    code: refusal.code,
    path: [refusal.input ?? f.id],
    value: typed,
    ...(limits ? { limits } : {}),
    names: { formula: f.id, input: refusal.input ?? '' },
  };
  return issueOf(issue);
}

const limitText = (end: number, unit: string): string => {
  if (!Number.isFinite(end)) return end > 0 ? 'no upper limit' : 'no lower limit';
  return unit === '' || unit === '*' || unit === '1' || unit === 'money' ? `${end}` : `${end} ${unit}`;
};

function imperialTyped(ledger: Ledger): boolean {
  let imperial = 0;
  for (const entry of ledger.entries.values()) {
    if (entry.kind !== 'given' || entry.typed === undefined) continue;
    const parsed = parseAny(entry.typed);
    if (!parsed.ok) continue;
    const system = unitNamed(parsed.quantity.typedUnit)?.system;
    imperial += system === 'imperial' ? 1 : system === 'metric' ? -1 : 0;
  }
  return imperial > 0;
}

function checkUnitAsked(f: AnyFormula, unit: Unit, asked: string | undefined): void {
  if (asked === undefined) return;
  const fits = unitsOf(unit).some((u) => u.name === asked) || parseQuantity(`1 ${asked}`, unit).ok;
  if (!fits) {
    const choices = unitsOf(unit)
      .map((u) => u.name)
      .slice(0, 8)
      .join(', ');
    throw new BadInput([
      `${f.id} gives ${unit === '1' ? 'a plain number' : `a quantity in ${unit}`}; "${asked}" does not fit. Try --in with ${choices || unit}.`,
    ]);
  }
}
