import type { Said } from '../../kernel/said.ts';
import type { SpreadIssue } from '../../spread/index.ts';
import type { FloorPart } from './floor.ts';

/** Field, value and allowed range of an issue of the planner, for its sentence. */
export function issueNames({ path, value, limits }: SpreadIssue): Readonly<Record<string, string>> {
  const text = (given: number | string): string =>
    typeof given === 'number' ? `${Math.round(given * 1000) / 1000}` : given;
  const all = Object.fromEntries(Object.entries(limits).map(([name, limit]) => [name, text(limit)]));
  return { path, value: text(value), low: '', high: '', unit: '', lowestLane: '', ...all };
}

/** An issue of the planner in words; a door is called by its name. */
export function issueSaid(issue: SpreadIssue, part: FloorPart, names: Readonly<Record<string, string>>): Said {
  const at = /^exits\.(\d+)/.exec(issue.path)?.[1];
  const door = at === undefined ? undefined : part.exits[Number(at)]?.name;
  return {
    code: issue.code.replaceAll('/', '-'),
    names: { ...names, ...issueNames(issue), ...(door ? { path: door } : {}) },
  };
}
