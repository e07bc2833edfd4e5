import type { Engine, EntryRow, HeadingRow, ListRequest, Reader, RevisionRow, Writer } from '../engine.ts';
import { StoreError, StoreFailed } from '../errors.ts';
import type { Heading, Store, StoreEvent } from '../port.ts';
import { headingOf } from '../rows.ts';
import { storeOn } from '../store.ts';

/** What a memory store writes on: handed to a second `open`, it is the same data again. */
export interface MemoryDisk {
  readonly revisions: Map<string, RevisionRow[]>;
  readonly headings: Map<string, HeadingRow>;
  readonly entries: Map<string, Map<string, EntryRow>>;
  readonly handles: Set<MemoryEngine>;
  /** The writes of all handles, one after the other. */
  lastWrite: Promise<unknown>;
}

export interface MemoryOptions {
  /** By default a new, empty one. */
  readonly disk?: MemoryDisk;
  /** Wraps the engine, for instance with faults. */
  readonly wrap?: (engine: Engine) => Engine;
}

/** An empty disk. */
export function memoryDisk(): MemoryDisk {
  return {
    revisions: new Map(),
    headings: new Map(),
    entries: new Map(),
    handles: new Set(),
    lastWrite: Promise.resolve(),
  };
}

/** A store that lives as long as its disk object: for tests, and where no database is to be had. */
export async function openMemoryStore(options: MemoryOptions = {}): Promise<Store> {
  const engine = new MemoryEngine(options.disk ?? memoryDisk());
  return storeOn(options.wrap?.(engine) ?? engine);
}

class MemoryEngine implements Engine {
  readonly #disk: MemoryDisk;
  #listener: ((event: StoreEvent) => void) | null = null;

  constructor(disk: MemoryDisk) {
    this.#disk = disk;
    disk.handles.add(this);
  }

  async read<T>(work: (reader: Reader) => Promise<T>): Promise<T> {
    // Behind the running write, so that no half transaction is seen.
    return this.#inTurn(() => work(new MemoryWriter(this.#disk, [])));
  }

  async write<T>(work: (writer: Writer) => Promise<T>): Promise<T> {
    return this.#inTurn(async () => {
      const undo: (() => void)[] = [];
      try {
        return await work(new MemoryWriter(this.#disk, undo));
      } catch (cause) {
        for (const step of undo.reverse()) step();
        throw cause instanceof StoreError ? cause : new StoreFailed(cause);
      }
    });
  }

  tell(event: StoreEvent): void {
    for (const handle of this.#disk.handles) if (handle !== this) handle.#listener?.(event);
  }

  hear(listener: (event: StoreEvent) => void): void {
    this.#listener = listener;
  }

  async close(): Promise<void> {
    this.#disk.handles.delete(this);
  }

  #inTurn<T>(action: () => Promise<T>): Promise<T> {
    const turn = this.#disk.lastWrite.then(action, action);
    this.#disk.lastWrite = turn;
    return turn;
  }
}

class MemoryWriter implements Writer {
  readonly #disk: MemoryDisk;
  readonly #undo: (() => void)[];

  constructor(disk: MemoryDisk, undo: (() => void)[]) {
    this.#disk = disk;
    this.#undo = undo;
  }

  async revision(kind: string, id: string, revision: number | null): Promise<RevisionRow | null> {
    const rows = this.#disk.revisions.get(key(kind, id)) ?? [];
    return rows.at(revision === null ? -1 : revision - 1) ?? null;
  }

  async revisions(kind: string, id: string): Promise<readonly RevisionRow[]> {
    return [...(this.#disk.revisions.get(key(kind, id)) ?? [])];
  }

  async history(kind: string, id: string): Promise<readonly Heading[]> {
    return (await this.revisions(kind, id)).map(headingOf);
  }

  async list(request: ListRequest): Promise<{ headings: readonly HeadingRow[]; total: number }> {
    const { kind, removed, words, after, limit } = request;
    const matching = [...this.#disk.headings.values()].filter(
      (row) => row.kind === kind && row.removed === removed && words.every((word) => row.search.includes(word)),
    );
    const sorted = matching.sort((a, b) => order(b.updatedAt, a.updatedAt) || order(b.id, a.id));
    const rest = sorted.filter(
      (row) => after === null || (order(row.updatedAt, after.updatedAt) || order(row.id, after.id)) < 0,
    );
    return { headings: rest.slice(0, limit), total: matching.length };
  }

  async entry(jobId: string, id: string): Promise<EntryRow | null> {
    return this.#disk.entries.get(jobId)?.get(id) ?? null;
  }

  async entries(
    jobId: string,
    after: { readonly at: string; readonly id: string } | null,
    limit: number,
  ): Promise<readonly EntryRow[]> {
    return [...(this.#disk.entries.get(jobId)?.values() ?? [])]
      .sort((a, b) => order(a.at, b.at) || order(a.id, b.id))
      .filter((row) => after === null || (order(row.at, after.at) || order(row.id, after.id)) > 0)
      .slice(0, limit);
  }

  async allRevisions(): Promise<readonly RevisionRow[]> {
    return [...this.#disk.revisions.values()].flat();
  }

  async allEntries(): Promise<readonly EntryRow[]> {
    return [...this.#disk.entries.values()].flatMap((entries) => [...entries.values()]);
  }

  async addRevision(row: RevisionRow): Promise<void> {
    const name = key(row.kind, row.id);
    const rows = this.#disk.revisions.get(name);
    if (rows === undefined) {
      this.#disk.revisions.set(name, [row]);
      this.#undo.push(() => this.#disk.revisions.delete(name));
    } else {
      rows.push(row);
      this.#undo.push(() => rows.pop());
    }
  }

  async setHeading(row: HeadingRow): Promise<void> {
    const name = key(row.kind, row.id);
    const before = this.#disk.headings.get(name);
    this.#disk.headings.set(name, row);
    this.#undo.push(() => {
      if (before === undefined) this.#disk.headings.delete(name);
      else this.#disk.headings.set(name, before);
    });
  }

  async addEntry(row: EntryRow): Promise<void> {
    const entries = this.#disk.entries.get(row.jobId) ?? new Map<string, EntryRow>();
    this.#disk.entries.set(row.jobId, entries);
    entries.set(row.id, row);
    this.#undo.push(() => entries.delete(row.id));
  }
}

/** Kinds and ids hold no space, so this cannot name two documents. */
function key(kind: string, id: string): string {
  return `${kind} ${id}`;
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
