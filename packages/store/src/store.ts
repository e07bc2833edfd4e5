import { type Backup, backupOf, checkBackup, type ImportReport } from './backup.ts';
import type { Engine, EntryRow, RevisionRow, Writer } from './engine.ts';
import { Conflict, InvalidInput, StoreClosed } from './errors.ts';
import { importInto } from './import-backup.ts';
import type {
  Change,
  DocumentKey,
  Draft,
  Entry,
  EntryQuery,
  Heading,
  ListPage,
  ListQuery,
  Outcome,
  StopWatching,
  Store,
  StoredDocument,
  StoreEvent,
} from './port.ts';
import { documentOf, entryOf, headingOf, headingRowOf } from './rows.ts';
import { searchWords } from './search.ts';
import { type PreparedChange, prepare, settle } from './settle.ts';
import { checkEntry, checkId, checkInstant, checkKind, checkLimit, checkRevision, limits } from './valid.ts';

/** The rules of SPEC.md over an adapter's rows. Every adapter's `open` ends here. */
export function storeOn(engine: Engine): Store {
  return new RuledStore(engine);
}

type Step =
  | { readonly do: 'document'; readonly prepared: PreparedChange }
  | { readonly do: 'append'; readonly row: EntryRow };

class RuledStore implements Store {
  readonly #engine: Engine;
  readonly #listeners = new Set<(event: StoreEvent) => void>();
  readonly #running = new Set<Promise<unknown>>();
  #closedBecause: string | null = null;
  #closing: Promise<void> | null = null;

  constructor(engine: Engine) {
    this.#engine = engine;
    engine.hear((event) => {
      if (event.what === 'closed') this.#closedBecause = event.message;
      this.#notify(event);
    });
  }

  async put(draft: Draft, expected: number): Promise<StoredDocument> {
    return this.#one({ do: 'put', draft, expected });
  }

  async remove(kind: string, id: string, expected: number, updatedAt: string): Promise<StoredDocument> {
    return this.#one({ do: 'remove', kind, id, expected, updatedAt });
  }

  async restore(kind: string, id: string, expected: number, updatedAt: string): Promise<StoredDocument> {
    return this.#one({ do: 'restore', kind, id, expected, updatedAt });
  }

  async append(entry: Entry): Promise<{ readonly entry: Entry; readonly added: boolean }> {
    const [outcome] = await this.transaction([{ do: 'append', entry }]);
    if (outcome?.did !== 'append') throw new Error('An appended entry came back as something else.');
    return { entry: outcome.entry, added: outcome.added };
  }

  async get(kind: string, id: string, revision?: number): Promise<StoredDocument | null> {
    checkKind(kind);
    checkId(id);
    if (revision !== undefined) checkRevision(revision, 'revision', 1);
    const row = await this.#run(() => this.#engine.read((reader) => reader.revision(kind, id, revision ?? null)));
    return row === null ? null : documentOf(row);
  }

  async history(kind: string, id: string): Promise<readonly Heading[]> {
    checkKind(kind);
    checkId(id);
    return this.#run(() => this.#engine.read((reader) => reader.history(kind, id)));
  }

  async list(query: ListQuery): Promise<ListPage> {
    checkKind(query.kind);
    const limit = query.limit ?? 50;
    checkLimit(limit, 1000);
    if (query.after !== undefined) {
      checkInstant(query.after.updatedAt, 'after.updatedAt');
      checkId(query.after.id, 'after.id');
    }
    const request = {
      kind: query.kind,
      words: searchWords(query.text ?? ''),
      removed: query.removed ?? false,
      after: query.after ?? null,
      // One more than asked for tells whether there is a next page.
      limit: limit + 1,
    };
    const { headings, total } = await this.#run(() => this.#engine.read((reader) => reader.list(request)));
    const page = headings.slice(0, limit).map(headingOf);
    const last = page.at(-1);
    const next = headings.length > limit && last !== undefined ? { updatedAt: last.updatedAt, id: last.id } : null;
    return { headings: page, total, next };
  }

  async entries(jobId: string, query: EntryQuery = {}): Promise<readonly Entry[]> {
    checkId(jobId, 'jobId');
    const limit = query.limit ?? 10_000;
    checkLimit(limit, 100_000);
    if (query.after !== undefined) {
      checkInstant(query.after.at, 'after.at');
      checkId(query.after.id, 'after.id');
    }
    const after = query.after ?? null;
    const rows = await this.#run(() => this.#engine.read((reader) => reader.entries(jobId, after, limit)));
    return rows.map(entryOf);
  }

