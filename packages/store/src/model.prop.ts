import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { instant } from './acceptance/samples.ts';
import { Conflict, type Store } from './index.ts';
import { memoryDisk, openMemoryStore } from './memory/index.ts';
import { openSqliteStore } from './sqlite/index.ts';

/** What must be there: the titles of each job's revisions, a tombstone as null, and the log as a Map of texts. */
interface Model {
  readonly jobs: Map<string, (string | null)[]>;
  readonly log: Map<string, string>;
}

interface Real {
  store: Store;
  readonly reopen: () => Promise<Store>;
}

type Command = fc.AsyncCommand<Model, Real>;

const ids = fc.constantFrom('a', 'b', 'c');
const titles = fc.string({ maxLength: 8, unit: 'grapheme' });

function draft(id: string, title: string) {
  return { kind: 'job', id, title, searchText: '', updatedAt: instant(0), body: { title } };
}

/** A put from the revision the model knows, plus a lag: 0 has seen the latest, others have not. */
class Put implements Command {
  readonly id: string;
  readonly title: string;
  readonly lag: number;
  constructor(id: string, title: string, lag: number) {
    this.id = id;
    this.title = title;
    this.lag = lag;
  }
  check(): boolean {
    return true;
  }
  async run(model: Model, real: Real): Promise<void> {
    const revisions = model.jobs.get(this.id) ?? [];
    const expected = Math.max(0, revisions.length - this.lag);
    const repeated = expected === revisions.length - 1 && revisions.at(-1) === this.title;
    if (expected === revisions.length) {
      expect((await real.store.put(draft(this.id, this.title), expected)).revision).toBe(expected + 1);
      model.jobs.set(this.id, [...revisions, this.title]);
    } else if (repeated) {
      expect((await real.store.put(draft(this.id, this.title), expected)).revision).toBe(revisions.length);
    } else {
      await expect(real.store.put(draft(this.id, this.title), expected)).rejects.toThrow(Conflict);
    }
  }
  toString(): string {
    return `put ${this.id} ${JSON.stringify(this.title)} lag ${this.lag}`;
  }
}

class Remove implements Command {
  readonly id: string;
  constructor(id: string) {
    this.id = id;
  }
  check(model: Readonly<Model>): boolean {
    return (model.jobs.get(this.id)?.at(-1) ?? null) !== null;
  }
  async run(model: Model, real: Real): Promise<void> {
    const revisions = model.jobs.get(this.id) ?? [];
    await real.store.remove('job', this.id, revisions.length, instant(0));
    model.jobs.set(this.id, [...revisions, null]);
  }
  toString(): string {
    return `remove ${this.id}`;
  }
}

class Restore implements Command {
  readonly id: string;
  constructor(id: string) {
    this.id = id;
  }
  check(model: Readonly<Model>): boolean {
    return model.jobs.get(this.id)?.at(-1) === null;
  }
  async run(model: Model, real: Real): Promise<void> {
    const revisions = model.jobs.get(this.id) ?? [];
    await real.store.restore('job', this.id, revisions.length, instant(0));
    model.jobs.set(this.id, [...revisions, revisions.at(-2) ?? '']);
  }
  toString(): string {
    return `restore ${this.id}`;
  }
}

class Append implements Command {
  readonly id: string;
  readonly text: string;
  constructor(id: string, text: string) {
    this.id = id;
    this.text = text;
  }
  check(): boolean {
    return true;
  }
  async run(model: Model, real: Real): Promise<void> {
    const stored = model.log.get(this.id);
    const appending = real.store.append({ jobId: 'a', id: this.id, at: instant(0), body: this.text });
    if (stored !== undefined && stored !== this.text) await expect(appending).rejects.toThrow(Conflict);
    else expect((await appending).added).toBe(stored === undefined);
    model.log.set(this.id, stored ?? this.text);
  }
  toString(): string {
    return `append ${this.id} ${JSON.stringify(this.text)}`;
  }
}

