import { readFileSync, statSync } from 'node:fs';
import { createServer as createHttpServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import type { Certificate } from './certificate.ts';

/** A host that knows nothing of the app: it hands out the files of a folder and nothing more. */
export interface StaticHost {
  readonly address: string;
  stop(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

interface HostOptions {
  readonly folder: string;
  /** Path under which the folder stands, for instance `/tools/floor/`. */
  readonly under?: string;
  /** Serves over https with it; without, over http. */
  readonly certificate?: Certificate;
}

export async function staticHost({ folder, under = '/', certificate }: HostOptions): Promise<StaticHost> {
  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://host').pathname);
    const inside = path.startsWith(under) ? normalize(`/${path.slice(under.length)}`) : null;
    const file = inside === null ? null : join(folder, inside.endsWith('/') ? `${inside}index.html` : inside);
    if (file === null || !statSync(file, { throwIfNoEntry: false })?.isFile()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    response.end(readFileSync(file));
  };
  const server = certificate
    ? createHttpsServer({ key: certificate.key, cert: certificate.cert }, answer)
    : createHttpServer(answer);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    address: `${certificate ? 'https' : 'http'}://localhost:${port}${under}`,
    async stop() {
      const closed = new Promise<void>((done) => server.close(() => done()));
      server.closeAllConnections();
      await closed;
    },
  };
}
