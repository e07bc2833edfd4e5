import { spawn } from 'node:child_process';
import { openSqliteStore } from '../sqlite/index.ts';
import { isTransaction, seededNumbers } from './script.ts';
import { verify } from './verify.ts';

/** Where a kill fell, by the last line the child had out. */
export type Moment =
  | 'inside a transaction'
  | 'at the commit'
  | 'single write begun'
  | 'between writes'
  | 'before writing';

/** One kill: the write in flight as the child stated it, and what was found afterwards. */
export interface Kill {
  readonly moment: Moment;
  /** The number of the write begun and not acknowledged, or null. */
  readonly inFlight: number | null;
  readonly acknowledged: number;
  readonly violations: readonly string[];
}

export interface KillOptions {
  readonly path: string;
  /** The compiled child. */
  readonly child: string;
  readonly kills: number;
  readonly seed: number;
}

/**
 * Lets a child write into one file and kills it, again and again; after each kill opens the file and checks that
 * every number ever acknowledged is there and that no write is there in half.
 */
export async function killTimes({ path, child, kills, seed }: KillOptions): Promise<readonly Kill[]> {
  const random = seededNumbers(seed);
  const acknowledged = new Set<number>();
  const unknown = new Set<number>();
  const results: Kill[] = [];
  let next = 1;
  for (let kill = 0; kill < kills; kill++) {
    const pace = kill % 2 === 0 ? 'lingering' : 'at full speed';
    const lines = await runAndKill([child, path, String(next), pace], 5 + random() * 120);
    const before = acknowledged.size;
    for (const [what, number] of lines) if (what === 'ok') acknowledged.add(number);
    const last = lines.at(-1);
    const inFlight = last === undefined || last[0] === 'ok' ? null : last[1];
    // Killed before the commit was asked for, the write must be absent; at the commit it may be either.
    if (inFlight !== null) unknown.add(inFlight);
    const mayBeThere = last?.[0] === 'commit' ? inFlight : null;
    next = Math.max(next, (last?.[1] ?? 0) + 1);

    const store = await openSqliteStore({ path });
    const { violations, present } = await verify(store, acknowledged, unknown, mayBeThere);
    await store.close();
    // What was found once is not in doubt any more: it must stay as it was found.
    for (const number of unknown) if (present.has(number)) acknowledged.add(number);
    unknown.clear();
    results.push({ moment: momentOf(last), inFlight, acknowledged: acknowledged.size - before, violations });
  }
  return results;
}

type Line = readonly [what: string, number: number];

function momentOf(last: Line | undefined): Moment {
  if (last === undefined) return 'before writing';
  const [what, number] = last;
  if (what === 'ok') return 'between writes';
  if (what === 'commit') return 'at the commit';
  return what === 'row' && isTransaction(number) ? 'inside a transaction' : 'single write begun';
}

/** Starts a child and kills it some milliseconds after its first acknowledged write: on a busy machine it gets there later. */
function runAndKill(command: readonly string[], milliseconds: number): Promise<readonly Line[]> {
  return new Promise((done, failed) => {
    const running = spawn(process.execPath, command, { stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    let complaints = '';
    let counting = false;
    running.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      if (counting || !/^ok \d+$/m.test(output)) return;
      counting = true;
      setTimeout(() => running.kill('SIGKILL'), milliseconds);
    });
    running.stderr.setEncoding('utf8').on('data', (text: string) => {
      complaints += text;
    });
    running.on('error', failed);
    running.on('close', (code, signal) => {
      if (signal === 'SIGKILL') done(linesOf(output));
      else failed(new Error(`the child ended by itself with ${String(code)}: ${complaints}`));
    });
  });
}

function linesOf(output: string): readonly Line[] {
  // What follows the last line end is a line the kill cut off; it was not out.
  const whole = output.slice(0, output.lastIndexOf('\n') + 1);
  return [...whole.matchAll(/^(\w+) (\d+)$/gm)].map(([, what = '', number]) => [what, Number(number)]);
}
