import { createRoute, z } from '@hono/zod-openapi';
import type { EntryQuery, Json, Store } from '@slabwright/store';
import { api } from '../api.ts';
import { answers, conflict, entry, entryBody, instantText, refusals, required } from '../shapes.ts';
import { Refused } from '../trouble.ts';
import { wireEntry } from '../wire.ts';

const job = z.object({ jobId: z.string() });

const readRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{jobId}/log',
  summary: 'Read the log of a job, oldest first',
  request: {
    params: job,
    query: z.object({
      limit: z
        .string()
        .regex(/^\d{1,9}$/)
        .transform(Number)
        .optional(),
      afterAt: instantText.optional(),
      afterId: z.string().optional(),
    }),
  },
  responses: { 200: answers('Entries', z.object({ entries: z.array(entry) })), ...refusals },
});

const appendRoute = createRoute({
  method: 'post',
  path: '/api/jobs/{jobId}/log',
  summary: 'Add a reading or an act; entries are never changed',
  request: { params: job, body: required(entryBody) },
  responses: {
    200: answers('Kept; added is false when it was there already', z.object({ entry, added: z.boolean() })),
    409: answers('Another entry has this id', conflict),
    ...refusals,
  },
});

function queryOf(asked: {
  readonly limit?: number | undefined;
  readonly afterAt?: string | undefined;
  readonly afterId?: string | undefined;
}): EntryQuery {
  const { limit, afterAt: at, afterId: id } = asked;
  if ((at === undefined) !== (id === undefined)) {
    throw new Refused(400, [{ code: 'page-incomplete', path: ['query'], limits: ['afterAt', 'afterId'] }]);
  }
  return {
    ...(limit === undefined ? {} : { limit }),
    ...(at === undefined || id === undefined ? {} : { after: { at, id } }),
  };
}

/** Readings and acts of a job. */
export const logRoutes = (store: Store) =>
  api()
    .openapi(readRoute, async (c) => {
      const entries = await store.entries(c.req.valid('param').jobId, queryOf(c.req.valid('query')));
      return c.json({ entries: entries.map(wireEntry) }, 200);
    })
    .openapi(appendRoute, async (c) => {
      const { id, at, body } = c.req.valid('json');
      // The store checks the body itself and names what it does not take.
      const { entry: kept, added } = await store.append({
        jobId: c.req.valid('param').jobId,
        id,
        at,
        body: body as Json,
      });
      return c.json({ entry: wireEntry(kept), added }, 200);
    });
