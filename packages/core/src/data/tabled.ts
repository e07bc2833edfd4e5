import type { Unit } from '../kernel/unit.ts';
import { parseQuantity } from '../units/index.ts';

/** Rows never change while a program runs, and each is read by every plan. */
const read = new Map<string, number>();

/** Reads a value of a table, written the way its source prints it. A row that does not parse is a mistake of ours. */
export function tabled(typed: string, unit: Unit): number {
  const key = `${unit} ${typed}`;
  const known = read.get(key);
  if (known !== undefined) return known;
  const parsed = parseQuantity(typed, unit);
  if (!parsed.ok) throw new Error(`a table holds ${typed}, which is no value in ${unit}`);
  read.set(key, parsed.quantity.value);
  return parsed.quantity.value;
}
