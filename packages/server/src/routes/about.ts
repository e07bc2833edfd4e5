import { createRoute, z } from '@hono/zod-openapi';
import { ENGINE, PLAN_SCHEMA } from '@slabwright/core';
import type { Store } from '@slabwright/store';
import { api } from '../api.ts';
import { answers } from '../shapes.ts';

const aboutRoute = createRoute({
  method: 'get',
  path: '/api/about',
  summary: 'Say who answers here, and that the data can be read',
  responses: {
    200: answers('Here', z.object({ engine: z.string(), plan: z.string(), jobs: z.number().int() }).openapi('About')),
  },
});

/** A sign of life that has looked at the data. */
export const aboutRoutes = (store: Store) =>
  api().openapi(aboutRoute, async (c) => {
    const { total } = await store.list({ kind: 'job', limit: 1 });
    return c.json({ engine: ENGINE, plan: PLAN_SCHEMA, jobs: total }, 200);
  });
