import { isIP } from 'node:net';
import type { MiddlewareHandler } from 'hono';
import { Refused } from '../trouble.ts';

const READS = new Set(['GET', 'HEAD']);

/** Name in a Host header, without port and brackets. */
function nameOf(host: string): string {
  const bracketed = /^\[([^\]]*)\](?::\d+)?$/.exec(host)?.[1];
  return bracketed ?? host.replace(/:\d*$/, '');
}

const isNumeric = (name: string): boolean => isIP(name) !== 0;

/**
 * Refuses a Host that is neither an address nor a known name. A page elsewhere can point a name of its own at this
 * machine and would then count as the same origin; it cannot do that with an address.
 */
export function knownHost(names: readonly string[]): MiddlewareHandler {
  const known = new Set(['localhost', ...names.map((name) => name.toLowerCase())]);
  return async (c, next) => {
    const name = nameOf(c.req.header('host') ?? new URL(c.req.url).host).toLowerCase();
    if (!isNumeric(name) && !known.has(name)) {
      throw new Refused(403, [{ code: 'host-not-known', path: ['Host'], value: name.slice(0, 80) }]);
    }
    await next();
  };
}

/** Refuses every change that another site's page asks for: the browser says where it comes from. */
export const sameOrigin: MiddlewareHandler = async (c, next) => {
  if (!READS.has(c.req.method)) {
    const site = c.req.header('sec-fetch-site');
    const origin = c.req.header('origin');
    const own = c.req.header('host');
    // Older browsers send no Sec-Fetch-Site but do send Origin; a request with neither is refused.
    const allowed = site === undefined ? origin !== undefined && hostOf(origin) === own : site === 'same-origin';
    if (!allowed) {
      throw new Refused(403, [
        { code: 'request-foreign', path: [], value: (origin ?? site ?? 'a place that does not say so').slice(0, 80) },
      ]);
    }
  }
  await next();
};

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}
