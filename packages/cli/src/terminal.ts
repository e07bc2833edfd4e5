/** What a verb may do to the world: print, and know the clock, the width and whether colour is wanted. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  readonly colour: boolean;
  readonly width: number;
  now(): string;
}

/** Exit status of the whole command. */
export const EXIT = { fine: 0, halted: 1, badInput: 2 } as const;

/** Bad input found by a verb: printed as it is, exit status 2. */
export class BadInput extends Error {
  override readonly name = 'BadInput';
  readonly lines: readonly string[];
  /** The same as data, for `--json`. */
  readonly issues: readonly unknown[];
  constructor(lines: readonly string[], issues: readonly unknown[] = []) {
    super(lines.join('\n'));
    this.lines = lines;
    this.issues = issues;
  }
}
