import { z } from '@hono/zod-openapi';

/** What goes over the wire. Bodies are plain JSON: the store keeps what a person typed, finished or not. */

const json = (says: string) => z.unknown().openapi({ description: says });

export const instantText = z
  .string()
  .openapi({ description: 'UTC instant to the millisecond', example: '2026-03-01T08:30:00.000Z' });

export const issue = z
  .object({
    code: z.string(),
    path: z.array(z.union([z.string(), z.number()])),
    value: z.string().optional(),
    limits: z.array(z.string()).optional(),
    names: z.record(z.string(), z.string()).optional(),
  })
  .openapi('Issue', { description: 'Something the caller can put right, as data' });

export const trouble = z
  .object({ issues: z.array(issue), messages: z.array(z.string()) })
  .openapi('Trouble', { description: 'Why a call was refused: as data, and in English words' });

export const heading = z
  .object({
    kind: z.string(),
    id: z.string(),
    revision: z.number().int(),
    updatedAt: instantText,
    removed: z.boolean(),
    title: z.string(),
  })
  .openapi('Heading');

export const storedDocument = heading
  .extend({ searchText: z.string(), body: json('The document itself') })
  .openapi('StoredDocument');

export const entry = z
  .object({ jobId: z.string(), id: z.string(), at: instantText, body: json('The reading or act') })
  .openapi('Entry');

export const conflict = trouble
  .extend({
    stored: z.unknown().openapi({ description: 'What is stored: a document or an entry, or null when there is none' }),
    offered: z.unknown().openapi({ description: 'What was sent and not written' }),
  })
  .openapi('Conflict', { description: 'Both versions; neither is lost' });

export const listPage = z
  .object({
    headings: z.array(heading),
    total: z.number().int(),
    next: z.object({ updatedAt: instantText, id: z.string() }).nullable(),
  })
  .openapi('ListPage');

export const putBody = z
  .strictObject({
    expected: z.number().int().min(0).openapi({ description: 'Revision last seen; 0 when there is none yet' }),
    title: z.string(),
    searchText: z.string().default(''),
    updatedAt: instantText
      .optional()
      .openapi({ description: 'When it was written; sent again with the same instant, the same change counts once' }),
    body: json('The document itself'),
  })
  .openapi('Put');

export const seenBody = z
  .strictObject({ expected: z.number().int().min(1), updatedAt: instantText.optional() })
  .openapi('Seen');

export const entryBody = z
  .strictObject({ id: z.string(), at: instantText, body: json('The reading or act') })
  .openapi('NewEntry');

export const importReport = z
  .object({
    revisionsAdded: z.number().int(),
    revisionsAlreadyHere: z.number().int(),
    entriesAdded: z.number().int(),
    entriesAlreadyHere: z.number().int(),
    diverged: z.array(z.object({ of: z.string(), aside: z.string() })),
  })
  .openapi('ImportReport');

/** A longer search than the quick one would hold up everybody else who asks. */
export const spread = z
  .enum(['none', 'quick'])
  .optional()
  .openapi({ description: 'Whether the order of pours is looked for; by default not' });

export const planBody = z
  .strictObject({
    job: json('A job file'),
    catalogue: json('A catalogue file'),
    priceBook: z.unknown().optional().openapi({ description: 'A price book file; without it no price is known' }),
    weather: z
      .unknown()
      .optional()
      .openapi({ description: 'A weather file; without it the hours rest on the readings' }),
    now: z.string().optional().openapi({ description: 'Moment to plan as of, with its offset; by default now' }),
    seed: z.number().int().min(0).max(2_147_483_647).optional(),
    spread,
  })
  .openapi('PlanRequest');

export const planAnswer = z
  .object({
    plan: json('The plan: verdicts, steps, and one table of entries with every number and its inputs'),
    warnings: z.array(issue),
    messages: z.array(z.string()).openapi({ description: 'The warnings in words' }),
  })
  .openapi('Planned');

const content = <S extends z.ZodType>(schema: S) => ({ 'application/json': { schema } });

/** Answer of a route with a JSON body. */
export const answers = <S extends z.ZodType>(description: string, schema: S) => ({
  description,
  content: content(schema),
});

export const required = <S extends z.ZodType>(schema: S) => ({ required: true, content: content(schema) });

/** Refusals every route may give. */
export const refusals = {
  400: answers('Not in the shape stated here', trouble),
  403: answers('Asked for by another site, or under a name this server does not have', trouble),
  404: answers('Not here', trouble),
  413: answers('Too large', trouble),
  415: answers('Not JSON', trouble),
} as const;
