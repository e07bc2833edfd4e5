import { run } from '../index.ts';
import { type Heard, heard, terminalInto } from './heard.ts';

/** Runs a command line and gives its exit status with what it printed. */
export async function runHeard(args: readonly string[], width = 100): Promise<{ status: number } & Heard> {
  const said = heard();
  return { status: await run([...args], terminalInto(said, width)), ...said };
}
