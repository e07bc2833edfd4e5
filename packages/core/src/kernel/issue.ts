/** Something a person can fix in what they typed. The sentence for `code` stands in the message files. */
export interface Issue {
  readonly code: string;
  /** Where in the document, as JSON keys and indices. */
  readonly path: readonly (string | number)[];
  /** The value as it was typed. */
  readonly value?: string;
  /** Allowed range or choices, already in the unit of the field: `['0.3 m', '300 m']`. */
  readonly limits?: readonly string[];
  /** Other words the sentence needs: a unit, a dimension, a suggestion. */
  readonly names?: Readonly<Record<string, string>>;
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** `areas[0].outline[3]`, the way a person finds the place in the file. */
export function pathText(path: readonly (string | number)[]): string {
  let text = '';
  for (const part of path) text += typeof part === 'number' ? `[${part}]` : text === '' ? part : `.${part}`;
  return text || '(whole file)';
}