/** A job and an entry in one transaction, followed by a put that conflicts in half of the cases. */
class Together implements Command {
  readonly id: string;
  readonly title: string;
  readonly fails: boolean;
  constructor(id: string, title: string, fails: boolean) {
    this.id = id;
    this.title = title;
    this.fails = fails;
  }
  check(model: Readonly<Model>): boolean {
    return !model.log.has(`${this.id}-${this.title.length}`);
  }
  async run(model: Model, real: Real): Promise<void> {
    const revisions = model.jobs.get(this.id) ?? [];
    const entryId = `${this.id}-${this.title.length}`;
    const done = real.store.transaction([
      { do: 'put', draft: draft(this.id, this.title), expected: revisions.length },
      { do: 'append', entry: { jobId: 'a', id: entryId, at: instant(0), body: this.title } },
      { do: 'put', draft: draft(this.id, `${this.title}!`), expected: revisions.length + (this.fails ? 7 : 1) },
    ]);
    if (this.fails) {
      await expect(done).rejects.toThrow(Conflict);
    } else {
      await done;
      model.jobs.set(this.id, [...revisions, this.title, `${this.title}!`]);
      model.log.set(entryId, this.title);
    }
  }
  toString(): string {
    return `together ${this.id} ${JSON.stringify(this.title)}${this.fails ? ' failing' : ''}`;
  }
}

class Reopen implements Command {
  check(): boolean {
    return true;
  }
  async run(_model: Model, real: Real): Promise<void> {
    await real.store.close();
    real.store = await real.reopen();
  }
  toString(): string {
    return 'reopen';
  }
}

/** Reads everything back by every way there is and compares it with the model. */
class Look implements Command {
  check(): boolean {
    return true;
  }
  async run(model: Model, { store }: Real): Promise<void> {
    for (const [id, revisions] of model.jobs) {
      const latest = await store.get('job', id);
      expect(latest?.revision).toBe(revisions.length);
      expect(latest?.removed).toBe(revisions.at(-1) === null);
      const history = await store.history('job', id);
      expect(history.map(({ removed, title }) => (removed ? null : title))).toEqual(revisions);
      expect(await store.get('job', id, 1)).toMatchObject({ title: revisions[0], body: { title: revisions[0] } });
    }
    const living = [...model.jobs].filter(([, revisions]) => revisions.at(-1) !== null).map(([id]) => id);
    const listed = (await store.list({ kind: 'job' })).headings.map(({ id }) => id);
    expect(listed).toEqual(living.sort().reverse());
    const entries = await store.entries('a');
    expect(new Map(entries.map(({ id, body }) => [id, body]))).toEqual(model.log);
  }
  toString(): string {
    return 'look';
  }
}

const commands = fc.commands(
  [
    fc.tuple(ids, titles, fc.constantFrom(0, 0, 0, 1, 2)).map(([id, title, lag]) => new Put(id, title, lag)),
    ids.map((id) => new Remove(id)),
    ids.map((id) => new Restore(id)),
    fc.tuple(fc.constantFrom('r1', 'r2', 'r3'), titles).map(([id, text]) => new Append(id, text)),
    fc.tuple(ids, titles, fc.boolean()).map(([id, title, fails]) => new Together(id, title, fails)),
    fc.constant(new Reopen()),
    fc.constant(new Look()),
  ],
  { maxCommands: 40 },
);

async function runAgainst(real: Real, sequence: Iterable<Command>): Promise<void> {
  const model: Model = { jobs: new Map(), log: new Map() };
  try {
    await fc.asyncModelRun(() => ({ model, real }), [...sequence, new Look(), new Reopen(), new Look()]);
  } finally {
    await real.store.close();
  }
}

describe('T2, H1, C1: whatever is done in whatever order, the store holds what a Map would', () => {
  test('memory', async () => {
    const property = fc.asyncProperty(commands, async (sequence) => {
      const disk = memoryDisk();
      await runAgainst({ store: await openMemoryStore({ disk }), reopen: () => openMemoryStore({ disk }) }, sequence);
    });
    await fc.assert(property, { numRuns: 100 });
  });

  test('SQLite', async () => {
    const property = fc.asyncProperty(commands, async (sequence) => {
      const folder = await mkdtemp(join(tmpdir(), 'slabwright-model-'));
      const path = join(folder, 'store.db');
      try {
        await runAgainst({ store: await openSqliteStore({ path }), reopen: () => openSqliteStore({ path }) }, sequence);
      } finally {
        await rm(folder, { recursive: true });
      }
    });
    await fc.assert(property, { numRuns: 25 });
  });
});
