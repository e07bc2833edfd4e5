/** What was, is and could be again, without end. Every change keeps the whole value; values share what did not change. */
export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** Field of the last change: typing on in the same field is one step back, not one per key. */
  readonly field?: string;
}

export const begin = <T>(present: T): History<T> => ({ past: [], present, future: [] });

export function changed<T>(history: History<T>, next: T, field?: string): History<T> {
  if (Object.is(next, history.present)) return history;
  const goesOn = field !== undefined && field === history.field && history.past.length > 0;
  const past = goesOn ? history.past : [...history.past, history.present];
  return { past, present: next, future: [], ...(field === undefined ? {} : { field }) };
}

export function undone<T>(history: History<T>): History<T> {
  const before = history.past.at(-1);
  if (history.past.length === 0 || before === undefined) return history;
  return { past: history.past.slice(0, -1), present: before, future: [history.present, ...history.future] };
}

export function redone<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future;
  if (next === undefined) return history;
  return { past: [...history.past, history.present], present: next, future };
}
