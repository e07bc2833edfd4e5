import fc from 'fast-check';
import { expect, test } from 'vitest';
import { golden, type TriedApp, tryApp } from './testing/try-app.ts';

/** Whatever is sent, the caller is told what is wrong with it; the server never fails and never shows its inside. */

const METHODS = ['GET', 'PUT', 'POST', 'DELETE', 'PATCH'] as const;

const word = fc.oneof(
  fc.constantFrom('job', 'catalogue', 'paper', 'settings', '__proto__', 'constructor', '..', 'history', 'remove'),
  fc.string({ unit: 'binary', maxLength: 30 }),
);

const address = fc
  .tuple(
    fc.constantFrom(
      (a: string, _b: string) => `/api/documents/${a}`,
      (a: string, b: string) => `/api/documents/${a}/${b}`,
      (a: string, b: string) => `/api/documents/${a}/${b}/history`,
      (a: string, b: string) => `/api/documents/${a}/${b}/remove`,
      (a: string, b: string) => `/api/documents/${a}/${b}/restore`,
      (a: string, _b: string) => `/api/jobs/${a}/log`,
      (a: string, _b: string) => `/api/jobs/${a}/plan`,
      () => '/api/plan',
      () => '/api/backup',
      () => '/api/about',
      (a: string, b: string) => `/${a}/${b}`,
    ),
    word,
    word,
    fc.dictionary(fc.constantFrom('limit', 'text', 'revision', 'afterId', 'afterAt', 'afterUpdatedAt', 'now'), word),
  )
  .map(([path, a, b, query]) => {
    // Lone halves of a letter cannot stand in an address; a client would not get them out of the door.
    const safe = (text: string): string => encodeURIComponent(text.replace(/\p{Surrogate}/gu, ''));
    const search = Object.entries(query).map(([name, value]) => `${name}=${safe(value)}`);
    return `${path(safe(a), safe(b))}?${search.join('&')}`;
  })
  // `//..` is the start page, which answers in HTML and says when the app was not built.
  .filter((address) => new URL(`http://127.0.0.1${address}`).pathname !== '/');

const NEARLY = ['expected', 'title', 'searchText', 'body', 'updatedAt', 'id', 'at', 'job', 'catalogue', 'now', 'seed'];

const body = fc.oneof(
  fc.json({ maxDepth: 4 }),
  fc.string({ maxLength: 40 }),
  fc.dictionary(fc.constantFrom(...NEARLY), fc.jsonValue({ maxDepth: 2 })).map((value) => JSON.stringify(value)),
);

async function answered(app: TriedApp, method: string, path: string, text: string): Promise<void> {
  const answer = await app.call(method, path, method === 'GET' ? undefined : text);
  const said = await answer.text();
  expect([method, path, text, answer.status, app.logged]).toEqual([method, path, text, expect.any(Number), []]);
  expect(answer.status).toBeLessThan(500);
  expect(said).not.toMatch(/\n\s+at \S+|node_modules|\.ts:\d+/);
  if (answer.status >= 400) {
    const { issues, messages } = JSON.parse(said);
    expect(issues.length).toBeGreaterThan(0);
    expect(messages.join('')).not.toBe('');
  }
}

test('random JSON at every endpoint is answered, never with a failure and never with a stack trace', async () => {
  const app = await tryApp();
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...METHODS), address, body, (method, path, text) =>
      answered(app, method, path, text),
    ),
    {
      numRuns: 600,
      examples: [['PUT', '/api/documents/job/__proto__?', '{"expected":0,"title":"","body":{"__proto__":1}}']],
    },
  );
});

type Place = readonly [holder: Record<string, unknown>, key: string];

/** Every field of a file, however deep. */
function places(value: unknown): Place[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => [
    [value as Record<string, unknown>, key] as const,
    ...places(inner),
  ]);
}

test('a good job with any one field replaced is planned or refused with its place', async () => {
  const app = await tryApp();
  const files = ['job', 'catalogue', 'price-book', 'weather'] as const;
  const nameOf = { job: 'job', catalogue: 'catalogue', 'price-book': 'priceBook', weather: 'weather' } as const;
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...files),
      fc.nat(),
      fc.oneof(
        fc.jsonValue({ maxDepth: 1 }),
        fc.constantFrom('-1 m', '1e308 m', '0 %', '72 °F', 'NaN', '', null, [], {}),
      ),
      async (file, pick, value) => {
        const sent: Record<string, unknown> = { now: '2026-05-12T18:00:00-06:00' };
        for (const one of files) sent[nameOf[one]] = golden('garage', one);
        const all = places(sent[nameOf[file]]);
        const [holder, key] = all[pick % all.length] ?? [{}, ''];
        holder[key] = value;
        await answered(app, 'POST', '/api/plan', JSON.stringify(sent));
      },
    ),
    { numRuns: 60 },
  );
}, 120_000);
