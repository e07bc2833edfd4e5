import type { AnyFormula } from '../kernel/formula.ts';
import { airFormulas } from './air/index.ts';
import { bondFormulas } from './bond/index.ts';
import { cureFormulas } from './cure/index.ts';
import { dustFormulas } from './dust/index.ts';
import { filmFormulas } from './film/index.ts';
import { heatFormulas } from './heat/index.ts';
import { mixFormulas } from './mix/index.ts';
import { moistureFormulas } from './moisture/index.ts';
import { movementFormulas } from './movement/index.ts';
import { powerFormulas } from './power/index.ts';
import { priceFormulas } from './price/index.ts';
import { shapeFormulas } from './shape/index.ts';
import { statisticsFormulas } from './statistics/index.ts';
import { sunFormulas } from './sun/index.ts';
import { surfaceFormulas } from './surface/index.ts';
import { vapourFormulas } from './vapour/index.ts';
import { vocFormulas } from './voc/index.ts';
import { outgassingFormulas } from './windows/index.ts';

/** One family a line; a new family is one more. */
const FAMILIES: readonly (readonly AnyFormula[])[] = [
  airFormulas,
  bondFormulas,
  cureFormulas,
  dustFormulas,
  filmFormulas,
  heatFormulas,
  mixFormulas,
  moistureFormulas,
  movementFormulas,
  outgassingFormulas,
  powerFormulas,
  priceFormulas,
  shapeFormulas,
  statisticsFormulas,
  sunFormulas,
  surfaceFormulas,
  vapourFormulas,
  vocFormulas,
];

/** Formulas by id, in order of id. Two under one id are a mistake of ours, so it throws. */
export function byId(formulas: Iterable<AnyFormula>): ReadonlyMap<string, AnyFormula> {
  const all = new Map<string, AnyFormula>();
  for (const f of [...formulas].sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))) {
    if (all.has(f.id)) throw new Error(`two formulas with the id ${f.id}`);
    all.set(f.id, f);
  }
  return all;
}

/** Every law of the science by id: what the calculator, the manual and the reference table read. */
export const FORMULAS: ReadonlyMap<string, AnyFormula> = byId(FAMILIES.flat());

/**
 * Formulas whose id, sentence, equation or input names contain every word asked for, upper and lower case alike; all
 * of them for an empty word. Those with the word in their id come first.
 */
export function findFormulas(word: string, among: ReadonlyMap<string, AnyFormula> = FORMULAS): readonly AnyFormula[] {
  const words = word.toLowerCase().split(/\s+/).filter(Boolean);
  const found = [...among.values()].filter((f) => {
    const text = [f.id, f.says, f.equation, ...Object.keys(f.takes)].join(' ').toLowerCase();
    return words.every((w) => text.includes(w));
  });
  const inId = (f: AnyFormula): boolean => words.every((w) => f.id.includes(w));
  return [...found.filter(inId), ...found.filter((f) => !inId(f))];
}
