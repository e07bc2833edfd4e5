import type { Unit } from '@slabwright/core';
import type { Path, Raw } from './path.ts';

/** One declarative description of a form: which field of a file, what kind, how it is asked. */

export interface Choice {
  readonly id: string;
  readonly name: string;
}

export type Leaf =
  /** Text with any unit of its dimension. */
  | { readonly is: 'quantity'; readonly unit: Unit; readonly example: string }
  /** The same, with where it comes from and the range it is believed in. */
  | { readonly is: 'fact'; readonly unit: Unit; readonly example: string }
  | { readonly is: 'choice'; readonly choices: readonly string[]; readonly say?: Readonly<Record<string, string>> }
  /** Yes, no or not known: nobody looked is never the same as no. */
  | { readonly is: 'seen' }
  | { readonly is: 'text'; readonly long?: boolean }
  /** A whole number or a plain one, without a unit. */
  | { readonly is: 'number'; readonly example: string }
  | { readonly is: 'flag' }
  /** Yes or no, which the file must say either way. */
  | { readonly is: 'answer' }
  /** A moment of the site; where a day is enough the time may stay empty. */
  | { readonly is: 'moment'; readonly dayIsEnough?: boolean }
  | { readonly is: 'date' }
  | { readonly is: 'clock'; readonly example: string }
  | { readonly is: 'amount'; readonly example: string }
  /** Short texts, one a line. */
  | { readonly is: 'lines' }
  /** One name out of those that stand elsewhere in these files. */
  | { readonly is: 'one of'; readonly from: (root: Raw, beside: Raw, path: Path) => readonly Choice[] }
  | { readonly is: 'some of'; readonly from: (root: Raw, beside: Raw, path: Path) => readonly Choice[] }
  /** A place on the floor, and a line or ring of them. */
  | { readonly is: 'point' }
  | { readonly is: 'points'; readonly least: number };

export interface FieldPart {
  readonly part: 'field';
  readonly path: Path;
  readonly label: string;
  readonly note?: string;
  readonly leaf: Leaf;
}

export interface ListPart {
  readonly part: 'list';
  readonly path: Path;
  readonly label: string;
  readonly note?: string;
  /** What one is called on the press that adds it. */
  readonly one: string;
  /** How an item names itself when it is folded. */
  title(item: Raw): string;
  /** What a new item begins with; never a fact nobody gave. */
  begin(items: readonly Raw[]): Raw;
  readonly parts: readonly Part[];
}

export interface GroupPart {
  readonly part: 'group';
  readonly label: string;
  readonly note?: string;
  readonly parts: readonly Part[];
}

export type Part = FieldPart | ListPart | GroupPart;

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  readonly parts: readonly Part[];
}

const path = (at: string): Path => at.split('.').map((key) => (/^\d+$/.test(key) ? Number(key) : key));

export const field = (at: string, label: string, leaf: Leaf, note?: string): FieldPart => ({
  part: 'field',
  path: path(at),
  label,
  leaf,
  ...(note ? { note } : {}),
});

export const group = (label: string, parts: readonly Part[], note?: string): GroupPart => ({
  part: 'group',
  label,
  parts,
  ...(note ? { note } : {}),
});

export const list = (at: string, label: string, rest: Omit<ListPart, 'part' | 'path' | 'label'>): ListPart => ({
  part: 'list',
  path: path(at),
  label,
  ...rest,
});

export const quantity = (unit: Unit, example: string): Leaf => ({ is: 'quantity', unit, example });
export const fact = (unit: Unit, example: string): Leaf => ({ is: 'fact', unit, example });
export const choice = (choices: readonly string[], say?: Readonly<Record<string, string>>): Leaf => ({
  is: 'choice',
  choices,
  ...(say ? { say } : {}),
});
export const SEEN: Leaf = { is: 'seen' };
export const TEXT: Leaf = { is: 'text' };
export const LONG: Leaf = { is: 'text', long: true };
export const FLAG: Leaf = { is: 'flag' };
export const DATE: Leaf = { is: 'date' };
export const MOMENT: Leaf = { is: 'moment' };
export const DAY_OR_MOMENT: Leaf = { is: 'moment', dayIsEnough: true };
export const number = (example: string): Leaf => ({ is: 'number', example });

/** Every field of a section with its path, items of lists under `[]`: what tests hold against the schema. */
export function fieldsOf(parts: readonly Part[], before: readonly string[] = []): readonly string[] {
  return parts.flatMap((one): readonly string[] => {
    if (one.part === 'group') return fieldsOf(one.parts, before);
    const here = [...before, ...one.path.map(String)];
    return one.part === 'field' ? [here.join('.')] : fieldsOf(one.parts, [...here, '[]']);
  });
}
