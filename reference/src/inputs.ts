import { type AnyFormula, parseAny, parseQuantity, type Unit } from '@slabwright/core';

export interface Inputs {
  readonly values: Readonly<Record<string, number | readonly number[]>>;
  /** Unit of inputs that take any. */
  readonly anyUnit: Unit;
}

interface Read {
  readonly value: number;
  readonly unit: Unit;
}

/** One value with its unit, in SI. Money is written in whole minor units, without a unit. */
function readOne(number: string, unit: string, expected: string, name: string): Read {
  if (expected === 'money') return { value: Number(number), unit: 'money' };
  const text = unit === '' ? number : `${number} ${unit}`;
  const parsed = expected === '*' ? parseAny(text) : parseQuantity(text, expected as Unit);
  if (!parsed.ok) throw new Error(`${name}: ${text}: ${parsed.trouble.code}`);
  return { value: parsed.quantity.value, unit: parsed.quantity.unit };
}

/** Reads `name=value unit;name=a,b,c unit` by what a formula takes. Throws for a name it does not take or misses. */
export function inputsFrom(text: string, f: AnyFormula): Inputs {
  const values: Record<string, number | readonly number[]> = { ...f.defaults };
  let anyUnit: Unit = '1';
  for (const part of text.split(';')) {
    const [name = '', given = ''] = part.split('=', 2).map((piece) => piece.trim());
    const takes = f.takes[name];
    if (takes === undefined) throw new Error(`${f.id} takes no ${name}`);
    const isList = takes.endsWith('[]');
    const expected = takes.replace('[]', '');
    const split = given.indexOf(' ');
    const [numbers, unit] = split < 0 ? [given, ''] : [given.slice(0, split), given.slice(split + 1).trim()];
    const read = numbers.split(',').map((number) => readOne(number, unit, expected, name));
    if (!isList && read.length !== 1) throw new Error(`${name} takes one value`);
    if (expected === '*') anyUnit = read[0]?.unit ?? '1';
    values[name] = isList ? read.map(({ value }) => value) : (read[0] as Read).value;
  }
  for (const name of Object.keys(f.takes)) if (!(name in values)) throw new Error(`${f.id} needs ${name}`);
  return { values, anyUnit };
}
