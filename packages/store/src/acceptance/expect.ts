/** The few checks the cases use: no test runner is needed, so the same cases run in a page. */

/** @throws when the condition does not hold. */
export function holds(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(`does not hold: ${what}`);
}

/** @throws when the two differ as JSON, whatever the order of their keys. */
export function same(actual: unknown, expected: unknown, what: string): void {
  const [found, wanted] = [stableText(actual), stableText(expected)];
  if (found !== wanted) throw new Error(`${what}: found ${short(found)}, expected ${short(wanted)}`);
}

/** The error of that class the promise rejects with. @throws when it resolves or rejects with another. */
export async function rejection<T extends Error>(
  promise: Promise<unknown>,
  kind: abstract new (...values: never[]) => T,
  what: string,
): Promise<T> {
  let result: unknown;
  try {
    result = await promise;
  } catch (error) {
    if (error instanceof kind) return error;
    throw new Error(`${what}: expected ${kind.name}, got ${String(error)}`, { cause: error });
  }
  throw new Error(`${what}: expected ${kind.name}, but it went through with ${short(stableText(result))}`);
}

/** Lets watchers be told: listeners run in microtasks, channels between handles in tasks. */
export async function untilTrue(condition: () => boolean, what: string): Promise<void> {
  for (let turn = 0; turn < 200; turn++) {
    if (condition()) return;
    await new Promise((done) => setTimeout(done, 5));
  }
  throw new Error(`did not happen within a second: ${what}`);
}

function stableText(value: unknown): string {
  const text = JSON.stringify(value, (_key, inner: unknown) => {
    if (typeof inner !== 'object' || inner === null || Array.isArray(inner)) return inner;
    return Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
  return text ?? String(value);
}

function short(text: string): string {
  return text.length > 300 ? `${text.slice(0, 300)}… (${text.length} characters)` : text;
}
