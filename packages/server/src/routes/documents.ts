import { createRoute, z } from '@hono/zod-openapi';
import type { Json, ListQuery, Store } from '@slabwright/store';
import { api, type Clock } from '../api.ts';
import {
  answers,
  conflict,
  heading,
  instantText,
  listPage,
  putBody,
  refusals,
  required,
  seenBody,
  storedDocument,
} from '../shapes.ts';
import { Refused } from '../trouble.ts';
import { wireDocument } from '../wire.ts';

const kind = z.string().openapi({ description: 'job, catalogue, price-book, weather, paper, settings, aside' });
const key = z.object({ kind, id: z.string() });
const conflicts = { 409: answers('Written by somebody else meanwhile', conflict) } as const;
const written = { 200: answers('As it is stored now', storedDocument), ...conflicts, ...refusals } as const;

/** A revision as it stands in an address: digits only, so that `1e3` and ` 1` are told apart from it. */
const wholeNumber = z
  .string()
  .regex(/^\d{1,9}$/)
  .transform(Number);

const listRoute = createRoute({
  method: 'get',
  path: '/api/documents/{kind}',
  summary: 'List documents of a kind, newest first, or those that hold certain words',
  request: {
    params: z.object({ kind }),
    query: z.object({
      text: z.string().optional().openapi({ description: 'Words that stand in title or search text' }),
      removed: z.enum(['true', 'false']).optional(),
      limit: wholeNumber.optional(),
      afterUpdatedAt: instantText.optional(),
      afterId: z.string().optional(),
    }),
  },
  responses: { 200: answers('One page', listPage), ...refusals },
});

const getRoute = createRoute({
  method: 'get',
  path: '/api/documents/{kind}/{id}',
  summary: 'Read a document, or one of its earlier revisions',
  request: { params: key, query: z.object({ revision: wholeNumber.optional() }) },
  responses: { 200: answers('The document', storedDocument), ...refusals },
});

const historyRoute = createRoute({
  method: 'get',
  path: '/api/documents/{kind}/{id}/history',
  summary: 'List every revision of a document, oldest first',
  request: { params: key },
  responses: { 200: answers('Headings', z.object({ headings: z.array(heading) })), ...refusals },
});

const putRoute = createRoute({
  method: 'put',
  path: '/api/documents/{kind}/{id}',
  summary: 'Write the next revision of a document',
  request: { params: key, body: required(putBody) },
  responses: written,
});

const removeRoute = createRoute({
  method: 'post',
  path: '/api/documents/{kind}/{id}/remove',
  summary: 'Remove a document; it can be restored',
  request: { params: key, body: required(seenBody) },
  responses: written,
});

const restoreRoute = createRoute({
  method: 'post',
  path: '/api/documents/{kind}/{id}/restore',
  summary: 'Restore a removed document',
  request: { params: key, body: required(seenBody) },
  responses: written,
});

interface ListAsked {
  readonly text?: string | undefined;
  readonly removed?: 'true' | 'false' | undefined;
  readonly limit?: number | undefined;
  readonly afterUpdatedAt?: string | undefined;
  readonly afterId?: string | undefined;
}

function queryOf(ofKind: string, { text, removed, limit, afterUpdatedAt, afterId }: ListAsked): ListQuery {
  if ((afterUpdatedAt === undefined) !== (afterId === undefined)) {
    throw new Refused(400, [{ code: 'page-incomplete', path: ['query'], limits: ['afterUpdatedAt', 'afterId'] }]);
  }
  return {
    kind: ofKind,
    removed: removed === 'true',
    ...(text === undefined ? {} : { text }),
    ...(limit === undefined ? {} : { limit }),
    ...(afterUpdatedAt === undefined || afterId === undefined
      ? {}
      : { after: { updatedAt: afterUpdatedAt, id: afterId } }),
  };
}

/** Documents with their revisions, as the store's rules have them. */
export const documentRoutes = (store: Store, clock: Clock) =>
  api()
    .openapi(listRoute, async (c) => {
      const page = await store.list(queryOf(c.req.valid('param').kind, c.req.valid('query')));
      return c.json({ ...page, headings: [...page.headings] }, 200);
    })
    .openapi(getRoute, async (c) => {
      const { kind: ofKind, id } = c.req.valid('param');
      const { revision } = c.req.valid('query');
      const found = await store.get(ofKind, id, revision);
      if (found === null) {
        const names = { kind: ofKind, id };
        throw new Refused(404, [
          revision === undefined
            ? { code: 'document-not-found', path: ['id'], value: id, names }
            : { code: 'revision-not-found', path: ['query', 'revision'], value: `${revision}`, names },
        ]);
      }
      return c.json(wireDocument(found), 200);
    })
    .openapi(historyRoute, async (c) => {
      const { kind: ofKind, id } = c.req.valid('param');
      const headings = await store.history(ofKind, id);
      if (headings.length === 0) {
        throw new Refused(404, [{ code: 'document-not-found', path: ['id'], value: id, names: { kind: ofKind } }]);
      }
      return c.json({ headings: [...headings] }, 200);
    })
    .openapi(putRoute, async (c) => {
      const { expected, title, searchText, updatedAt = clock(), body } = c.req.valid('json');
      // The store checks the body itself and names what it does not take.
      const draft = { ...c.req.valid('param'), updatedAt, title, searchText, body: body as Json };
      return c.json(wireDocument(await store.put(draft, expected)), 200);
    })
    .openapi(removeRoute, async (c) => {
      const { kind: ofKind, id } = c.req.valid('param');
      const { expected, updatedAt = clock() } = c.req.valid('json');
      return c.json(wireDocument(await store.remove(ofKind, id, expected, updatedAt)), 200);
    })
    .openapi(restoreRoute, async (c) => {
      const { kind: ofKind, id } = c.req.valid('param');
      const { expected, updatedAt = clock() } = c.req.valid('json');
      return c.json(wireDocument(await store.restore(ofKind, id, expected, updatedAt)), 200);
    });
