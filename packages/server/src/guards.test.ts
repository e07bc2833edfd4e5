import { MOST_DEPTH } from '@slabwright/core';
import { describe, expect, test } from 'vitest';
import { SECURITY_HEADERS } from './guard/headers.ts';
import { OWN_PAGE, tryApp } from './testing/try-app.ts';

const PUT = { expected: 0, title: 'a', body: {} };
const json = { 'content-type': 'application/json' };

/** Every route of the document with its methods, ids filled in. */
async function routes(): Promise<readonly (readonly [method: string, path: string])[]> {
  const { call } = await tryApp();
  const { paths } = await (await call('GET', '/api/openapi.json')).json();
  return Object.entries(paths as Record<string, object>).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => [method.toUpperCase(), path.replace(/\{\w+\}/g, 'job')] as const),
  );
}

describe('where a change may come from', () => {
  test.each([
    ['a page of another site', { ...json, 'sec-fetch-site': 'cross-site', origin: 'http://localhost:4170' }, 403],
    ['another port of this machine', { ...json, 'sec-fetch-site': 'same-site' }, 403],
    ['an address typed by hand', { ...json, 'sec-fetch-site': 'none' }, 403],
    ['an older browser elsewhere', { ...json, host: 'localhost:4170', origin: 'https://elsewhere.example' }, 403],
    ['an origin that cannot be read', { ...json, host: 'localhost:4170', origin: 'null' }, 403],
    ['a program that says nothing', json, 403],
    ['the own page', { ...json, 'sec-fetch-site': 'same-origin' }, 200],
    ['an older browser on the own page', { ...json, host: 'localhost:4170', origin: 'http://localhost:4170' }, 200],
  ])('%s', async (_who, headers, status) => {
    const { call } = await tryApp();
    expect((await call('PUT', '/api/documents/job/a', PUT, headers)).status).toBe(status);
  });

  test('every route that changes something refuses a foreign page, whatever it sends', async () => {
    const { call, store } = await tryApp();
    const changing = (await routes()).filter(([method]) => method !== 'GET');
    expect(changing.length).toBeGreaterThan(5);
    for (const [method, path] of changing) {
      const answer = await call(method, path, PUT, { ...json, 'sec-fetch-site': 'cross-site' });
      expect([path, answer.status]).toEqual([path, 403]);
    }
    expect((await store.exportAll()).documents).toEqual([]);
  });

  test.each([
    ['elsewhere.example', 403],
    ['localhost.elsewhere.example:4170', 403],
    ['127.0.0.1.elsewhere.example', 403],
    ['', 403],
    ['localhost:4170', 200],
    ['127.0.0.1:4170', 200],
    ['192.168.1.20:4170', 200],
    ['[::1]:4170', 200],
  ])('called by the name "%s"', async (host, status) => {
    const { call } = await tryApp();
    expect((await call('GET', '/api/about', undefined, { host })).status).toBe(status);
  });
});

describe('every answer', () => {
  test('carries the security headers, refusals too; no script of a page runs inline', async () => {
    const { call } = await tryApp();
    const calls = [...(await routes()), ['GET', '/'], ['GET', '/no/such'], ['DELETE', '/api/about']] as const;
    for (const [method, path] of calls) {
      const answer = await call(method, path, method === 'GET' ? undefined : 'no json');
      for (const [name, value] of Object.entries(SECURITY_HEADERS)) expect(answer.headers.get(name)).toBe(value);
    }
    expect(SECURITY_HEADERS['content-security-policy']).not.toContain('unsafe');
  });

  test('of the API is kept by nobody in between', async () => {
    const { call } = await tryApp();
    expect((await call('GET', '/api/about')).headers.get('cache-control')).toBe('no-store');
  });
});

