import type { SpreadPour } from '@slabwright/core';
import type { CoatCells } from './api.ts';

/** The coat at one moment of its day, from its pours and squares alone. */

export type PourState = 'bare' | 'mixing' | 'being spread' | 'wet';

type Times = Pick<SpreadPour, 'mixFrom' | 'start' | 'end'>;

/** What a pour is at a moment (milliseconds since 1970): its end belongs to `wet`, its start to `being spread`. */
export function stateOf({ mixFrom, start, end }: Times, at: number): PourState {
  if (at >= Date.parse(end)) return 'wet';
  if (at >= Date.parse(start)) return 'being spread';
  return at >= Date.parse(mixFrom) ? 'mixing' : 'bare';
}

export interface CoatMoment {
  readonly states: readonly PourState[];
  /** Pour being spread, from 0. */
  readonly spreading: number | null;
  /** Pour being mixed, from 0; with a person who only mixes, while another is spread. */
  readonly mixing: number | null;
  /** Next pour nobody has begun, from 0. */
  readonly next: number | null;
  readonly done: boolean;
}

export function momentOf(pours: readonly Times[], at: number): CoatMoment {
  const states = pours.map((pour) => stateOf(pour, at));
  const first = (state: PourState): number | null => {
    const found = states.indexOf(state);
    return found < 0 ? null : found;
  };
  return {
    states,
    spreading: first('being spread'),
    mixing: first('mixing'),
    next: first('bare'),
    done: states.length > 0 && states.every((state) => state === 'wet'),
  };
}

/** How many squares, in their order, are spread at a moment. */
export function squaresDown({ begun, minute }: Pick<CoatCells, 'begun' | 'minute'>, at: number): number {
  const now = (at - begun) / 60_000;
  let low = 0;
  let high = minute.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((minute[middle] as number) <= now) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Moments at which something begins or ends, rising, each once. */
export function turns(pours: readonly Times[]): readonly number[] {
  const all = pours.flatMap(({ mixFrom, start, end }) => [mixFrom, start, end].map((one) => Date.parse(one)));
  return [...new Set(all)].sort((a, b) => a - b);
}

export const turnBefore = (all: readonly number[], at: number): number | null =>
  [...all].reverse().find((one) => one < at) ?? null;
export const turnAfter = (all: readonly number[], at: number): number | null => all.find((one) => one > at) ?? null;

/** The moment of a typed time of day, nearest after the start of the coat; null when it is no time. */
export function typedMoment(text: string, from: string): number | null {
  const found = /^\s*(\d{1,2})[:.h ]?(\d{2})\s*$/.exec(text);
  if (!found) return null;
  const [hour, minute] = [Number(found[1]), Number(found[2])];
  if (hour > 23 || minute > 59) return null;
  const two = (value: number): string => `${value}`.padStart(2, '0');
  const same = Date.parse(`${from.slice(0, 11)}${two(hour)}:${two(minute)}:00${from.slice(19)}`);
  const begun = Date.parse(from);
  return same < begun - 12 * 3_600_000 ? same + 86_400_000 : same;
}

/** Share of the open time an edge used, as one of three weights. */
export type Weight = 'easy' | 'half' | 'tight';
export const weightOf = (share: number): Weight => (share > 0.8 ? 'tight' : share > 0.5 ? 'half' : 'easy');
