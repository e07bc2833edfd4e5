import type { Context, MiddlewareHandler } from 'hono';
import type { WebFile } from './web-files.ts';

const NOT_BUILT = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Slabwright</title>
<h1>The app is not built yet</h1><p>Run <code>npm start</code> in the folder of the program, which builds and serves it.
The calls of this server are listed at <a href="/api/openapi.json">/api/openapi.json</a>.</p></html>`;

/** Answers with the files of the built app; what is not among them goes on to the next route. */
export function serveWeb(files: ReadonlyMap<string, WebFile> | null): MiddlewareHandler {
  return async (c, next) => {
    if (c.req.method !== 'GET' && c.req.method !== 'HEAD') return next();
    if (files === null && c.req.path === '/') return c.html(NOT_BUILT, 503);
    const file = files?.get(c.req.path);
    return file === undefined ? next() : send(c, file);
  };
}

function send(c: Context, file: WebFile): Response {
  const packed = file.packed !== null && /\bgzip\b/.test(c.req.header('accept-encoding') ?? '') ? file.packed : null;
  // Two forms of one file are two things to a cache in between.
  const tag = packed === null ? file.tag : file.tag.replace(/"$/, '-gz"');
  c.header('etag', tag);
  c.header('cache-control', file.cache);
  if (file.packed !== null) c.header('vary', 'Accept-Encoding');
  if (asked(c.req.header('if-none-match'), tag)) return c.body(null, 304);
  c.header('content-type', file.type);
  if (packed !== null) c.header('content-encoding', 'gzip');
  return c.body(packed ?? file.bytes, 200);
}

const asked = (header: string | undefined, tag: string): boolean =>
  (header ?? '').split(',').some((one) => one.trim().replace(/^W\//, '') === tag);
