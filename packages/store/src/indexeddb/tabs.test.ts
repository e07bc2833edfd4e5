import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { job } from '../acceptance/samples.ts';
import { FutureSchema, MigrationFailed, StoreBlocked, StoreClosed, type StoreEvent } from '../index.ts';
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
  test('I5: where the browser does not say, nothing is claimed', async () => {
    expect(await askToPersist()).toEqual({ persisted: null, usedBytes: null, quotaBytes: null });
  });

  test('I6: erasing while a tab has the store open is refused by name, and done once it is closed', async () => {
    const store = await openDB(name, 1);
    await expect(eraseIndexedDbStore(name)).rejects.toThrow(StoreBlocked);
    store.close();
  });
});
