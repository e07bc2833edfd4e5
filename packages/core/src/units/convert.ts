import type { Unit } from '../kernel/unit.ts';
import { dimensionWords, intoSI, meaningOf, outOfSI, type TradeUnit } from './trade-unit.ts';

const named = (name: string): readonly [TradeUnit, ...TradeUnit[]] => {
  const meaning = meaningOf(name);
  if (meaning.is !== 'units') throw new Error(`no unit is named ${name}`);
  return meaning.units;
};

/** The unit of that name that belongs to an SI unit of the core. Throws where code names a unit that does not. */
export const unitFor = (unit: Unit, name: string): TradeUnit => {
  const found = named(name).find((candidate) => candidate.unit === unit);
  if (found === undefined) throw new Error(`${name} is no unit of ${dimensionWords(unit)} (${unit})`);
  return found;
};

/**
 * An SI value as a unit of the trade reads it; `°F` for a difference in K has no offset.
 * Throws for a unit name that does not exist or has another dimension: that is a mistake in code, not of a person.
 */
export const convert = (valueSI: number, unit: Unit, to: string): number => outOfSI(valueSI, unitFor(unit, to));

/** A reading in a unit of the trade, in SI. `°F` means a temperature here and `F°` a difference. Throws as `convert`. */
export const toSI = (value: number, from: string): { value: number; unit: Unit } => {
  const [unit] = named(from);
  return { value: intoSI(value, unit), unit: unit.unit };
};
