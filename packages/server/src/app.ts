import type { Store } from '@slabwright/store';
import { api, type Clock } from './api.ts';
import { answerFailure, type ServerLog } from './failures.ts';
import { limitedBody, shallowBody } from './guard/body.ts';
import { securityHeaders } from './guard/headers.ts';
import { knownHost, sameOrigin } from './guard/origin.ts';
import { aboutRoutes } from './routes/about.ts';
import { backupRoutes } from './routes/backup.ts';
import { documentRoutes } from './routes/documents.ts';
import { logRoutes } from './routes/log.ts';
import { planRoutes } from './routes/plan.ts';
import { Refused } from './trouble.ts';
import { serveWeb } from './web/serve-web.ts';
import type { WebFile } from './web/web-files.ts';

export interface AppOptions {
  readonly store: Store;
  /** Files of the built app, or null when it is not built. */
  readonly web: ReadonlyMap<string, WebFile> | null;
  readonly clock: Clock;
  /** Names this server may be called by, beside its addresses and localhost. */
  readonly names?: readonly string[];
  readonly log: ServerLog;
}

const ABOUT = {
  openapi: '3.1.0',
  info: {
    title: 'Slabwright',
    version: '1',
    description:
      'Documents with every revision, the append-only log of each job, plans, and the whole store as one backup. ' +
      'Changes are taken from the app at this address only: a browser says so by itself, a program sends the header ' +
      'Origin with this server’s address. There are no accounts: whoever reaches this address reads and writes.',
  },
};

/** The whole HTTP face over one store. It keeps nothing itself: several may stand on the same data. */
export function createApp({ store, web, clock, names = [], log }: AppOptions) {
  const app = api();
  app.onError((error, c) => answerFailure(error, c, log));
  app.notFound((c) => {
    const value = c.req.path.slice(0, 80);
    return answerFailure(new Refused(404, [{ code: 'route-not-found', path: [], value }]), c, log);
  });
  app.use(securityHeaders);
  app.use(knownHost(names));
  app.use(sameOrigin);
  app.use('/api/*', limitedBody, shallowBody);
  const routed = app
    .route('/', aboutRoutes(store))
    .route('/', documentRoutes(store, clock))
    .route('/', logRoutes(store))
    .route('/', planRoutes(store, clock))
    .route('/', backupRoutes(store, clock));
  routed.doc31('/api/openapi.json', ABOUT);
  routed.use(serveWeb(web));
  return routed;
}

/** Routes with their shapes, for a typed client. */
export type App = ReturnType<typeof createApp>;
