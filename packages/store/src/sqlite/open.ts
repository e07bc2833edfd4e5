import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import Database from 'libsql';
import type { Engine } from '../engine.ts';
import { Damaged, FutureSchema, MigrationFailed, StoreFailed } from '../errors.ts';
import type { Store } from '../port.ts';
import { storeOn } from '../store.ts';
import { SqliteEngine } from './engine.ts';
import { namedSqliteError } from './errors.ts';
import { type SqliteMigration, sqliteMigrations } from './migrations.ts';

/** `SLAB` in ASCII: tells this program's files from those of any other. */
const applicationId = 0x53_4c_41_42;

/** The first bytes of every SQLite 3 file. */
const fileHead = Buffer.from('SQLite format 3\0', 'latin1');

/** SQLite's number for a sync at every commit. */
const fullSync = 2;

const defaultBusyTimeout = 5000;

export interface SqliteOptions {
  /** The database file; made when it is not there. Its folder must exist. */
  readonly path: string;
  /** Milliseconds to wait while another program writes, before StoreBlocked. By default 5,000. */
  readonly busyTimeout?: number;
  /** Largest size of the file in pages of 4,096 bytes; beyond it writes end in StoreFull. By default SQLite's own. */
  readonly mostPages?: number;
  /** The schema's steps; only tests of migration hand in others. */
  readonly migrations?: readonly SqliteMigration[];
  /** Wraps the engine, for instance with faults. */
  readonly wrap?: (engine: Engine) => Engine;
}

/**
 * Opens the store in one SQLite file. An acknowledged write is on the disk: write-ahead log with a sync at each commit.
 *
 * @throws Damaged, FutureSchema, MigrationFailed, StoreBlocked, StoreFull, StoreFailed; the file is then as it was.
 */
export async function openSqliteStore(options: SqliteOptions): Promise<Store> {
  const path = resolve(options.path);
  const migrations = options.migrations ?? sqliteMigrations;
  inspect(path, migrations.length);
  const database = opened(path);
  try {
    prepareConnection(database, options);
    migrate(database, path, migrations);
  } catch (cause) {
    database.close();
    throw namedSqliteError(cause, path);
  }
  // From here on the engine does the waiting; these few milliseconds cover what it does not wait for itself.
  database.pragma('busy_timeout = 10');
  const engine = new SqliteEngine(database, path, options.busyTimeout ?? defaultBusyTimeout);
  return storeOn(options.wrap?.(engine) ?? engine);
}

function sizeOf(path: string): number {
  return existsSync(path) ? statSync(path).size : 0;
}

/** SQLite takes a file shorter than its head for an empty one and would write over it. */
function checkHead(path: string): void {
  const head = Buffer.alloc(fileHead.length);
  try {
    const file = openSync(path, 'r');
    readSync(file, head, 0, head.length, 0);
    closeSync(file);
  } catch (cause) {
    throw new StoreFailed(cause);
  }
  if (!head.equals(fileHead)) throw new Damaged(`The file ${path} is no store of this program.`);
}

/** Looks through a read-only handle first: opening for writing would already change a damaged or foreign file. */
function inspect(path: string, known: number): void {
  if (sizeOf(path) === 0) {
    if (sizeOf(`${path}-wal`) === 0) return;
    throw new Damaged(`The file ${path} is empty or gone, but its log is there.`);
  }
  checkHead(path);
  const database = opened(`${pathToFileURL(path).href}?mode=ro`);
  try {
    const version = pragmaNumber(database, 'user_version');
    const owner = pragmaNumber(database, 'application_id');
    const tables = database.prepare('select count(*) as count from sqlite_schema').get([]) as { count: number };
    // A process killed while making the file leaves it without tables and without a mark: that one is taken over.
    if (owner !== applicationId && !(owner === 0 && version === 0 && tables.count === 0)) {
      throw new Damaged(`The file ${path} is a database of another program.`);
    }
    if (version > known) throw new FutureSchema(`The file ${path}`, version, known);
    const findings = database.prepare('pragma quick_check(1)').all([]) as readonly { quick_check: string }[];
    const finding = findings[0]?.quick_check;
    if (finding !== 'ok') throw new Damaged(`The file ${path} is damaged: ${finding ?? 'the check gave no answer'}.`);
  } catch (cause) {
    throw namedSqliteError(cause, path);
  } finally {
    database.close();
  }
}

function opened(name: string): Database.Database {
  try {
    return new Database(name);
  } catch (cause) {
    throw new StoreFailed(cause);
  }
}

function prepareConnection(
  database: Database.Database,
  { busyTimeout = defaultBusyTimeout, mostPages }: SqliteOptions,
): void {
  database.pragma(`busy_timeout = ${Math.trunc(busyTimeout)}`);
  const mode = database.prepare('pragma journal_mode = wal').get([]) as { journal_mode: string };
  if (mode.journal_mode !== 'wal') throw new Error(`the write-ahead log is not to be had here (${mode.journal_mode})`);
  database.pragma('synchronous = full');
  const sync = database.prepare('pragma synchronous').get([]) as { synchronous: number };
  if (sync.synchronous !== fullSync) throw new Error(`the disk is not waited for here (${sync.synchronous})`);
  database.pragma('foreign_keys = on');
  if (mostPages !== undefined) database.pragma(`max_page_count = ${Math.trunc(mostPages)}`);
}

/** All missing steps in one transaction: a failing one leaves the file as the older version wrote it. */
function migrate(database: Database.Database, path: string, migrations: readonly SqliteMigration[]): void {
  if (pragmaNumber(database, 'user_version') === migrations.length) return;
  let current = 'start';
  try {
    database.exec('begin immediate');
    // Read again under the lock: another process may have brought the file up to date meanwhile.
    const version = pragmaNumber(database, 'user_version');
    if (version > migrations.length) throw new FutureSchema(`The file ${path}`, version, migrations.length);
    for (const { name, statements } of migrations.slice(version)) {
      current = name;
      for (const statement of statements) database.exec(statement);
    }
    database.exec(`pragma application_id = ${applicationId}`);
    database.exec(`pragma user_version = ${migrations.length}`);
    database.exec('commit');
  } catch (cause) {
    if (database.inTransaction) database.exec('rollback');
    const named = namedSqliteError(cause, path);
    throw named instanceof StoreFailed ? new MigrationFailed(current, cause) : named;
  }
}

function pragmaNumber(database: Database.Database, name: 'user_version' | 'application_id'): number {
  const row = database.prepare(`pragma ${name}`).get([]) as Readonly<Record<string, unknown>>;
  const value = row[name];
  if (typeof value !== 'number') throw new Error(`pragma ${name} gave no number`);
  return value;
}
