import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';

/** One file of the built app, ready to be sent. */
export interface WebFile {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Packed for the wire, where that saves something. */
  readonly packed: Uint8Array<ArrayBuffer> | null;
  readonly tag: string;
  /** How long a browser may keep it without asking. */
  readonly cache: string;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.wasm': 'application/wasm',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

const PACKED = new Set(['.html', '.js', '.css', '.json', '.webmanifest', '.svg', '.ttf', '.wasm']);

/** The builder puts a digest of the content into these names: a changed file has another name. */
const NAMED_BY_CONTENT = /^\/assets\//;

/** Everything else is asked for anew each time, above all the service worker, which brings the next version. */
const ASK_EACH_TIME = 'no-cache';
const KEEP_A_YEAR = 'public, max-age=31536000, immutable';

/**
 * Reads the built app once, at the start. What is served is this table and nothing else, so no address can name a
 * file outside of it. Null when the folder holds no built app.
 */
export function readWebFiles(folder: string): ReadonlyMap<string, WebFile> | null {
  if (!existsSync(join(folder, 'index.html'))) return null;
  const files = new Map<string, WebFile>();
  for (const item of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const type = TYPES[extname(item.name)];
    if (!item.isFile() || type === undefined) continue;
    const path = join(item.parentPath, item.name);
    files.set(`/${relative(folder, path).split(sep).join('/')}`, read(path, type));
  }
  const index = files.get('/index.html');
  if (index !== undefined) files.set('/', index);
  for (const [address, file] of files) {
    if (NAMED_BY_CONTENT.test(address)) files.set(address, { ...file, cache: KEEP_A_YEAR });
  }
  return files;
}

function read(path: string, type: string): WebFile {
  const bytes = new Uint8Array(readFileSync(path));
  const packed = PACKED.has(extname(path)) ? new Uint8Array(gzipSync(bytes)) : null;
  const tag = `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`;
  return { type, bytes, packed: packed && packed.length < bytes.length ? packed : null, tag, cache: ASK_EACH_TIME };
}
