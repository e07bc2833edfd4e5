import { writeSync } from 'node:fs';
import { openSqliteStore } from '../sqlite/index.ts';
import { withSteps } from '../steps.ts';
import { changesOf, isTransaction } from './script.ts';

/**
 * Writes numbered jobs until it is killed. Each line is out before the next thing happens: `begin n`, `row n` for each
 * row about to be written inside the transaction, `commit n`, and `ok n` once the store has acknowledged.
 */
const [path, first, pace] = process.argv.slice(2);
if (path === undefined || first === undefined) {
  throw new Error('usage: child <database file> <first number> [lingering]');
}

let number = Number(first);

function say(what: string): void {
  writeSync(1, `${what} ${number}\n`);
}

const store = await openSqliteStore({
  path,
  wrap: (engine) =>
    withSteps(engine, async (step) => {
      if (step === 'answer') return;
      say(step);
      // Lingering inside the open transaction is what lets the kill fall there; without, it falls at the commits.
      if (pace === 'lingering' && isTransaction(number) && step === 'row')
        await new Promise((done) => setTimeout(done, 1));
    }),
});
for (; ; number++) {
  say('begin');
  await store.transaction(changesOf(number));
  say('ok');
}