describe('the body of a call', () => {
  test('of more than 10 MB is refused before it is parsed, with its length announced', async () => {
    const { call } = await tryApp();
    // Not JSON: an answer about its size shows that nobody tried to read it.
    const answer = await call('PUT', '/api/documents/job/a', `{${'x'.repeat(10 * 1024 * 1024)}`, {
      ...OWN_PAGE,
      'content-length': `${10 * 1024 * 1024 + 1}`,
    });
    expect(answer.status).toBe(413);
    expect((await answer.json()).messages[0]).toContain('10485760 bytes');
  });

  test('of more than 10 MB is refused when its length is not announced', async () => {
    const { call } = await tryApp();
    const answer = await call('POST', '/api/backup', `{${'x'.repeat(10 * 1024 * 1024)}`);
    expect(answer.status).toBe(413);
  });

  test('a megabyte under the limit is read', async () => {
    const { call } = await tryApp();
    const body = { ...PUT, body: 'x'.repeat(9 * 1024 * 1024) };
    expect((await call('PUT', '/api/documents/job/a', body)).status).toBe(200);
  });

  test.each([
    ['[', MOST_DEPTH + 1],
    ['{"a":', 100_000],
  ])('nested too deep with %s', async (opening, levels) => {
    const { call } = await tryApp();
    const answer = await call('POST', '/api/plan', opening.repeat(levels));
    expect(answer.status).toBe(400);
    expect((await answer.json()).issues[0]).toMatchObject({ code: 'request-too-deep', limits: ['0', `${MOST_DEPTH}`] });
  });

  test('brackets inside of a text are text', async () => {
    const { call } = await tryApp();
    const body = { ...PUT, body: `\\"${'['.repeat(1000)}` };
    expect((await call('PUT', '/api/documents/job/a', body)).status).toBe(200);
  });

  test.each([
    ['cut off', '{"expected": 0,', 400],
    ['empty', '', 400],
    ['text', 'hello', 400],
  ])('%s', async (_what, text, status) => {
    const { call } = await tryApp();
    const answer = await call('PUT', '/api/documents/job/a', text);
    expect(answer.status).toBe(status);
    expect((await answer.json()).issues.length).toBeGreaterThan(0);
  });

  test('of another kind', async () => {
    const { call } = await tryApp();
    const answer = await call('PUT', '/api/documents/job/a', PUT, { ...OWN_PAGE, 'content-type': 'text/plain' });
    expect(answer.status).toBe(415);
    expect((await answer.json()).issues[0].code).toBe('request-not-json');
  });

  test('with a field that does not belong there', async () => {
    const { call } = await tryApp();
    const answer = await call('PUT', '/api/documents/job/a', { ...PUT, revision: 9, owner: 'me' });
    expect((await answer.json()).issues).toEqual([
      { code: 'field-unknown', path: ['revision'], value: 'revision' },
      { code: 'field-unknown', path: ['owner'], value: 'owner' },
    ]);
  });
});

describe('the document of the API', () => {
  test('is OpenAPI 3.1, names every route, and each reference in it leads somewhere', async () => {
    const { call } = await tryApp();
    const document = await (await call('GET', '/api/openapi.json')).json();
    expect(document.openapi).toBe('3.1.0');
    expect(Object.keys(document.paths).sort()).toEqual([
      '/api/about',
      '/api/backup',
      '/api/documents/{kind}',
      '/api/documents/{kind}/{id}',
      '/api/documents/{kind}/{id}/history',
      '/api/documents/{kind}/{id}/remove',
      '/api/documents/{kind}/{id}/restore',
      '/api/jobs/{jobId}/log',
      '/api/jobs/{jobId}/plan',
      '/api/plan',
    ]);
    const references = [...JSON.stringify(document).matchAll(/"#\/components\/schemas\/(\w+)"/g)].map(
      ([, name]) => name,
    );
    expect(references.length).toBeGreaterThan(10);
    for (const name of references) expect(Object.keys(document.components.schemas)).toContain(name);
  });
});

describe('a mistake of ours', () => {
  test('is a 500 with a number to look for in the log, and no details', async () => {
    const { call, store, logged } = await tryApp();
    store.list = () => Promise.reject(new Error('secret\nplace /etc'));
    const answer = await call('GET', '/api/about');
    expect(answer.status).toBe(500);
    const text = await answer.text();
    expect(text).not.toMatch(/secret|\/etc|\bat\b.*\.ts/);
    const { issues } = JSON.parse(text);
    expect(logged).toHaveLength(1);
    expect(logged[0]).toContain(issues[0].value);
    expect(logged[0]?.split('\n')).toHaveLength(1);
  });

  test('a store with no room left says so', async () => {
    const { StoreFull } = await import('@slabwright/store');
    const { call, store } = await tryApp();
    store.put = () => Promise.reject(new StoreFull(new Error('disk')));
    const answer = await call('PUT', '/api/documents/job/a', PUT);
    expect(answer.status).toBe(507);
    expect((await answer.json()).messages[0]).toContain('no room left');
  });
});
