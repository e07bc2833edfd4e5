import { ALL_FORMULAS, type Entry, workingOf } from '@slabwright/core';
import type { FileOptions } from '../load.ts';
import { nearest } from '../nearest.ts';
import { type Planned, planned } from '../planned.ts';
import { columns, indent, paint } from '../print/lines.ts';
import { printWorking } from '../print/working.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

type ExplainOptions = FileOptions & {
  readonly json?: boolean;
  readonly units?: 'imperial' | 'metric';
  readonly depth: string;
};

const MOST_LISTED = 60;

/** `explain JOB path.in.plan`: one number opened down to readings, sheet lines and prices; or the entries under a path. */
export function explain(path: string, id: string, options: ExplainOptions, terminal: Terminal): number {
  const depth = Number(options.depth);
  if (!Number.isInteger(depth) || depth < 0 || depth > 20) {
    throw new BadInput([`--depth is "${options.depth}": a whole number between 0 and 20 is needed.`]);
  }
  const done = planned(path, options, terminal);
  const entry = done.plan.entries[id];
  if (!entry) return listUnder(id, done, options, terminal);
  if (options.json) {
    terminal.out(`${JSON.stringify(tree(entry, done, depth), null, 2)}\n`);
    return EXIT.fine;
  }
  terminal.out(
    `${paint(terminal, 'quiet', id)}\n${printWorking(workingOf(entry, done.voice, ALL_FORMULAS), terminal)}`,
  );
  const lines: string[] = [];
  opened(entry, done, depth, 1, lines, new Set([id]), terminal);
  if (lines.length > 0) terminal.out(`\n${lines.join('\n')}\n`);
  return EXIT.fine;
}

const inputIds = (entry: Entry): readonly string[] =>
  entry.kind === 'given' ? [] : Object.values(entry.inputs).flat();

/** Inputs below the first level, each opened once, indented by depth. */
function opened(
  entry: Entry,
  done: Planned,
  depth: number,
  level: number,
  lines: string[],
  seen: Set<string>,
  terminal: Terminal,
): void {
  for (const id of inputIds(entry)) {
    if (seen.has(id)) continue;
    seen.add(id);
    const input = done.voice.entry(id);
    const working = workingOf(input, done.voice, ALL_FORMULAS);
    const from = working.numbers ?? [working.origin, working.where, working.when].filter(Boolean).join(', ');
    lines.push(indent(level * 2)(`${id} = ${paint(terminal, 'bold', working.value)}  ${from}`));
    if (level < depth) opened(input, done, depth, level + 1, lines, seen, terminal);
  }
}

function tree(entry: Entry, done: Planned, depth: number): unknown {
  const inputs = depth === 0 ? [] : inputIds(entry).map((id) => tree(done.voice.entry(id), done, depth - 1));
  return { ...entry, shown: done.voice.show(entry.id), ...(inputs.length ? { opened: inputs } : {}) };
}

function listUnder(prefix: string, done: Planned, options: ExplainOptions, terminal: Terminal): number {
  const ids = Object.keys(done.plan.entries);
  const under = ids.filter((id) => id.startsWith(`${prefix}.`) && !id.includes('~'));
  if (under.length === 0) {
    const close = nearest(prefix, ids);
    throw new BadInput([
      `The plan holds no entry "${prefix}".${close.length ? ` Did you mean ${close.join(', ')}?` : ''} A path such as survey or ${done.plan.options[0]?.id ?? 'option'}.quantities lists what lies under it.`,
    ]);
  }
  if (options.json) {
    terminal.out(
      `${JSON.stringify(
        under.map((id) => done.plan.entries[id]),
        null,
        2,
      )}\n`,
    );
    return EXIT.fine;
  }
  const rows = under.slice(0, MOST_LISTED).map((id) => [id, done.voice.show(id)]);
  terminal.out(`${columns(rows, { gap: 3 }).join('\n')}\n`);
  if (under.length > MOST_LISTED) terminal.out(`… and ${under.length - MOST_LISTED} more; name a longer path.\n`);
  return EXIT.fine;
}
