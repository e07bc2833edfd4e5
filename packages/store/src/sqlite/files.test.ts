import { createHash } from 'node:crypto';
import { copyFile, mkdtemp, open, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'libsql';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { instant, job, reading } from '../acceptance/samples.ts';
import { backupText, readBackup } from '../backup.ts';
import { Damaged, FutureSchema, MigrationFailed, StoreBlocked, StoreFailed, StoreFull } from '../errors.ts';
import { openSqliteStore } from './index.ts';
import { sqliteMigrations } from './migrations.ts';

let folder = '';
let path = '';

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slabwright-files-'));
  path = join(folder, 'store.db');
});

afterEach(() => rm(folder, { recursive: true }));

/** Every file of the store with its digest. An empty log and the log's index are no data and are left out. */
async function digests(): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const name of (await readdir(folder)).sort()) {
    if (name.endsWith('-shm')) continue;
    // A closed handle lets go of its log at any later moment: gone is then the same as empty. A log that held
    // something was digested before and would be missed in the comparison.
    const bytes = await readFile(join(folder, name)).catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT' && name.endsWith('-wal')) return Buffer.alloc(0);
      throw error;
    });
    if (bytes.length === 0) continue;
    found[name] = createHash('sha256').update(bytes).digest('hex');
  }
  return found;
}

describe('S1: durability', () => {
  test('S1: each commit waits for the disk, with a write-ahead log', async () => {
    const store = await openSqliteStore({ path });
    await store.put(job('a'), 0);
    // The log file is there and the main file need not hold the document yet.
    expect(await readdir(folder)).toContain('store.db-wal');
    const other = new Database(path);
    expect(other.prepare('select count(*) as count from headings').get([])).toMatchObject({ count: 1 });
    other.close();
    await store.close();
  });
});

describe('S2: a damaged or foreign file is refused by name and left as it is', () => {
  test.each([
    ['a text', Buffer.from('these are notes, not a database\n'.repeat(400))],
    ['zeros', Buffer.alloc(8192)],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, ...new Array<number>(5000).fill(7)])],
    ['a single letter', Buffer.from('x')],
  ])('S2: %s', async (_what, bytes) => {
    await writeFile(path, bytes);
    const before = await digests();
    await expect(openSqliteStore({ path })).rejects.toThrow(Damaged);
    expect(await digests()).toEqual(before);
  });

  test('S2: a database of another program', async () => {
    const other = new Database(path);
    other.exec('create table birds (name text)');
    other.close();
    const before = await digests();
    await expect(openSqliteStore({ path })).rejects.toThrow(/another program/);
    expect(await digests()).toEqual(before);
  });

  test.each(['overwritten in the middle', 'cut short'])('S2: a store %s', async (how) => {
    const store = await openSqliteStore({ path });
    const body = { text: 'x'.repeat(3000) };
    await store.transaction(
      Array.from(
        { length: 60 },
        (_, index) => ({ do: 'put', draft: job(`j${index}`, { body }), expected: 0 }) as const,
      ),
    );
    await store.close();
    const file = await open(path, 'r+');
    const { size } = await file.stat();
    if (how === 'cut short') await file.truncate(Math.floor(size / 2 / 4096) * 4096);
    else await file.write(Buffer.alloc(5 * 4096, 0xab), 0, 5 * 4096, 8 * 4096);
    await file.close();
    const before = await digests();
    const refusal = await openSqliteStore({ path }).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(Damaged);
    expect((refusal as Damaged).message).toContain(path);
    expect(await digests()).toEqual(before);
  });

  test('S2: an empty file whose log is still there', async () => {
    const store = await openSqliteStore({ path });
    await store.put(job('a'), 0);
    const left = join(folder, 'left.db');
    await writeFile(left, '');
    await copyFile(`${path}-wal`, `${left}-wal`);
    await store.close();
    const before = await digests();
    await expect(openSqliteStore({ path: left })).rejects.toThrow(Damaged);
    expect(await digests()).toEqual(before);
  });

  test('S1: a store left behind by a killed process is whole with its log', async () => {
    const store = await openSqliteStore({ path });
    const body = { text: 'x'.repeat(3000) };
    for (let index = 0; index < 40; index++) await store.put(job(`j${index}`, { body }), 0);
    const left = join(folder, 'left.db');
    await copyFile(path, left);
    await copyFile(`${path}-wal`, `${left}-wal`);
    await store.close();
    const whole = await openSqliteStore({ path: left });
    expect((await whole.list({ kind: 'job' })).total).toBe(40);
    await whole.close();
  });
});

