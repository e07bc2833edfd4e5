import { Kysely, SqliteDialect } from 'kysely';
import type Database from 'libsql';
import type { Engine, Reader, Writer } from '../engine.ts';
import { StoreBlocked, StoreFull } from '../errors.ts';
import { namedSqliteError } from './errors.ts';
import type { Tables } from './tables.ts';
import { SqliteWriter } from './writer.ts';

/** Rows in one SQLite file, through one connection: reads and writes take turns. */
export class SqliteEngine implements Engine {
  readonly #database: Database.Database;
  readonly #path: string;
  readonly #busyTimeout: number;
  readonly #queries: Kysely<Tables>;

  constructor(database: Database.Database, path: string, busyTimeout: number) {
    this.#database = database;
    this.#path = path;
    this.#busyTimeout = busyTimeout;
    this.#queries = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
  }

  read<T>(work: (reader: Reader) => Promise<T>): Promise<T> {
    return this.#within('begin', work);
  }

  write<T>(work: (writer: Writer) => Promise<T>): Promise<T> {
    // Immediate: a transaction that begins by reading could not wait for another process when it comes to write.
    return this.#within('begin immediate', work);
  }

  /** Other processes on the same file are not told: they see the change when they read next. */
  tell(): void {}

  hear(): void {}

  async close(): Promise<void> {
    if (this.#database.open) this.#bringLogHome();
    await this.#queries.destroy();
    if (this.#database.open) this.#database.close();
  }

  /**
   * The binding lets go of the file only when its statements have been collected, so the log is written into the file
   * here: a person who copies the one file after closing has everything.
   */
  #bringLogHome(): void {
    try {
      this.#database.exec('pragma wal_checkpoint(truncate)');
    } catch (cause) {
      const named = namedSqliteError(cause, this.#path);
      // On a full disk, or beside another program, it stays in the log, from where the next opening reads it.
      if (!(named instanceof StoreFull || named instanceof StoreBlocked)) throw named;
    }
  }

  async #within<T>(begin: 'begin' | 'begin immediate', work: (writer: Writer) => Promise<T>): Promise<T> {
    return this.#queries.connection().execute(async (connection) => {
      try {
        await this.#patiently(begin);
        const result = await work(new SqliteWriter(connection));
        this.#database.exec('commit');
        return result;
      } catch (cause) {
        // A full disk makes SQLite roll back by itself; asking again would be an error of its own.
        if (this.#database.inTransaction) this.#database.exec('rollback');
        throw namedSqliteError(cause, this.#path);
      }
    });
  }

  /**
   * Waits for another handle's transaction without holding up this process: SQLite's own waiting would, and the
   * transaction waited for may be one of this very process, which then could never end.
   */
  async #patiently(begin: string): Promise<void> {
    let waited = 0;
    for (;;) {
      try {
        // Not as a prepared statement: one that was refused stays open and stops every later commit.
        this.#database.exec(begin);
        return;
      } catch (cause) {
        if (!(namedSqliteError(cause, this.#path) instanceof StoreBlocked) || waited >= this.#busyTimeout) throw cause;
        const pause = Math.min(50, 1 + waited);
        await new Promise((done) => setTimeout(done, pause));
        waited += pause;
      }
    }
  }
}
