import type { JobFile } from '@slabwright/core';
import { dotOf, typedDot } from '../draw/lengths.ts';
import { extentOf } from '../floor/geometry.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';

/** Tape lines of an option: lines at which somebody chose to end the film, kept in the job with the option. */

type Line = NonNullable<JobFile['options'][number]['stopLines']>[number];

export interface Tape {
  /** Place in the option's list. */
  readonly index: number;
  readonly id: string;
  readonly line: Line;
  /** Null while it cannot be read as a place. */
  readonly from: Dot | null;
  readonly to: Dot | null;
}

export type TapeEnd = 'from' | 'to';

const optionIn = (file: JobFile, option: string | null) => file.options.find(({ id }) => id === option);

export const tapesOf = (file: JobFile, option: string | null, area: string): readonly Tape[] =>
  (optionIn(file, option)?.stopLines ?? []).flatMap((line, index) =>
    line.area === area ? [{ index, id: line.id, line, from: dotOf(line.from), to: dotOf(line.to) }] : [],
  );

/** A new line straight across the middle of the floor, to be moved from there. */
export function addTape(file: JobFile, option: string | null, area: AreaDrawing, units: Units): void {
  const chosen = optionIn(file, option);
  const extent = extentOf(area.outline);
  if (!chosen || !extent) return;
  const middle = (extent.least[1] + extent.most[1]) / 2;
  const lines = chosen.stopLines ?? [];
  const taken = new Set(lines.map(({ id }) => id));
  let number = lines.length + 1;
  while (taken.has(`tape-${number}`)) number += 1;
  chosen.stopLines = [
    ...lines,
    {
      id: `tape-${number}`,
      area: area.id,
      from: typedDot([extent.least[0], middle], units),
      to: typedDot([extent.most[0], middle], units),
    },
  ];
}

export function removeTape(file: JobFile, option: string | null, index: number): void {
  const chosen = optionIn(file, option);
  if (!chosen?.stopLines) return;
  const rest = chosen.stopLines.filter((_, i) => i !== index);
  if (rest.length > 0) chosen.stopLines = rest;
  else delete chosen.stopLines;
}

/** One end moved by hand, or one of its two lengths typed. */
export function moveTape(file: JobFile, option: string | null, index: number, end: TapeEnd, to: Line['from']): void {
  const line = optionIn(file, option)?.stopLines?.[index];
  if (line) line[end] = to;
}

/** A place no further out than the walls. */
export function within(area: AreaDrawing, [x, y]: Dot): Dot {
  const extent = extentOf(area.outline);
  if (!extent) return [x, y];
  const hold = (value: number, axis: 0 | 1): number => Math.min(Math.max(value, extent.least[axis]), extent.most[axis]);
  return [hold(x, 0), hold(y, 1)];
}
