import table from '../../data/comparable-methods.json' with { type: 'json' };
import type { ConditionKey } from '../../evidence.ts';
import type { Shows } from '../../kernel/shows.ts';
import type { Unit } from '../../kernel/unit.ts';

/** One test method of a property: the form of its result and what must be equal before two results are compared. */
export interface Method {
  readonly id: string;
  /** Units its number may have; none for ranks and words. */
  readonly units?: readonly Unit[];
  /** Ends of its scale, where it has ends. */
  readonly scale?: readonly number[];
  /** Ranks from lowest to highest, for results that are no numbers. */
  readonly order?: readonly string[];
  readonly must: readonly ConditionKey[];
  /** The plane that failed belongs to the result. */
  readonly mode?: boolean;
  /** Pulls from metal, not from concrete. */
  readonly metal?: boolean;
  readonly source: string;
}

export type Better = 'higher' | 'lower' | 'neither';

export interface Family {
  readonly id: string;
  readonly better: Better;
  readonly shows: Shows;
  /** Claims that differ in this are claims of different things: one row each. */
  readonly setting?: ConditionKey;
  readonly methods: readonly Method[];
}

export const FAMILIES = table.families as readonly Family[];

/** Letters and figures alone: `ASTM D-638`, `astm d638` and `Tensile strength` meet their row. */
export const plain = (typed: string): string => typed.toLowerCase().replace(/[^\p{L}\p{N}.]+/gu, '');

export const familyOf = (what: string): Family | undefined => FAMILIES.find(({ id }) => plain(id) === plain(what));

/** The year or letter of an edition behind the number of a standard. */
const EDITION = /[-:]\s?((?:19|20)?\d{2}[a-z]?)(?:\(\d{4}\))?$/i;

/** A method as typed, without its edition. `ISO 527-2` and `EN 1062-7 A` keep their part. */
export function methodOf(family: Family, typed: string): { readonly method?: Method; readonly edition?: string } {
  const exact = (text: string): Method | undefined =>
    family.methods.find(({ id }) => plain(id) === plain(text) || plain(id) === plain(`ASTM ${text}`));
  const whole = exact(typed);
  if (whole) return { method: whole };
  const part = exact(typed.replace(/-\d$/, ''));
  if (part) return { method: part };
  const edition = EDITION.exec(typed)?.[1];
  const bare = edition === undefined ? undefined : exact(typed.replace(EDITION, ''));
  return bare ? { method: bare, ...(edition ? { edition } : {}) } : {};
}
