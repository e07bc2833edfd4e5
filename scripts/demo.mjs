/** The main job in one go: the garage planned, printed and papered into out/garage. */
import { run } from '../packages/cli/dist/index.js';

const terminal = {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  colour: process.stdout.isTTY === true && process.env.NO_COLOR === undefined,
  width: process.stdout.columns ?? 100,
  now: () => '2026-05-12T18:00:00-06:00',
};
const garage = new URL('../jobs/garage', import.meta.url).pathname;

const planned = await run(['plan', garage], terminal);
terminal.out('\nPapers\n');
const papered = await run(['papers', garage, '--out', 'out/garage'], terminal);
terminal.out(
  '\nNext: npm run slabwright -- explain jobs/garage flake.quantities.clear.needed --now 2026-05-12T18:00:00-06:00\n',
);
process.exitCode = Math.max(planned, papered);
