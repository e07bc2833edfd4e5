/**
 * What changed between two plain values, part by part, so that an answer carries the difference alone and what did not
 * change stays the same object.
 */
export type Changes =
  | { readonly to: unknown }
  | { readonly at: readonly (readonly [part: string, changes: Changes])[]; readonly gone: readonly string[] };

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

function betweenFields(before: Fields, after: Fields): Changes | null {
  const at: [string, Changes][] = [];
  for (const key of Object.keys(after)) {
    const changed = Object.hasOwn(before, key) ? changesBetween(before[key], after[key]) : { to: after[key] };
    if (changed) at.push([key, changed]);
  }
  const gone = Object.keys(before).filter((key) => !Object.hasOwn(after, key));
  return at.length > 0 || gone.length > 0 ? { at, gone } : null;
}

function betweenLists(before: readonly unknown[], after: readonly unknown[]): Changes | null {
  if (before.length !== after.length) return { to: after };
  const at: [string, Changes][] = [];
  for (let i = 0; i < after.length; i++) {
    const changed = changesBetween(before[i], after[i]);
    if (!changed) continue;
    // A row of numbers is shorter whole than number by number.
    if (typeof after[i] === 'number') return { to: after };
    at.push([String(i), changed]);
  }
  return at.length > 0 ? { at, gone: [] } : null;
}

/** Null where both say the same. Takes what JSON can hold, and fields that are `undefined`. */
export function changesBetween(before: unknown, after: unknown): Changes | null {
  if (Object.is(before, after)) return null;
  if (Array.isArray(before) && Array.isArray(after)) return betweenLists(before, after);
  if (isFields(before) && isFields(after)) return betweenFields(before, after);
  return { to: after };
}

/** The value after the changes. What did not change is the same object as before. */
export function withChanges<T>(before: T, changes: Changes): T {
  if ('to' in changes) return changes.to as T;
  const copy = (Array.isArray(before) ? [...before] : { ...before }) as Record<string, unknown>;
  for (const [key, inner] of changes.at) {
    const value = withChanges(Object.hasOwn(copy, key) ? copy[key] : undefined, inner);
    // A file may name its things as it likes, also `__proto__`.
    Object.defineProperty(copy, key, { value, enumerable: true, configurable: true, writable: true });
  }
  for (const key of changes.gone) delete copy[key];
  return copy as T;
}

/** Whether two plain values say the same; stops at the first difference. */
export function same(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (Array.isArray(one) && Array.isArray(other)) {
    return one.length === other.length && one.every((value, i) => same(value, other[i]));
  }
  if (!isFields(one) || !isFields(other)) return false;
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  return keys.every((key) => Object.hasOwn(other, key) && same(one[key], other[key]));
}
