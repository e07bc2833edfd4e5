import { MOST_BYTES } from '@slabwright/core';
import type { MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { Refused } from '../trouble.ts';

/** Deeper than any file of ours; what reads it may call itself once a level. */
export const MOST_DEPTH = 200;

const tooLarge = (): never => {
  throw new Refused(413, [{ code: 'request-too-large', path: [], limits: ['0', `${MOST_BYTES}`] }]);
};

/** Refuses a body of more than 10 MB before anything reads it, whether or not its length was announced. */
export const limitedBody: MiddlewareHandler = bodyLimit({ maxSize: MOST_BYTES, onError: tooLarge });

/** Refuses text that nests too deep, before it is parsed: found by counting brackets outside of texts. */
export const shallowBody: MiddlewareHandler = async (c, next) => {
  if (c.req.raw.body !== null && depthOf(await c.req.text()) > MOST_DEPTH) {
    throw new Refused(400, [{ code: 'request-too-deep', path: [], limits: ['0', `${MOST_DEPTH}`] }]);
  }
  await next();
};

function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let index = 0; index < text.length; index++) {
    const sign = text[index];
    if (quoted) {
      if (sign === '\\') index++;
      else if (sign === '"') quoted = false;
    } else if (sign === '"') quoted = true;
    else if (sign === '[' || sign === '{') deepest = Math.max(deepest, ++depth);
    else if (sign === ']' || sign === '}') depth--;
  }
  return deepest;
}
