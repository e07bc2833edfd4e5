import type { Unit } from '../kernel/unit.ts';
import { parseQuantity } from '../units/index.ts';

/** Reads a value of a table, written the way its source prints it. A row that does not parse is a mistake of ours. */
export function tabled(typed: string, unit: Unit): number {
  const parsed = parseQuantity(typed, unit);
  if (!parsed.ok) throw new Error(`a table holds ${typed}, which is no value in ${unit}`);
  return parsed.quantity.value;
}