  async transaction(changes: readonly Change[]): Promise<readonly Outcome[]> {
    if (changes.length > limits.changesInTransaction) {
      throw new InvalidInput('changes', changes.length, `at most ${limits.changesInTransaction} in one transaction`);
    }
    // Everything is checked before the transaction opens: a browser transaction must not be kept waiting.
    const steps = changes.map(stepOf);
    return this.#write(async (writer, told) => {
      const outcomes: Outcome[] = [];
      for (const step of steps) {
        outcomes.push(
          step.do === 'append'
            ? await appendEntry(writer, step.row, told.entries)
            : await changeDocument(writer, step.prepared, told.revisions),
        );
      }
      return outcomes;
    });
  }

  async exportAll(): Promise<Backup> {
    const [revisions, entries] = await this.#run(() =>
      this.#engine.read(async (reader) => [await reader.allRevisions(), await reader.allEntries()] as const),
    );
    return backupOf(revisions, entries);
  }

  async importAll(backup: Backup): Promise<ImportReport> {
    const checked = checkBackup(backup);
    return this.#write(async (writer, told) => {
      const { report, revisions, entries } = await importInto(writer, checked);
      told.revisions.push(...revisions);
      told.entries.push(...entries);
      return report;
    });
  }

  watch(listener: (event: StoreEvent) => void): StopWatching {
    // A wrapper of its own, so that watching twice with one function means two watches.
    const own = (event: StoreEvent): void => listener(event);
    this.#listeners.add(own);
    return () => this.#listeners.delete(own);
  }

  close(): Promise<void> {
    this.#closing ??= this.#closeOnce();
    return this.#closing;
  }

  async #closeOnce(): Promise<void> {
    this.#closedBecause ??= 'This store is closed.';
    // Their callers hear of failures; here only the waiting counts.
    await Promise.allSettled(this.#running);
    this.#listeners.clear();
    await this.#engine.close();
  }

  async #one(change: Change): Promise<StoredDocument> {
    const [outcome] = await this.transaction([change]);
    if (outcome === undefined || outcome.did === 'append') throw new Error('A document came back as something else.');
    return outcome.document;
  }

  async #write<T>(work: (writer: Writer, told: Told) => Promise<T>): Promise<T> {
    const told: Told = { revisions: [], entries: [] };
    const result = await this.#run(() => this.#engine.write((writer) => work(writer, told)));
    if (told.revisions.length > 0 || told.entries.length > 0) {
      const event = changedEvent(told);
      this.#notify(event);
      this.#engine.tell({ ...event, elsewhere: true });
    }
    return result;
  }

  async #run<T>(action: () => Promise<T>): Promise<T> {
    if (this.#closedBecause !== null) throw new StoreClosed(this.#closedBecause);
    const running = action();
    this.#running.add(running);
    try {
      return await running;
    } finally {
      this.#running.delete(running);
    }
  }

  #notify(event: StoreEvent): void {
    // A microtask each: a listener that throws is reported by the platform and fails neither the write nor the others.
    for (const listener of this.#listeners) queueMicrotask(() => listener(event));
  }
}

interface Told {
  readonly revisions: RevisionRow[];
  readonly entries: EntryRow[];
}

function changedEvent(told: Told): Extract<StoreEvent, { what: 'changed' }> {
  const documents: (DocumentKey & { revision: number })[] = told.revisions.map(({ kind, id, revision }) => ({
    kind,
    id,
    revision,
  }));
  return {
    what: 'changed',
    documents,
    entries: told.entries.map(({ jobId, id }) => ({ jobId, id })),
    elsewhere: false,
  };
}

function stepOf(change: Change): Step {
  if (change.do !== 'append') return { do: 'document', prepared: prepare(change) };
  const { jobId, id, at } = change.entry;
  return { do: 'append', row: { jobId, id, at, body: checkEntry(change.entry) } };
}

async function changeDocument(writer: Writer, prepared: PreparedChange, told: RevisionRow[]): Promise<Outcome> {
  const { kind, id } = prepared.key;
  const { row, isNew } = settle(prepared, await writer.revision(kind, id, null));
  if (isNew) {
    await writer.addRevision(row);
    await writer.setHeading(headingRowOf(row));
    told.push(row);
  }
  return { did: prepared.change.do, document: documentOf(row) };
}

async function appendEntry(writer: Writer, row: EntryRow, told: EntryRow[]): Promise<Outcome> {
  const stored = await writer.entry(row.jobId, row.id);
  if (stored === null) {
    await writer.addEntry(row);
    told.push(row);
    return { did: 'append', entry: entryOf(row), added: true };
  }
  if (stored.at !== row.at || stored.body !== row.body) {
    throw new Conflict(
      `The log of job "${row.jobId}" already has another entry "${row.id}". Both are here; the stored one was kept. ` +
        'Add the new one under a new id.',
      entryOf(stored),
      entryOf(row),
    );
  }
  return { did: 'append', entry: entryOf(stored), added: false };
}