describe('S3: migrations', () => {
  const next = { name: 'a note column', statements: ["alter table entries add column note text not null default ''"] };
  const failing = {
    name: 'a step that fails',
    statements: ['create table halfway (a text)', 'alter table nowhere rename to x'],
  };

  test('S3: a file of an earlier version is brought up to date and keeps everything', async () => {
    const old = await openSqliteStore({ path });
    await old.put(job('a'), 0);
    await old.append(reading('a', 'r1', 0));
    const before = await old.exportAll();
    await old.close();
    const current = await openSqliteStore({ path, migrations: [...sqliteMigrations, next] });
    expect(await current.exportAll()).toEqual(before);
    await current.close();
  });

  test('S3: a step that fails is named, and the file stays readable by the version that wrote it', async () => {
    const old = await openSqliteStore({ path });
    await old.put(job('a'), 0);
    const before = await old.exportAll();
    await old.close();
    const refusal = await openSqliteStore({ path, migrations: [...sqliteMigrations, next, failing] }).catch(
      (error: unknown) => error,
    );
    expect(refusal).toBeInstanceOf(MigrationFailed);
    expect((refusal as MigrationFailed).migration).toBe('a step that fails');
    expect((refusal as MigrationFailed).cause).toBeInstanceOf(Error);
    const again = await openSqliteStore({ path });
    expect(await again.exportAll()).toEqual(before);
    expect((await again.put(job('a', { title: 'Goes on' }), 1)).revision).toBe(2);
    await again.close();
  });

  test('S4: a file of a newer version is refused with a message and left as it is', async () => {
    const newer = await openSqliteStore({ path, migrations: [...sqliteMigrations, next] });
    await newer.put(job('a'), 0);
    await newer.close();
    const before = await digests();
    const refusal = await openSqliteStore({ path }).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(FutureSchema);
    expect((refusal as FutureSchema).message).toMatch(/newer version.*Update the program/);
    expect(await digests()).toEqual(before);
  });

  test('S5: a file whose making was cut off before the first step is taken over', async () => {
    const made = new Database(path);
    made.pragma('journal_mode = wal');
    made.close();
    const store = await openSqliteStore({ path });
    expect((await store.put(job('a'), 0)).revision).toBe(1);
    await store.close();
  });
});

describe('S6: a full disk', () => {
  test('S6: is named, loses nothing, still reads and exports, and writes again once there is room', async () => {
    const small = await openSqliteStore({ path, mostPages: 60 });
    const acknowledged: string[] = [];
    let refusal: unknown = null;
    while (refusal === null) {
      const id = `j${acknowledged.length}`;
      const body = { text: id.repeat(2000) };
      try {
        await small.transaction([
          { do: 'put', draft: job(id, { body }), expected: 0 },
          { do: 'append', entry: reading(id, 'r1', 0) },
        ]);
        acknowledged.push(id);
      } catch (error) {
        refusal = error;
      }
    }
    expect(refusal).toBeInstanceOf(StoreFull);
    expect((refusal as StoreFull).message).toMatch(/no room left.*still there.*export a backup/s);
    expect((refusal as StoreFull).cause).toMatchObject({ code: 'SQLITE_FULL' });
    expect(acknowledged.length).toBeGreaterThan(5);
    const there = (await small.list({ kind: 'job', limit: 1000 })).headings.map(({ id }) => id).sort();
    expect(there).toEqual([...acknowledged].sort());
    expect(await small.entries(`j${acknowledged.length}`)).toEqual([]);
    const backup = await small.exportAll();
    await small.close();

    const roomy = await openSqliteStore({ path });
    expect(backupText(await roomy.exportAll())).toBe(backupText(backup));
    const id = `j${acknowledged.length}`;
    expect((await roomy.put(job(id, { body: { text: id.repeat(2000) } }), 0)).revision).toBe(1);
    await roomy.close();
  });
});

describe('S7: another process on the same file', () => {
  test('S7: a write waits for it, and is blocked by name when it does not end', async () => {
    const store = await openSqliteStore({ path, busyTimeout: 60 });
    await store.put(job('a'), 0);
    const other = new Database(path);
    other.exec('begin immediate');
    await expect(store.put(job('b'), 0)).rejects.toThrow(StoreBlocked);
    expect((await store.get('job', 'a'))?.revision).toBe(1);
    const waiting = store.put(job('b'), 0);
    setTimeout(() => other.exec('commit'), 20);
    expect((await waiting).revision).toBe(1);
    other.close();
    await store.close();
  });

  test('S8: a folder that is not there is told', async () => {
    await expect(openSqliteStore({ path: join(folder, 'no', 'store.db') })).rejects.toThrow(StoreFailed);
  });

  test('S9: a body that no longer reads is told for that document; the others are read', async () => {
    const store = await openSqliteStore({ path });
    await store.put(job('a'), 0);
    await store.put(job('b', { updatedAt: instant(1) }), 0);
    const other = new Database(path);
    other.prepare("update revisions set body = '{\"area\":' where id = 'a'").run([]);
    other.close();
    await expect(store.get('job', 'a')).rejects.toThrow(Damaged);
    expect((await store.get('job', 'b'))?.title).toBe('Garage b');
    expect((await store.list({ kind: 'job' })).total).toBe(2);
    await store.close();
  });

  test('S10: the export goes through all the same, names it, and can be restored', async () => {
    const store = await openSqliteStore({ path });
    await store.put(job('a'), 0);
    await store.put(job('b'), 0);
    await store.append(reading('a', 'r1', 0));
    const other = new Database(path);
    other.prepare("update revisions set body = '{\"area\":' where id = 'a'").run([]);
    other.prepare("update entries set body = 'x'").run([]);
    other.close();
    const backup = readBackup(backupText(await store.exportAll()));
    expect(backup.unreadable).toEqual(['job/a revision 1', 'log a/r1']);
    expect(backup.documents.map(({ body }) => body)).toEqual([{ unreadable: '{"area":' }, job('b').body]);
    await store.close();
    const restored = await openSqliteStore({ path: join(folder, 'restored.db') });
    expect((await restored.importAll(backup)).revisionsAdded).toBe(2);
    expect((await restored.get('job', 'b'))?.body).toEqual(job('b').body);
    await restored.close();
  });
});
