import { backupText } from '../backup.ts';
import type { Engine } from '../engine.ts';
import { StoreFull } from '../errors.ts';
import { type FaultPlan, type FaultyEngine, withFaults } from '../faults.ts';
import type { Change, Store } from '../port.ts';
import { holds, same } from './expect.ts';
import type { AcceptanceCase, Opening } from './place.ts';
import { instant, job, reading } from './samples.ts';

/** Writes of every sort; each is one transaction. Every write is made so that it can be told apart in the store. */
const script: readonly (readonly Change[])[] = [
  [{ do: 'put', draft: job('a'), expected: 0 }],
  [{ do: 'put', draft: job('a', { title: 'Second' }), expected: 1 }],
  [{ do: 'append', entry: reading('a', 'r1', 0) }],
  [
    { do: 'put', draft: job('b'), expected: 0 },
    { do: 'append', entry: reading('b', 'r1', 0) },
    { do: 'put', draft: job('a', { title: 'Third' }), expected: 2 },
  ],
  [{ do: 'remove', kind: 'job', id: 'b', expected: 1, updatedAt: instant(3) }],
  [{ do: 'restore', kind: 'job', id: 'b', expected: 2, updatedAt: instant(4) }],
];

export const faultCases: readonly AcceptanceCase[] = [
  {
    rule: 'F1',
    title: 'failing once at step N, for every N: each write is there wholly or not at all, and can be made again',
    run: (opening) => forEveryStep(opening, 'once'),
  },
  {
    rule: 'F2',
    title: 'failing from step N on, for every N: what was acknowledged stays, is read, and the export works',
    run: (opening) => forEveryStep(opening, 'onwards'),
  },
  {
    rule: 'F3',
    title: 'an import that fails at step N, for every N, leaves the store as it was or is whole',
    async run({ open, openOther }) {
      const source = await open();
      for (const changes of script) await source.transaction(changes);
      const backup = await source.exportAll();
      for (let failAt = 1; ; failAt++) {
        const { wrap, engine } = counted({ failAt, lasting: 'once' });
        const store = await openOther(wrap);
        const before = await store.exportAll();
        const failed = await failure(store.importAll(backup));
        const after = await store.exportAll();
        await store.close();
        const whole = backupText(after) === backupText(backup);
        if (failed === null) {
          holds(whole, 'an import that went through is whole');
          holds(engine().steps() < failAt, 'it went through because no step was left to fail');
          return;
        }
        // Only the answer after the commit can fail with the import made.
        holds(whole || backupText(after) === backupText(before), `nothing half after a failure at step ${failAt}`);
      }
    },
  },
];

async function forEveryStep({ open }: Opening, lasting: FaultPlan['lasting']): Promise<void> {
  // One place for all runs: each run works on documents of its own, so that nothing before can hide a loss.
  for (let failAt = 1; ; failAt++) {
    const { wrap, engine } = counted({ failAt, lasting });
    const store = await open(wrap);
    const own = script.map((changes) => changes.map((change) => renamed(change, `${lasting}-${failAt}`)));
    const failures = await runScript(store, own, lasting);
    const exported = await store.exportAll();
    holds(exported.checksum.startsWith('sha-256:'), `the export works after a failure at step ${failAt}`);
    await store.close();
    await checkAfterwards(await open(), own, failures, `${lasting} at step ${failAt}`);
    if (failures.every((failed) => !failed)) {
      holds(engine().steps() < failAt, 'nothing failed because no step was left to fail');
      return;
    }
  }
}

/** Makes the writes one after the other; after one that fails stops, or with `once` makes it again. */
async function runScript(
  store: Store,
  writes: readonly (readonly Change[])[],
  lasting: FaultPlan['lasting'],
): Promise<readonly boolean[]> {
  const failures: boolean[] = [];
  for (const changes of writes) {
    const error = await failure(store.transaction(changes));
    failures.push(error !== null);
    if (error === null) continue;
    holds(error instanceof StoreFull, `the failure comes by name: ${String(error)}`);
    if (lasting === 'onwards') break;
    await store.transaction(changes);
  }
  return failures;
}

async function checkAfterwards(
  store: Store,
  writes: readonly (readonly Change[])[],
  failures: readonly boolean[],
  what: string,
): Promise<void> {
  for (const [index, changes] of writes.entries()) {
    const present = await Promise.all(changes.map((change) => isMade(store, change)));
    const failed = failures[index];
    // A repeated write went through in the end; one after the first lasting failure was never begun.
    const acknowledged = failed === false || (failed === true && what.startsWith('once'));
    if (acknowledged)
      same(
        present,
        changes.map(() => true),
        `acknowledged write ${index + 1}, ${what}`,
      );
    else if (failed === true) same(new Set(present).size, 1, `write ${index + 1} is whole or absent, ${what}`);
    else
      same(
        present,
        changes.map(() => false),
        `write ${index + 1} was not begun, ${what}`,
      );
  }
  await store.close();
}

async function isMade(store: Store, change: Change): Promise<boolean> {
  if (change.do === 'append') {
    const entries = await store.entries(change.entry.jobId);
    return entries.some(({ id }) => id === change.entry.id);
  }
  const { kind, id } = change.do === 'put' ? change.draft : change;
  const stored = await store.get(kind, id, change.expected + 1);
  const latest = await store.get(kind, id);
  const listed = await store.list({ kind, text: '', removed: latest?.removed ?? false, limit: 1000 });
  const heading = listed.headings.find((one) => one.id === id);
  same(heading?.revision, latest?.revision, `the list and the document agree on ${id}`);
  return stored !== null;
}

function renamed(change: Change, suffix: string): Change {
  if (change.do === 'append') {
    return { ...change, entry: { ...change.entry, jobId: `${change.entry.jobId}-${suffix}` } };
  }
  if (change.do === 'put') return { ...change, draft: { ...change.draft, id: `${change.draft.id}-${suffix}` } };
  return { ...change, id: `${change.id}-${suffix}` };
}

function counted(plan: FaultPlan): { wrap: (engine: Engine) => Engine; engine: () => FaultyEngine } {
  let faulty: FaultyEngine | null = null;
  return {
    wrap(engine) {
      faulty = withFaults(engine, plan);
      return faulty;
    },
    engine() {
      if (faulty === null) throw new Error('The engine was not wrapped.');
      return faulty;
    },
  };
}

async function failure(promise: Promise<unknown>): Promise<unknown> {
  try {
    await promise;
    return null;
  } catch (error) {
    return error;
  }
}
