import 'fake-indexeddb/auto';
import { forceCloseDatabase } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { instant, job } from '../acceptance/samples.ts';
import {
  Damaged,
  FutureSchema,
  MigrationFailed,
  StoreBlocked,
  StoreClosed,
  type StoreEvent,
  StoreFailed,
  StoreFull,
} from '../index.ts';
import { namedBrowserError } from './errors.ts';
import { askToPersist, eraseIndexedDbStore, openIndexedDbStore } from './index.ts';
import { indexedDbMigrations } from './schema.ts';

let count = 0;
let name = '';

beforeEach(() => {
  name = `tabs-${++count}`;
});

afterEach(() => eraseIndexedDbStore(name));

const next = {
  name: 'one more table',
  // The table is unknown to the types of this version, as a later one's would be.
  upgrade: (database: { createObjectStore(table: never): unknown }) => database.createObjectStore('later' as never),
};
const failing = {
  name: 'a step that fails',
  upgrade: () => {
    throw new Error('this step cannot be done');
  },
};

describe('I1: two versions at once', () => {
  test('I1: the old tab closes and is told, the new one opens, and nothing is lost', async () => {
    const old = await openIndexedDbStore({ name });
    await old.put(job('a'), 0);
    const told: StoreEvent[] = [];
    old.watch((event) => told.push(event));
    const current = await openIndexedDbStore({ name, migrations: [...indexedDbMigrations, next] });
    expect((await current.get('job', 'a'))?.title).toBe('Garage a');
    expect(told).toEqual([{ what: 'closed', message: expect.stringMatching(/newer version.*saved is kept.*reload/s) }]);
    await expect(old.put(job('b'), 0)).rejects.toThrow(StoreClosed);
    await expect(old.put(job('b'), 0)).rejects.toThrow(/newer version/);
    await current.close();
    await old.close();
  });

  test('I2: a tab that does not let go is told about, and the late opening is not left open', async () => {
    const stubborn = await openDB(name, 1, {
      upgrade(database) {
        database.createObjectStore('revisions');
      },
    });
    await expect(
      openIndexedDbStore({ name, migrations: [...indexedDbMigrations, next], blockedAfter: 30 }),
    ).rejects.toThrow(StoreBlocked);
    stubborn.close();
    await new Promise((done) => setTimeout(done, 50));
  });

  test('I3: data of a newer version is refused with a message and stays', async () => {
    const migrations = [...indexedDbMigrations, next];
    const newer = await openIndexedDbStore({ name, migrations });
    await newer.put(job('a'), 0);
    await newer.close();
    await expect(openIndexedDbStore({ name })).rejects.toThrow(FutureSchema);
    await expect(openIndexedDbStore({ name })).rejects.toThrow(/Update the program/);
    const again = await openIndexedDbStore({ name, migrations });
    expect((await again.get('job', 'a'))?.revision).toBe(1);
    await again.close();
  });

  test('I4: a step that fails is named, and the data stays readable by the version that wrote it', async () => {
    const old = await openIndexedDbStore({ name });
    await old.put(job('a'), 0);
    await old.close();
    const refusal = await openIndexedDbStore({ name, migrations: [...indexedDbMigrations, next, failing] }).catch(
      (error: unknown) => error,
    );
    expect(refusal).toBeInstanceOf(MigrationFailed);
    expect((refusal as MigrationFailed).migration).toBe('a step that fails');
    const again = await openIndexedDbStore({ name });
    expect((await again.get('job', 'a'))?.title).toBe('Garage a');
    await again.close();
  });
});

describe('I5: room on the device', () => {
  afterEach(() => vi.unstubAllGlobals());

  test('I5: where the browser does not say, nothing is claimed', async () => {
    vi.stubGlobal('navigator', {});
    expect(await askToPersist()).toEqual({ persisted: null, usedBytes: null, quotaBytes: null });
  });

  test.each([true, false])('I5: the browser is asked, and its answer %s is passed on', async (answer) => {
    const estimate = async () => ({ usage: 4096, quota: 1_000_000 });
    vi.stubGlobal('navigator', { storage: { persisted: async () => false, persist: async () => answer, estimate } });
    expect(await askToPersist()).toEqual({ persisted: answer, usedBytes: 4096, quotaBytes: 1_000_000 });
  });

  test('I6: erasing while a tab has the store open is refused by name', async () => {
    const store = await openDB(name, 1);
    await expect(eraseIndexedDbStore(name)).rejects.toThrow(StoreBlocked);
    store.close();
  });

  test('I7: no room left is named, loses nothing, and the store still reads and exports', async () => {
    const store = await openIndexedDbStore({ name });
    await store.put(job('a'), 0);
    const before = await store.exportAll();
    const add = vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
      throw new DOMException('no room', 'QuotaExceededError');
    });
    const refusal = await store
      .transaction([
        { do: 'remove', kind: 'job', id: 'a', expected: 1, updatedAt: instant(1) },
        { do: 'put', draft: job('b'), expected: 0 },
      ])
      .catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(StoreFull);
    expect((refusal as StoreFull).cause).toMatchObject({ name: 'QuotaExceededError' });
    expect(await store.exportAll()).toEqual(before);
    add.mockRestore();
    expect((await store.put(job('b'), 0)).revision).toBe(1);
    await store.close();
  });

  test('I8: a store the browser has taken away tells its watchers and refuses by name', async () => {
    const raw: IDBDatabase[] = [];
    const transaction = IDBDatabase.prototype.transaction;
    const spy = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (
      this: IDBDatabase,
      ...values
    ) {
      raw.push(this);
      return transaction.apply(this, values);
    });
    const store = await openIndexedDbStore({ name });
    const told: StoreEvent[] = [];
    store.watch((event) => told.push(event));
    await store.put(job('a'), 0);
    spy.mockRestore();
    // Its published type asks for the class where it takes an object of it.
    forceCloseDatabase(raw[0] as never);
    await new Promise((done) => setTimeout(done, 5));
    expect(told.at(-1)).toEqual({ what: 'closed', message: expect.stringContaining('taken the stored data away') });
    await expect(store.get('job', 'a')).rejects.toThrow(StoreClosed);
    await store.close();
  });

  test.each([
    ['SecurityError', StoreBlocked],
    ['UnknownError', Damaged],
    ['InvalidStateError', StoreClosed],
    ['ConstraintError', StoreFailed],
  ])('I7: the browser failing with %s is told by name', (failure, kind) => {
    const cause = new DOMException('as the browser says it', failure);
    expect(namedBrowserError(cause)).toBeInstanceOf(kind);
  });
});
