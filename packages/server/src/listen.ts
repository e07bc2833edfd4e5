import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { getRequestListener } from '@hono/node-server';
import { createApp } from './app.ts';
import { openDataFolder } from './data-folder.ts';
import { addDemoJobs } from './demo.ts';
import type { ServerLog } from './failures.ts';
import { readWebFiles } from './web/web-files.ts';

const BUILT_WEB = fileURLToPath(new URL('../../web/dist', import.meta.url));

export interface ServeOptions {
  readonly data: string;
  /** 0 takes any free one. By default 4170. */
  readonly port?: number;
  /** Address to listen on. By default 127.0.0.1: nobody but this machine. */
  readonly host?: string;
  readonly names?: readonly string[];
  /** Folder of the built app. By default the one this repository builds. */
  readonly web?: string;
  readonly demo?: boolean;
  readonly log: ServerLog;
}

export interface Serving {
  readonly address: string;
  readonly port: number;
  /** False when only the API answers, because the app is not built. */
  readonly webBuilt: boolean;
  readonly demoJobs: readonly string[];
  /** Lets running calls end, then closes the store. */
  stop(): Promise<void>;
}

export const DEFAULT_PORT = 4170;
export const LOOPBACK = '127.0.0.1';

/** The port is taken, or the address is not this machine's. */
export class CannotListen extends Error {
  override readonly name = 'CannotListen';
}

/** Opens the data folder and answers on the port. @throws CannotListen, StoreError. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const { port = DEFAULT_PORT, host = LOOPBACK, log } = options;
  const clock = () => new Date().toISOString();
  const store = await openDataFolder(options.data);
  try {
    const demoJobs = options.demo === false ? [] : await addDemoJobs(store);
    const web = readWebFiles(options.web ?? BUILT_WEB);
    const names = [...(options.names ?? []), host];
    const app = createApp({ store, web, clock, names, log });
    const server = createServer(getRequestListener(app.fetch, { hostname: host }));
    await listening(server, port, host);
    const at = server.address() as AddressInfo;
    return {
      address: `http://${at.family === 'IPv6' ? `[${at.address}]` : at.address}:${at.port}/`,
      port: at.port,
      webBuilt: web !== null,
      demoJobs,
      async stop() {
        const closed = new Promise<void>((done) => server.close(() => done()));
        server.closeIdleConnections();
        // A call that still runs may end; a connection that only waits may not hold the server up.
        const late = setTimeout(() => server.closeAllConnections(), 2000);
        await closed;
        clearTimeout(late);
        await store.close();
      },
    };
  } catch (trouble) {
    await store.close();
    throw trouble;
  }
}

function listening(server: ReturnType<typeof createServer>, port: number, host: string): Promise<void> {
  return new Promise((done, failed) => {
    server.once('error', (cause: NodeJS.ErrnoException) => failed(new CannotListen(why(cause, port, host), { cause })));
    server.listen({ port, host }, done);
  });
}

function why({ code, message }: NodeJS.ErrnoException, port: number, host: string): string {
  if (code === 'EADDRINUSE') {
    return `Port ${port} on ${host} is taken, perhaps by this program. Look there, or choose another with --port.`;
  }
  if (code === 'EACCES') return `Port ${port} may not be taken by this account. Choose one from 1024 up with --port.`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND') {
    return `${host} is not an address of this machine. Leave --host out to serve this machine alone.`;
  }
  return `The server cannot listen on ${host}, port ${port}: ${message}.`;
}
