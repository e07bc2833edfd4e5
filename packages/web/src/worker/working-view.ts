import { OUTSIDE_CHECKS } from 'virtual:outside-checks';
import { ALL_FORMULAS, type Entry, type Voice, workingOf } from '@slabwright/core';
import type { CauseShare, OutsideState, RangeMark, WorkingView } from './api.ts';

function checkedOf(formula: string): OutsideState {
  const counts = OUTSIDE_CHECKS[formula] ?? {};
  const none = ALL_FORMULAS.get(formula)?.noOutsideRow;
  const read = counts.READ ?? 0;
  const memory = counts.MEM ?? 0;
  const all = Object.values(counts).reduce((sum, count) => sum + count, 0);
  return { read, memory, own: all - read - memory, ...(none ? { none } : {}) };
}

/** Variance of each named cause as a share of the whole. */
function causesOf(entry: Entry): readonly CauseShare[] {
  if (entry.kind === 'list' || entry.kind === 'series' || !entry.causes) return [];
  const squares = Object.entries(entry.causes).map(([cause, deviation]) => [cause, deviation * deviation] as const);
  const total = squares.reduce((sum, [, square]) => sum + square, 0);
  if (total === 0) return [];
  return squares
    .map(([cause, square]) => ({ cause, share: square / total }))
    .sort((a, b) => b.share - a.share)
    .filter(({ share }) => share >= 0.005);
}

/** Where each scalar input lies in the range its law holds for. */
function rangesOf(entry: Entry, entries: Readonly<Record<string, Entry>>, holds: readonly WorkingInputRange[]) {
  if (entry.kind === 'given') return [];
  const law = ALL_FORMULAS.get(entry.formula);
  return holds.flatMap(({ name, id, text, value }): RangeMark[] => {
    const range = law?.holds[name];
    const input = entries[id];
    if (!range || !input || (input.kind !== 'figure' && input.kind !== 'given')) return [];
    const [least, most] = range;
    if (!Number.isFinite(least) || !Number.isFinite(most) || most <= least) return [];
    const [low = '', high = ''] = text.split(' – ');
    return [{ name, least: low, most: high, value, at: (input.value - least) / (most - least) }];
  });
}

interface WorkingInputRange {
  readonly name: string;
  readonly id: string;
  readonly text: string;
  readonly value: string;
}

export function workingView(id: string, entries: Readonly<Record<string, Entry>>, voice: Voice): WorkingView | null {
  const entry = entries[id];
  if (!entry) return null;
  const working = workingOf(entry, voice, ALL_FORMULAS);
  const inputs = working.inputs.flatMap(({ name, ids, value, holds }) =>
    ids.length === 1 && holds ? [{ name, id: ids[0] as string, text: holds, value }] : [],
  );
  const usedBy = Object.values(entries)
    .filter((other) => other.kind !== 'given' && Object.values(other.inputs).flat().includes(id))
    .map((other) => other.id);
  return {
    ...working,
    unitless: entry.unit === '1',
    ranges: rangesOf(entry, entries, inputs),
    causes: causesOf(entry),
    ...(entry.kind === 'given' ? {} : { checked: checkedOf(entry.formula) }),
    usedBy,
  };
}
