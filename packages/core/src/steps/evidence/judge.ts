import type { ConditionKey } from '../../evidence.ts';
import type { Said } from '../../kernel/said.ts';
import { type Claim, conditionText, sameCondition, settingOf } from './claim.ts';
import { plain } from './methods.ts';

export const COMPARABLE = ['comparable', 'not comparable', 'unknown'] as const;
export type Comparable = (typeof COMPARABLE)[number];

export interface Judged {
  readonly verdict: Comparable;
  /** Why not, the differences before the gaps; empty where the two may be compared. */
  readonly reasons: readonly Said[];
  /** Remarks that change no verdict: another edition of the method. */
  readonly notes: readonly Said[];
}

const conditionWord = (key: ConditionKey | 'failureMode'): string => `@evidence-condition-${kebab(key)}`;
const kebab = (key: string): string => key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

interface Found {
  readonly differ: Said[];
  readonly gaps: Said[];
  readonly notes: Said[];
}

/**
 * Whether two claims of one property may stand side by side: the same method and every condition its row of the table
 * asks for. A difference that is known decides before a gap; a gap is never taken as equal. The order of the two
 * changes nothing but the order they are named in.
 */
export function judge(a: Claim, b: Claim): Judged {
  const found: Found = { differ: [], gaps: [], notes: [] };
  if (a.family.id !== b.family.id) {
    found.differ.push({ code: 'evidence-other-property', names: { first: a.name, second: b.name } });
    return judged(found);
  }
  if (settingOf(a) !== settingOf(b) && settingOf(a) !== '' && settingOf(b) !== '') {
    found.differ.push(differs(a, b, a.family.setting as ConditionKey));
  }
  methods(a, b, found);
  if (a.method && a.method === b.method) {
    conditions(a, b, found);
    modes(a, b, found);
    forms(a, b, found);
  }
  return judged(found);
}

const judged = ({ differ, gaps, notes }: Found): Judged => ({
  verdict: differ.length > 0 ? 'not comparable' : gaps.length > 0 ? 'unknown' : 'comparable',
  reasons: [...differ, ...gaps],
  notes,
});

function methods(a: Claim, b: Claim, { differ, gaps, notes }: Found): void {
  if (a.family.methods.length === 0) {
    gaps.push({ code: 'evidence-no-common-method', names: { property: `@evidence-property-${a.family.id}` } });
    return;
  }
  for (const claim of [a, b]) {
    if (claim.typedMethod === undefined) gaps.push({ code: 'evidence-method-missing', names: { product: claim.name } });
    else if (!claim.method) {
      gaps.push({ code: 'evidence-method-unlisted', names: { product: claim.name, method: claim.typedMethod } });
    }
  }
  if (a.method && b.method && a.method !== b.method) {
    differ.push({
      code: 'evidence-method-differs',
      names: {
        first: a.name,
        second: b.name,
        firstMethod: a.method.id,
        secondMethod: b.method.id,
        why: `@evidence-unlike-${a.family.id}`,
      },
    });
  }
  if (a.method === b.method && a.edition && b.edition && plain(a.edition) !== plain(b.edition)) {
    notes.push({
      code: 'evidence-other-edition',
      names: { method: a.method?.id ?? '', first: a.edition, second: b.edition },
    });
  }
}

const differs = (a: Claim, b: Claim, key: ConditionKey): Said => ({
  code: 'evidence-condition-differs',
  names: {
    condition: conditionWord(key),
    first: a.name,
    second: b.name,
    firstValue: conditionText(a.conditions, key) ?? '',
    secondValue: conditionText(b.conditions, key) ?? '',
  },
});

function conditions(a: Claim, b: Claim, { differ, gaps }: Found): void {
  for (const key of a.method?.must ?? []) {
    const [first, second] = [a.conditions[key], b.conditions[key]];
    if (first === undefined || second === undefined) {
      for (const claim of [a, b]) {
        if (claim.conditions[key] === undefined)
          gaps.push({
            code: 'evidence-condition-missing',
            names: { product: claim.name, condition: conditionWord(key) },
          });
      }
    } else if (key !== a.family.setting && !sameCondition(a.conditions, b.conditions, key)) {
      differ.push(differs(a, b, key));
    }
  }
}

const GLUE = new Set(['-/Y', 'Y', 'Y/Z']);

/**
 * A pull-off says how strong that plane is which failed, of all others only a lower bound. Two numbers of the glue, or
 * of the test concrete, say nothing about which coating holds better.
 */
function modes(a: Claim, b: Claim, { differ, gaps }: Found): void {
  if (!a.method?.mode) return;
  for (const claim of [a, b]) {
    if (claim.property.failureMode === undefined)
      gaps.push({ code: 'evidence-mode-missing', names: { product: claim.name } });
  }
  const [first, second] = [a.property.failureMode, b.property.failureMode];
  if (first === undefined || second === undefined) return;
  if (first !== second) {
    const names = { first: a.name, second: b.name, firstMode: first, secondMode: second };
    differ.push({ code: 'evidence-mode-differs', names });
  } else if (GLUE.has(first)) {
    differ.push({ code: 'evidence-glue-broke', names: { first: a.name, second: b.name } });
  } else if (first === 'A') {
    const code = a.method.metal ? 'evidence-panel-broke' : 'evidence-concrete-broke';
    differ.push({ code, names: { first: a.name, second: b.name } });
  }
}

/** Numbers with numbers of one unit, ranks with ranks, words with words. */
function forms(a: Claim, b: Claim, { gaps }: Found): void {
  const wears = a.family.shows === 'wear' && a.method?.units?.includes('kg');
  let massWithout = false;
  for (const claim of [a, b]) {
    if (wears && claim.value.kind === 'number' && claim.value.unit === 'kg') {
      massWithout = true;
      gaps.push({ code: 'evidence-density-missing', names: { product: claim.name } });
    }
    if (claim.value.kind === 'words' && (claim.method?.units || claim.method?.order))
      gaps.push({ code: 'evidence-words-for-a-number', names: { product: claim.name, value: claim.property.value } });
  }
  if (massWithout || a.value.kind !== 'number' || b.value.kind !== 'number') return;
  if (a.value.unit !== b.value.unit)
    gaps.push({ code: 'evidence-other-form', names: { first: a.property.value, second: b.property.value } });
}
