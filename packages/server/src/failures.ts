import { randomUUID } from 'node:crypto';
import {
  Conflict,
  Damaged,
  FutureSchema,
  InvalidInput,
  NotFound,
  StoreBlocked,
  StoreClosed,
  StoreError,
  StoreFull,
  WrittenOnce,
} from '@slabwright/store';
import type { Context } from 'hono';
import { HTTPException } from 'hono/http-exception';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import { Refused, troubleOf } from './trouble.ts';

/** Where details of a mistake of ours go; never to the caller. */
export type ServerLog = (line: string) => void;

const STORE_STATUS: readonly (readonly [abstract new (...values: never[]) => StoreError, ContentfulStatusCode])[] = [
  [Conflict, 409],
  [WrittenOnce, 409],
  [NotFound, 404],
  [InvalidInput, 400],
  [Damaged, 422],
  [FutureSchema, 422],
  [StoreFull, 507],
  [StoreBlocked, 503],
  [StoreClosed, 503],
];

const kebab = (name: string): string => name.replace(/(?!^)[A-Z]/g, '-$&').toLowerCase();

function ofStore(error: StoreError, c: Context): Response | undefined {
  const status = STORE_STATUS.find(([kind]) => error instanceof kind)?.[1];
  if (status === undefined) return undefined;
  const path = error instanceof InvalidInput ? [error.field] : [];
  const said = { issues: [{ code: kebab(error.name), path }], messages: [error.message] };
  // Both versions go back: the caller shows them side by side, and neither is lost.
  if (error instanceof Conflict) return c.json({ ...said, stored: error.stored, offered: error.offered }, 409);
  return c.json(said, status);
}

/** Turns whatever a route throws into an answer. Only a mistake of ours is a 500, and it tells no details. */
export function answerFailure(error: unknown, c: Context, log: ServerLog): Response {
  if (error instanceof Refused) return c.json(troubleOf(error.issues), error.status);
  if (error instanceof HTTPException && error.status < 500) {
    const code = error.status === 413 ? 'request-too-large' : 'request-not-json';
    return c.json(troubleOf([{ code, path: [] }]), error.status as ContentfulStatusCode);
  }
  if (error instanceof StoreError) {
    const answer = ofStore(error, c);
    if (answer !== undefined) return answer;
  }
  const id = randomUUID();
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
  // One line, whatever the message holds: a line end in it must not look like another entry.
  log(`${id} ${c.req.method} ${c.req.path} ${JSON.stringify(detail)}`);
  return c.json(troubleOf([{ code: 'server-failed', path: [], value: id }]), 500);
}
