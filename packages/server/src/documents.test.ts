import { describe, expect, test } from 'vitest';
import { NOW, tryApp } from './testing/try-app.ts';

const one = { expected: 0, title: 'Garage', searchText: 'Elm Street', body: { rooms: 1 } };

describe('documents', () => {
  test('a document is written, read, changed, listed, found and keeps its history', async () => {
    const { call } = await tryApp();
    const made = await call('PUT', '/api/documents/job/a', one);
    expect(made.status).toBe(200);
    expect(await made.json()).toMatchObject({ revision: 1, updatedAt: NOW, body: { rooms: 1 } });
    const changed = await call('PUT', '/api/documents/job/a', { ...one, expected: 1, body: { rooms: 2 } });
    expect(await changed.json()).toMatchObject({ revision: 2 });
    expect(await (await call('GET', '/api/documents/job/a')).json()).toMatchObject({ body: { rooms: 2 } });
    expect(await (await call('GET', '/api/documents/job/a?revision=1')).json()).toMatchObject({ body: { rooms: 1 } });
    const { headings } = await (await call('GET', '/api/documents/job/a/history')).json();
    expect(headings.map(({ revision }: { revision: number }) => revision)).toEqual([1, 2]);
    const found = await (await call('GET', '/api/documents/job?text=elm')).json();
    expect(found).toMatchObject({ total: 1, next: null });
    expect((await (await call('GET', '/api/documents/job?text=oak')).json()).total).toBe(0);
  });

  test('written by somebody else meanwhile: 409 with both versions, and nothing is overwritten', async () => {
    const { call } = await tryApp();
    await call('PUT', '/api/documents/job/a', one);
    await call('PUT', '/api/documents/job/a', { ...one, expected: 1, body: { rooms: 2 } });
    const late = await call('PUT', '/api/documents/job/a', { ...one, expected: 1, body: { rooms: 3 } });
    expect(late.status).toBe(409);
    expect(await late.json()).toMatchObject({
      issues: [{ code: 'conflict' }],
      stored: { revision: 2, body: { rooms: 2 } },
      offered: { body: { rooms: 3 } },
    });
    expect(await (await call('GET', '/api/documents/job/a')).json()).toMatchObject({ body: { rooms: 2 } });
  });

  test('the same change sent again, after its answer was lost, counts once', async () => {
    const { call } = await tryApp();
    const sent = { ...one, updatedAt: '2026-05-12T09:00:00.000Z' };
    await call('PUT', '/api/documents/job/a', sent);
    const again = await call('PUT', '/api/documents/job/a', sent);
    expect(again.status).toBe(200);
    expect(await again.json()).toMatchObject({ revision: 1 });
  });

  test('removal can be undone, and needs the revision seen', async () => {
    const { call } = await tryApp();
    await call('PUT', '/api/documents/job/a', one);
    expect((await call('POST', '/api/documents/job/a/remove', { expected: 7 })).status).toBe(409);
    expect(await (await call('POST', '/api/documents/job/a/remove', { expected: 1 })).json()).toMatchObject({
      removed: true,
      revision: 2,
    });
    expect((await (await call('GET', '/api/documents/job')).json()).total).toBe(0);
    expect((await (await call('GET', '/api/documents/job?removed=true')).json()).total).toBe(1);
    const back = await call('POST', '/api/documents/job/a/restore', { expected: 2 });
    expect(await back.json()).toMatchObject({ removed: false, revision: 3, body: { rooms: 1 } });
    expect((await call('POST', '/api/documents/job/none/remove', { expected: 1 })).status).toBe(404);
  });

  test('pages follow each other; half a place in the list is refused', async () => {
    const { call } = await tryApp();
    for (const id of ['a', 'b', 'c']) await call('PUT', `/api/documents/job/${id}`, one);
    const first = await (await call('GET', '/api/documents/job?limit=2')).json();
    expect(first.headings.map(({ id }: { id: string }) => id)).toEqual(['c', 'b']);
    const { updatedAt, id } = first.next;
    const rest = await (await call('GET', `/api/documents/job?afterUpdatedAt=${updatedAt}&afterId=${id}`)).json();
    expect(rest.headings.map((heading: { id: string }) => heading.id)).toEqual(['a']);
    const half = await call('GET', '/api/documents/job?afterId=b');
    expect(half.status).toBe(400);
    expect((await half.json()).issues[0].code).toBe('page-incomplete');
  });

  test('an issued paper is never changed', async () => {
    const { call } = await tryApp();
    await call('PUT', '/api/documents/paper/p', one);
    const again = await call('PUT', '/api/documents/paper/p', { ...one, expected: 1, body: {} });
    expect(again.status).toBe(409);
    expect((await again.json()).issues[0].code).toBe('written-once');
  });

  test('an id with every sign that needs a code in an address comes back as it is', async () => {
    const { call } = await tryApp();
    const id = 'a/b?c=%20&d#e+f';
    const address = `/api/documents/job/${encodeURIComponent(id)}`;
    expect((await call('PUT', address, one)).status).toBe(200);
    expect(await (await call('GET', address)).json()).toMatchObject({ id });
  });

  test('what is not here is said: document, revision, page of a paper', async () => {
    const { call } = await tryApp();
    await call('PUT', '/api/documents/job/a', one);
    expect((await (await call('GET', '/api/documents/job/b')).json()).issues[0].code).toBe('document-not-found');
    expect((await (await call('GET', '/api/documents/job/a?revision=9')).json()).messages).toEqual([
      'The job "a" has no revision 9.',
    ]);
    expect((await call('GET', '/api/documents/job/b/history')).status).toBe(404);
    expect((await call('GET', '/api/documents/job/a?revision=1e0')).status).toBe(400);
  });
});

describe('the log of a job', () => {
  const entry = { id: 'r1', at: '2026-05-12T09:00:00.000Z', body: { humidity: '71 %' } };

  test('entries are added once and never changed', async () => {
    const { call } = await tryApp();
    const added = await call('POST', '/api/jobs/a/log', entry);
    expect(await added.json()).toMatchObject({ added: true, entry: { jobId: 'a', id: 'r1' } });
    expect(await (await call('POST', '/api/jobs/a/log', entry)).json()).toMatchObject({ added: false });
    const other = await call('POST', '/api/jobs/a/log', { ...entry, body: { humidity: '72 %' } });
    expect(other.status).toBe(409);
    expect(await other.json()).toMatchObject({ stored: { body: { humidity: '71 %' } } });
    const { entries } = await (await call('GET', '/api/jobs/a/log')).json();
    expect(entries).toHaveLength(1);
  });

  test('pages of the log', async () => {
    const { call } = await tryApp();
    for (const id of ['a', 'b', 'c']) await call('POST', '/api/jobs/j/log', { ...entry, id });
    const page = await (await call('GET', `/api/jobs/j/log?afterAt=${entry.at}&afterId=a&limit=1`)).json();
    expect(page.entries.map(({ id }: { id: string }) => id)).toEqual(['b']);
    expect((await call('GET', '/api/jobs/j/log?afterId=a')).status).toBe(400);
  });
});
