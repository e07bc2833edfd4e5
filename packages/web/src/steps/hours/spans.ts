import { words } from '../../words.ts';
import type { Shown } from '../../worker/api.ts';

/** Room between two moments, said as a figure: how long before a window closes, how early a floor is ready. */

const MINUTE = 60_000;

const MOST_MINUTES = 60;
const MOST_HOURS = 48;

/** Minutes under an hour, `2:45` under two days, whole hours above; `like` writes it as that one is written. */
export function lengthText(
  milliseconds: number,
  like: number = milliseconds,
): { readonly number: string; readonly unit: string } {
  const minutes = Math.round(Math.abs(milliseconds) / MINUTE);
  const size = Math.round(Math.abs(like) / MINUTE);
  const sign = milliseconds < 0 && minutes > 0 ? '−' : '';
  if (size < MOST_MINUTES) return { number: `${sign}${minutes}`, unit: 'min' };
  if (size >= MOST_HOURS * 60) return { number: `${sign}${Math.round(minutes / 60)}`, unit: 'h' };
  return { number: `${sign}${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`, unit: 'h' };
}

interface Room {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
}

/** Room in milliseconds as a figure that stands against a limit of none. */
export function roomShown({ value, low, high }: Room): Shown {
  const { number, unit } = lengthText(value);
  const known = low !== undefined && high !== undefined;
  const band = known ? `${lengthText(low, value).number} ${words.hours.to} ${lengthText(high, value).number}` : '';
  return {
    kind: 'figure',
    text: `${number} ${unit}`,
    number,
    unit,
    band,
    value: value / 1000,
    ...(low === undefined || high === undefined ? {} : { low: low / 1000, high: high / 1000 }),
    in: 's',
    outside: false,
  };
}

export const NO_ROOM: Shown = {
  kind: 'figure',
  text: '0',
  number: '0',
  unit: '',
  band: '',
  value: 0,
  in: 's',
  outside: false,
};
