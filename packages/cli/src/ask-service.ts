/** A forecast service that answers at all answers within seconds. */
const PATIENCE_MS = 20_000;

/** Why nothing came back, as the machine names it: `fetch failed` alone helps nobody. */
function reasonOf(trouble: unknown): string {
  if (!(trouble instanceof Error)) return String(trouble);
  if (trouble.name === 'TimeoutError') return `no answer within ${PATIENCE_MS / 1000} s`;
  const { cause } = trouble;
  if (!(cause instanceof Error)) return trouble.message;
  const { code } = cause as { readonly code?: unknown };
  if (code === 'ENOTFOUND' || code === 'EAI_AGAIN' || code === 'ENETUNREACH')
    return `this machine has no network (${code})`;
  return cause.message || String(code ?? trouble.message);
}

/**
 * Text of a service's answer. Public services want to know which program asks; nothing of the person or the job is
 * told.
 *
 * @throws Error with the reason in words
 */
export async function askService(url: string): Promise<string> {
  try {
    const answer = await fetch(url, {
      headers: { accept: 'application/json', 'user-agent': 'slabwright' },
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (answer.ok) return await answer.text();
    // an answer nobody reads keeps its connection open
    await answer.body?.cancel();
    throw new Error(`HTTP ${answer.status}`);
  } catch (trouble) {
    throw new Error(reasonOf(trouble), { cause: trouble });
  }
}
