import { answered, canonicalText, type OptionPlan, severity, spread } from '@slabwright/core';
import type { FileOptions } from '../load.ts';
import { planned } from '../planned.ts';
import { floorText, issueLine } from '../print/floor-spread.ts';
import { printSpreads } from '../print/spread.ts';
import { readInput } from '../read-file.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

export interface SpreadVerbOptions extends FileOptions {
  readonly json?: boolean;
  readonly units?: 'imperial' | 'metric';
  /** `quick`, `full`, or a number of candidates. */
  readonly effort?: string;
}

type Search = 'quick' | 'full' | number;

function searchOf(effort: string | undefined): Search {
  if (effort === undefined || effort === 'quick' || effort === 'full') return effort ?? 'quick';
  const candidates = Number(effort);
  if (Number.isInteger(candidates) && candidates >= 1 && candidates <= 1_000_000) return candidates;
  throw new BadInput([`--effort is "${effort}"; it must be quick, full, or 1 to 1000000 candidates.`]);
}

/** `spread JOB|FLOOR`: the order of pours. Exit status 0 when one is found, 1 when none is, 2 for bad input. */
export function spreadVerb(path: string, options: SpreadVerbOptions, terminal: Terminal): number {
  return path === '-'
    ? spreadText(readInput(path, 'job.json').text, options, terminal)
    : spreadFile(path, options, terminal);
}

function spreadFile(path: string, options: SpreadVerbOptions, terminal: Terminal): number {
  const search = searchOf(options.effort);
  const floor = floorIn(readInput(path, 'job.json').text);
  return floor === undefined ? ofJob(path, options, search, terminal) : ofFloor(path, floor, options, search, terminal);
}

/** What came through standard input: a job says so by its `schema`, a floor by its `format`. */
export function spreadText(text: string, options: SpreadVerbOptions, terminal: Terminal): number {
  const search = searchOf(options.effort);
  const floor = floorIn(text);
  return floor === undefined
    ? ofJob('-', { ...options, text }, search, terminal)
    : ofFloor('-', floor, options, search, terminal);
}

/** The parsed text when it is a floor in the instance format and no job. */
function floorIn(text: string): unknown {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (trouble) {
    if (trouble instanceof SyntaxError) return undefined;
    throw trouble;
  }
  if (typeof json !== 'object' || json === null || 'schema' in json) return undefined;
  const inner: unknown = 'instance' in json ? json.instance : json;
  return typeof inner === 'object' && inner !== null && 'format' in inner ? json : undefined;
}

function ofJob(path: string, options: SpreadVerbOptions, search: Search, terminal: Terminal): number {
  const done = planned(path, { ...options, spread: search }, terminal);
  const leading = done.plan.options.find(({ accepted }) => accepted) ?? done.plan.options[0];
  if (!leading?.spread) {
    throw new BadInput([`${path}: no option is drawn up, so there is nothing to spread. Add one under "options".`]);
  }
  terminal.out(
    options.json
      ? `${canonicalText(withEntries(leading, done.plan.entries), 1)}\n`
      : printSpreads(done, leading, leading.spread, terminal),
  );
  const found = answered(leading.spread) && leading.spread.coats.every(({ state }) => state === 'planned');
  return found && severity(leading.spread.verdict.word) >= severity('caution') ? EXIT.fine : EXIT.halted;
}

/** The spread of one option with the numbers it names. */
function withEntries(option: OptionPlan, entries: Readonly<Record<string, unknown>>): unknown {
  const own = Object.entries(entries).filter(([id]) => id.startsWith(`${option.id}.`));
  return { option: option.id, spread: option.spread, entries: Object.fromEntries(own) };
}

function ofFloor(path: string, json: unknown, options: SpreadVerbOptions, search: Search, terminal: Terminal): number {
  const read = spread.readInstance(json);
  if (!read.ok) {
    throw new BadInput(
      read.issues.map((issue) => `${path}: ${issueLine(issue)}`),
      read.issues,
    );
  }
  const question = read.value;
  const squares = squaresOf(question);
  const quick = spread.quickEffort(squares);
  const effort =
    search === 'quick' ? quick : search === 'full' ? spread.fullEffort(squares) : { ...quick, candidates: search };
  const found = spread.planSpread(question, { areas: 'clipped', effort, seed: 1 });
  if (found.kind === 'issues') {
    throw new BadInput(
      found.issues.map((issue) => `${path}: ${issueLine(issue)}`),
      found.issues,
    );
  }
  const repairs = found.kind === 'none' ? spread.repairsFor(found.problem, REPAIRS) : [];
  if (options.json) {
    const answer =
      found.kind === 'plan'
        ? { instance: { format: 'spread-instance-1', ...question }, solution: found.solution, checker: found.check }
        : {
            instance: { format: 'spread-instance-1', ...question },
            reasons: spread.arithmeticReasons(found.problem),
            repairs: repairs.map(({ kind, tried, repair }) => ({
              kind,
              tried,
              ...(repair ? { code: repair.code, figures: repair.figures, solution: repair.plan.solution } : {}),
            })),
            checker: found.check,
          };
    terminal.out(`${canonicalText(answer, 1)}\n`);
  } else terminal.out(floorText(found, repairs));
  return found.kind === 'plan' ? EXIT.fine : EXIT.halted;
}

/** Each change is planned with so many orders; what needs more to be found is not offered. */
const REPAIRS = { areas: 'clipped', effort: { candidates: 60, nodes: 0 }, seed: 1 } as const;

function squaresOf({ outline, cellM }: spread.SpreadCase): number {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const area = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys));
  return cellM > 0 ? area / cellM ** 2 : 1;
}
