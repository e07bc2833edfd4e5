import type { Said } from './said.ts';

/** From worst to best; the worst of several wins. */
export const VERDICTS = ['stop', 'not known', 'caution', 'go'] as const;
export type VerdictWord = (typeof VERDICTS)[number];

export interface Reason extends Said {
  readonly verdict: VerdictWord;
  /** Key into the bibliography, or the entry of a data sheet that sets the limit. */
  readonly source?: string;
  /** Smallest change that would lift it. */
  readonly lift?: Said;
}

/** A stop that a named person decided to go past. It never becomes go and shows everywhere. */
export interface Override {
  readonly code: string;
  readonly by: string;
  readonly on: string;
  readonly why: string;
}

export interface Verdict {
  readonly word: VerdictWord;
  readonly reasons: readonly Reason[];
  readonly overrides?: readonly Override[];
}

/** Index in order of severity: 0 is stop. */
export const severity = (word: VerdictWord): number => VERDICTS.indexOf(word);

export function worst(words: Iterable<VerdictWord>): VerdictWord {
  let found: VerdictWord = 'go';
  for (const word of words) if (severity(word) < severity(found)) found = word;
  return found;
}

/** Verdict of a step from its reasons, the worst first; no reason against it means go. */
export function verdictOf(reasons: readonly Reason[], overrides: readonly Override[] = []): Verdict {
  const sorted = [...reasons].sort((a, b) => severity(a.verdict) - severity(b.verdict));
  const used = overrides.filter((o) => sorted.some((r) => r.verdict === 'stop' && r.code === o.code));
  return { word: worst(sorted.map((r) => r.verdict)), reasons: sorted, ...(used.length ? { overrides: used } : {}) };
}
