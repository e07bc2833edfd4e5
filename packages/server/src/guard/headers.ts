import type { MiddlewareHandler } from 'hono';

/** Scripts, workers and fonts come from this server alone; nothing inline runs, and no other page may frame this one. */
const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  // Beside this server the two public forecast services, which the page asks only where its device allows it.
  "connect-src 'self' https://api.met.no https://api.weather.gov",
  "manifest-src 'self'",
  "frame-src 'self' blob:",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'x-frame-options': 'DENY',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), geolocation=(self), microphone=()',
};

/** Sets the headers on every answer, refusals and failures included. */
export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) c.res.headers.set(name, value);
  if (c.req.path.startsWith('/api/') && !c.res.headers.has('cache-control')) {
    c.res.headers.set('cache-control', 'no-store');
  }
};
