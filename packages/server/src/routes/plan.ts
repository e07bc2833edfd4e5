import { createRoute, z } from '@hono/zod-openapi';
import { canonicalText } from '@slabwright/core';
import type { Store } from '@slabwright/store';
import type { Context } from 'hono';
import type { JSONValue } from 'hono/utils/types';
import { api, type Clock } from '../api.ts';
import { type PlanFiles, planFiles } from '../plan-files.ts';
import { answers, planAnswer, planBody, refusals, required, spread, trouble } from '../shapes.ts';
import { Refused, troubleOf } from '../trouble.ts';
import { jsonText } from '../wire.ts';

const planned = {
  200: answers('The plan', planAnswer),
  422: answers('A file has something wrong in it; each issue names the file and the place', trouble),
  ...refusals,
} as const;

const planRoute = createRoute({
  method: 'post',
  path: '/api/plan',
  summary: 'Plan a job from the files sent',
  request: { body: required(planBody) },
  responses: planned,
});

const storedRoute = createRoute({
  method: 'get',
  path: '/api/jobs/{jobId}/plan',
  summary: 'Plan a stored job with the catalogue, price book and weather it names',
  request: {
    params: z.object({ jobId: z.string() }),
    query: z.object({
      now: z.string().optional().openapi({ description: 'Moment to plan as of, with its offset' }),
      spread,
    }),
  },
  responses: planned,
});

type PlanSent = Omit<z.output<typeof planAnswer>, 'plan'> & { plan: JSONValue };

function answer(c: Context, files: PlanFiles) {
  const { plan, warnings } = planFiles(files);
  // Canonical text: the same plan is the same bytes here, in the terminal and in the browser.
  const text = canonicalText({ plan, warnings, messages: troubleOf(warnings).messages });
  return jsonText<PlanSent>(c, text);
}

const fieldOf = (body: unknown, name: string): unknown =>
  typeof body === 'object' && body !== null ? (body as Readonly<Record<string, unknown>>)[name] : undefined;

const textOf = (body: unknown, name: string): string | undefined => {
  const value = fieldOf(body, name);
  return typeof value === 'string' ? value : undefined;
};

/** Body of a stored document that is not removed. */
async function bodyOf(store: Store, kind: string, id: string): Promise<unknown> {
  const found = await store.get(kind, id);
  return found === null || found.removed ? undefined : found.body;
}

async function storedFiles(store: Store, jobId: string, now: string | undefined, clock: Clock): Promise<PlanFiles> {
  const document = await bodyOf(store, 'job', jobId);
  if (document === undefined) {
    throw new Refused(404, [{ code: 'document-not-found', path: ['jobId'], value: jobId, names: { kind: 'job' } }]);
  }
  const catalogueId = textOf(document, 'catalogue') ?? '';
  const catalogue = catalogueId === '' ? undefined : await bodyOf(store, 'catalogue', catalogueId);
  if (catalogue === undefined) {
    throw new Refused(422, [
      { code: 'job-without-catalogue', path: ['catalogue'], value: jobId, names: { catalogue: catalogueId } },
    ]);
  }
  const priceBookId = textOf(document, 'priceBook');
  const priceBook = priceBookId === undefined ? undefined : await bodyOf(store, 'price-book', priceBookId);
  const weatherId = textOf(document, 'weather');
  const weather = weatherId === undefined ? undefined : await bodyOf(store, 'weather', weatherId);
  return {
    job: fieldOf(document, 'job'),
    catalogue,
    now: now ?? textOf(document, 'asOf') ?? clock(),
    ...(priceBook === undefined ? {} : { priceBook }),
    ...(weather === undefined ? {} : { weather }),
  };
}

/** Plans: from files sent along, or from what is stored. */
export const planRoutes = (store: Store, clock: Clock) =>
  api()
    .openapi(planRoute, (c) => {
      const { job, catalogue, priceBook, weather, now = clock(), seed, spread } = c.req.valid('json');
      return answer(c, {
        job,
        catalogue,
        now,
        ...(priceBook === undefined ? {} : { priceBook }),
        ...(weather === undefined ? {} : { weather }),
        ...(seed === undefined ? {} : { seed }),
        ...(spread === undefined ? {} : { spread }),
      });
    })
    .openapi(storedRoute, async (c) => {
      const { now, spread } = c.req.valid('query');
      const files = await storedFiles(store, c.req.valid('param').jobId, now, clock);
      return answer(c, { ...files, ...(spread === undefined ? {} : { spread }) });
    });
