import { depthOf, MOST_BYTES, MOST_DEPTH } from '@slabwright/core';
import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { Refused } from '../trouble.ts';

const tooLarge = (): never => {
  throw new Refused(413, [{ code: 'request-too-large', path: [], limits: ['0', `${MOST_BYTES}`] }]);
};

/** Refuses a body of more than 10 MB before anything reads it, whether or not its length was announced. */
export const limitedBody: MiddlewareHandler = bodyLimit({ maxSize: MOST_BYTES, onError: tooLarge });

/** Refuses text that nests too deep, before it is parsed: see `depthOf`. */
export const shallowBody: MiddlewareHandler = async (c, next) => {
  if (c.req.raw.body !== null && depthOf(await c.req.text()) > MOST_DEPTH) {
    throw new Refused(400, [{ code: 'request-too-deep', path: [], limits: ['0', `${MOST_DEPTH}`] }]);
  }
  await next();
};
