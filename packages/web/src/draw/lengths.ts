import { parseQuantity } from '@slabwright/core';
import type { Dot, Units } from '../worker/api.ts';

/** Lengths between the text a person types and metres. What is typed stays as typed; only what a hand drew is written by us. */

export const FOOT = 0.3048;
export const INCH = 0.0254;

/** A drawing reads the same few texts at every move of a hand. */
const known = new Map<string, number | null>();
const MOST_KNOWN = 5000;

/** Metres of a typed length, or null while it cannot be read. */
export function metres(text: unknown): number | null {
  if (typeof text !== 'string') return null;
  const before = known.get(text);
  if (before !== undefined) return before;
  const parsed = parseQuantity(text, 'm');
  const value = parsed.ok ? parsed.quantity.value : null;
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(text, value);
  return value;
}

/** A drawn length as a tape would read it: to the eighth of an inch or the half centimetre. */
export function lengthText(value: number, units: Units): string {
  if (units === 'metric') return `${Number((Math.round(value * 200) / 200).toFixed(3))} m`;
  const sign = value < 0 ? '-' : '';
  const eighths = Math.round((Math.abs(value) / INCH) * 8);
  const feet = Math.floor(eighths / 96);
  const inches = Math.floor((eighths % 96) / 8);
  const rest = eighths % 8;
  if (eighths === 0) return '0 ft';
  const part = rest % 4 === 0 ? `${rest / 4}/2` : rest % 2 === 0 ? `${rest / 2}/4` : `${rest}/8`;
  const inchText = [inches > 0 ? `${inches}` : '', rest > 0 ? part : ''].filter(Boolean).join(' ');
  return `${sign}${[feet > 0 ? `${feet} ft` : '', inchText ? `${inchText} in` : ''].filter(Boolean).join(' ')}`;
}

export type TypedDot = readonly [unknown, unknown];

export function dotOf(typed: unknown): Dot | null {
  if (!Array.isArray(typed)) return null;
  const [x, y] = [metres(typed[0]), metres(typed[1])];
  return x === null || y === null ? null : [x, y];
}

/** The dots of a typed line that can be read; those half typed are left out of the drawing, not of the file. */
export const dotsOf = (typed: unknown): readonly Dot[] =>
  Array.isArray(typed) ? typed.map(dotOf).filter((dot): dot is Dot => dot !== null) : [];

export const typedDot = ([x, y]: Dot, units: Units): [string, string] => [lengthText(x, units), lengthText(y, units)];

export const distance = (a: Dot, b: Dot): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
