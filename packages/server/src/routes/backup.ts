import { createRoute, z } from '@hono/zod-openapi';
import { backupSchema, backupText, checkBackup, type Store } from '@slabwright/store';
import type { JSONValue } from 'hono/utils/types';
import { api, type Clock } from '../api.ts';
import { answers, importReport, refusals, required, trouble } from '../shapes.ts';
import { jsonText } from '../wire.ts';

const backup = z
  .object({ schema: z.string() })
  .loose()
  .openapi('Backup', { description: `Everything in the store, under a checksum: ${backupSchema}` });

const exportRoute = createRoute({
  method: 'get',
  path: '/api/backup',
  summary: 'Take everything out as one file: every revision and every entry',
  responses: { 200: answers('The backup', backup), ...refusals },
});

const importRoute = createRoute({
  method: 'post',
  path: '/api/backup',
  summary: 'Add from a backup what is missing here; nothing that is here changes',
  request: { body: required(backup) },
  responses: {
    200: answers('What was added', importReport),
    422: answers('The backup is damaged or of a later version', trouble),
    ...refusals,
  },
});

/** The whole store out as one file, and back in. */
export const backupRoutes = (store: Store, clock: Clock) =>
  api()
    .openapi(exportRoute, async (c) =>
      jsonText<{ [key: string]: JSONValue; schema: string }>(c, backupText(await store.exportAll()), {
        'content-disposition': `attachment; filename="slabwright-backup-${clock().slice(0, 10)}.json"`,
      }),
    )
    .openapi(importRoute, async (c) => {
      const report = await store.importAll(checkBackup(c.req.valid('json')));
      return c.json({ ...report, diverged: [...report.diverged] }, 200);
    });
