import type { IDBPDatabase, IDBPTransaction } from 'idb';
import type { Engine, Reader, Writer } from '../engine.ts';
import { StoreError } from '../errors.ts';
import type { StoreEvent } from '../port.ts';
import { namedBrowserError } from './errors.ts';
import type { Tables } from './schema.ts';
import { IndexedDbReader, IndexedDbWriter, type TableName } from './writer.ts';

const tables: TableName[] = ['revisions', 'headings', 'entries'];

/** Rows in the browser's database, each write acknowledged once the browser says the disk has it. */
export class IndexedDbEngine implements Engine {
  readonly #database: IDBPDatabase<Tables>;
  readonly #channel: BroadcastChannel | null;
  #listener: ((event: StoreEvent) => void) | null = null;
  /** Set when the browser closed us before anybody listened. */
  #missed: StoreEvent | null = null;

  constructor(database: IDBPDatabase<Tables>) {
    this.#database = database;
    this.#channel =
      typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(`slabwright-store:${database.name}`);
    if (this.#channel !== null) {
      // Only handles of this same code on this same origin post here.
      this.#channel.onmessage = (message: MessageEvent<StoreEvent>) => this.#hand(message.data);
    }
  }

  async read<T>(work: (reader: Reader) => Promise<T>): Promise<T> {
    return this.#within('readonly', (transaction) => work(new IndexedDbReader(transaction)));
  }

  async write<T>(work: (writer: Writer) => Promise<T>): Promise<T> {
    return this.#within('readwrite', (transaction) => work(new IndexedDbWriter(transaction)));
  }

  tell(event: StoreEvent): void {
    this.#channel?.postMessage(event);
  }

  hear(listener: (event: StoreEvent) => void): void {
    this.#listener = listener;
    if (this.#missed !== null) listener(this.#missed);
    this.#missed = null;
  }

  /** The browser, or a newer version in another tab, takes the database away: running writes still end first. */
  closedByBrowser(message: string): void {
    this.#database.close();
    this.#channel?.close();
    this.#hand({ what: 'closed', message });
  }

  async close(): Promise<void> {
    this.#channel?.close();
    this.#database.close();
  }

  #hand(event: StoreEvent): void {
    if (this.#listener === null) this.#missed = event;
    else this.#listener(event);
  }

  async #within<Mode extends 'readonly' | 'readwrite', T>(
    mode: Mode,
    work: (transaction: IDBPTransaction<Tables, TableName[], Mode>) => Promise<T>,
  ): Promise<T> {
    let transaction: IDBPTransaction<Tables, TableName[], Mode>;
    try {
      // Strict: the write is acknowledged when the disk has it, not when the system has promised to write it.
      transaction = this.#database.transaction(tables, mode, { durability: 'strict' });
    } catch (cause) {
      throw namedBrowserError(cause);
    }
    const ended = transaction.done.then(
      () => null,
      (cause: unknown) => ({ cause }),
    );
    try {
      const result = await work(transaction);
      const failure = await ended;
      if (failure !== null) throw failure.cause;
      return result;
    } catch (cause) {
      await abort(transaction, ended);
      // What stopped the transaction says more than the request that was cut off by it.
      throw namedBrowserError(cause instanceof StoreError ? cause : (transaction.error ?? cause));
    }
  }
}

async function abort(transaction: { abort(): void }, ended: Promise<unknown>): Promise<void> {
  try {
    transaction.abort();
  } catch (cause) {
    // It has ended by itself already, which is what was asked for.
    if (!(cause instanceof DOMException && cause.name === 'InvalidStateError')) throw cause;
  }
  await ended;
}
