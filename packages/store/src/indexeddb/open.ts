import { deleteDB, type IDBPDatabase, openDB } from 'idb';
import type { Engine } from '../engine.ts';
import { FutureSchema, MigrationFailed, StoreBlocked, StoreFailed } from '../errors.ts';
import type { Store } from '../port.ts';
import { storeOn } from '../store.ts';
import { IndexedDbEngine } from './engine.ts';
import { namedBrowserError } from './errors.ts';
import { type IndexedDbMigration, indexedDbMigrations, type Tables } from './schema.ts';

const newerTab =
  'A newer version of this program was opened in another tab, so this one has closed its store. ' +
  'What was saved is kept; copy what is not saved yet and reload this tab.';
const takenAway = 'The browser has taken the stored data away, as it does when site data is cleared.';
const olderTab = 'Another tab still has an older version of this program open.';

const closeIt = 'Close it there and try again.';

export interface IndexedDbOptions {
  /** The database's name; tabs with the same name share it. */
  readonly name: string;
  /** Milliseconds to wait for other tabs to let go of an older version, before StoreBlocked. By default 3,000. */
  readonly blockedAfter?: number;
  /** The schema's steps; only tests of migration hand in others. */
  readonly migrations?: readonly IndexedDbMigration[];
  /** Wraps the engine, for instance with faults. */
  readonly wrap?: (engine: Engine) => Engine;
}

/**
 * Opens the store in the browser's database, with strict durability.
 *
 * @throws StoreBlocked, FutureSchema, MigrationFailed, Damaged, StoreFull, StoreFailed; the data is then as it was.
 */
export async function openIndexedDbStore(options: IndexedDbOptions): Promise<Store> {
  if (typeof indexedDB === 'undefined') throw new StoreFailed(new Error('this browser keeps no databases'));
  const engine = await openEngine(options);
  return storeOn(options.wrap?.(engine) ?? engine);
}

/** Erases everything kept under this name. @throws StoreBlocked while a tab has it open. */
export async function eraseIndexedDbStore(name: string): Promise<void> {
  await new Promise<void>((done, failed) => {
    deleteDB(name, { blocked: () => failed(new StoreBlocked('Another tab has the store open.', closeIt)) }).then(
      done,
      failed,
    );
  });
}

async function openEngine(options: IndexedDbOptions): Promise<IndexedDbEngine> {
  const migrations = options.migrations ?? indexedDbMigrations;
  let engine: IndexedDbEngine | null = null;
  let closedEarly: string | null = null;
  let failure: MigrationFailed | null = null;
  function close(message: string): void {
    if (engine === null) closedEarly = message;
    else engine.closedByBrowser(message);
  }
  const opening = await withinTime(options.blockedAfter ?? 3000, (blocked) =>
    openDB<Tables>(options.name, migrations.length, {
      upgrade(database, oldVersion, _newVersion, transaction) {
        failure = upgraded(database, migrations.slice(oldVersion));
        if (failure === null) return;
        // Handled by the opening, which this makes fail: without the handler it would be reported twice.
        transaction.done.catch(() => undefined);
        transaction.abort();
      },
      blocked,
      blocking: () => close(newerTab),
      terminated: () => close(takenAway),
    }),
  ).catch((cause: unknown) => {
    throw failure ?? openingError(cause, options.name, migrations.length);
  });
  engine = new IndexedDbEngine(opening);
  if (closedEarly !== null) engine.closedByBrowser(closedEarly);
  return engine;
}

function upgraded(database: IDBPDatabase<Tables>, migrations: readonly IndexedDbMigration[]): MigrationFailed | null {
  for (const { name, upgrade } of migrations) {
    try {
      upgrade(database);
    } catch (cause) {
      return new MigrationFailed(name, cause);
    }
  }
  return null;
}

/** Tabs of this program close at once when asked; one that does not is told about after a while. */
function withinTime(
  milliseconds: number,
  open: (blocked: () => void) => Promise<IDBPDatabase<Tables>>,
): Promise<IDBPDatabase<Tables>> {
  return new Promise((done, failed) => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    let late = false;
    open(() => {
      timer = setTimeout(() => {
        late = true;
        failed(new StoreBlocked(olderTab, closeIt));
      }, milliseconds);
    }).then((database) => {
      if (timer !== null) clearTimeout(timer);
      // Opened after all, but nobody waits for it any more: held open it would block others in turn.
      if (late) database.close();
      else done(database);
    }, failed);
  });
}

function openingError(cause: unknown, name: string, known: number): Error {
  if (cause instanceof DOMException && cause.name === 'VersionError') {
    return new FutureSchema(`The store "${name}" in this browser`, 'a later one', known);
  }
  return namedBrowserError(cause);
}
