import { CannotListen, DEFAULT_PORT, LOOPBACK, serve } from '@slabwright/server';
import { StoreError } from '@slabwright/store';
import { DEFAULT_DATA } from '../data/open-data.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

export interface ServeVerbOptions {
  readonly port?: string;
  readonly data?: string;
  readonly host?: string;
  readonly name?: readonly string[];
  readonly json?: boolean;
}

const MOST_PORT = 65_535;

function portOf(typed: string | undefined): number {
  if (typed === undefined) return DEFAULT_PORT;
  const port = /^\d{1,5}$/.test(typed) ? Number(typed) : Number.NaN;
  if (!(port <= MOST_PORT)) {
    throw new BadInput([
      `--port is "${typed}"; it must be a whole number from 0 to ${MOST_PORT} (0 takes a free one).`,
    ]);
  }
  return port;
}

const reachesOthers = (host: string): boolean => host !== 'localhost' && host !== '::1' && !host.startsWith('127.');

/** `serve`: answers until `stopped` resolves; by default until the process is asked to end. */
export async function serveVerb(
  options: ServeVerbOptions,
  terminal: Terminal,
  stopped: () => Promise<void> = untilAskedToEnd,
): Promise<number> {
  const { data = DEFAULT_DATA, host = LOOPBACK, name: names = [] } = options;
  const port = portOf(options.port);
  const serving = await started({ data, port, host, names, log: (line) => terminal.err(`${line}\n`) });
  const { address, webBuilt, demoJobs } = serving;
  if (options.json) terminal.out(`${JSON.stringify({ address, data, webBuilt, demoJobs })}\n`);
  else {
    terminal.out(`Slabwright is at ${address}\n`);
    terminal.out(`The data is in ${data}. Calls are listed at ${address}api/openapi.json. Ctrl-C ends.\n`);
    if (demoJobs.length > 0) terminal.out(`${demoJobs.length} invented jobs were put in to look around with.\n`);
    if (!webBuilt) terminal.err('The app is not built, so only the calls answer. npm start builds it first.\n');
  }
  if (reachesOthers(host)) {
    terminal.err('Everybody who reaches this address can read and change everything: there are no accounts yet.\n');
  }
  await stopped();
  await serving.stop();
  return EXIT.fine;
}

async function started(options: Parameters<typeof serve>[0]): ReturnType<typeof serve> {
  try {
    return await serve(options);
  } catch (trouble) {
    if (trouble instanceof CannotListen || trouble instanceof StoreError) throw new BadInput([trouble.message]);
    throw trouble;
  }
}

function untilAskedToEnd(): Promise<void> {
  return new Promise((done) => {
    process.once('SIGINT', () => done());
    process.once('SIGTERM', () => done());
  });
}
