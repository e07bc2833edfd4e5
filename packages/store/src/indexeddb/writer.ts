import type { IDBPTransaction } from 'idb';
import type { EntryRow, HeadingRow, ListRequest, Reader, RevisionRow, Writer } from '../engine.ts';
import type { Heading } from '../port.ts';
import { headingOf } from '../rows.ts';
import type { HeadingRecord, Tables } from './schema.ts';

export type TableName = 'revisions' | 'headings' | 'entries';

/** Reads inside one browser transaction. Awaits only requests of that transaction, or the browser would commit it. */
export class IndexedDbReader<Mode extends IDBTransactionMode> implements Reader {
  protected readonly transaction: IDBPTransaction<Tables, TableName[], Mode>;

  constructor(transaction: IDBPTransaction<Tables, TableName[], Mode>) {
    this.transaction = transaction;
  }

  async revision(kind: string, id: string, revision: number | null): Promise<RevisionRow | null> {
    const store = this.transaction.objectStore('revisions');
    if (revision !== null) return (await store.get([kind, id, revision])) ?? null;
    const cursor = await store.openCursor(revisionsOf(kind, id), 'prev');
    return cursor === null ? null : cursor.value;
  }

  async revisions(kind: string, id: string): Promise<readonly RevisionRow[]> {
    return this.transaction.objectStore('revisions').getAll(revisionsOf(kind, id));
  }

  async history(kind: string, id: string): Promise<readonly Heading[]> {
    // Through a cursor: all bodies at once could be more than a phone has room for.
    const headings: Heading[] = [];
    let cursor = await this.transaction.objectStore('revisions').openCursor(revisionsOf(kind, id));
    while (cursor !== null) {
      headings.push(headingOf(cursor.value));
      cursor = await cursor.continue();
    }
    return headings;
  }

  async list(request: ListRequest): Promise<{ headings: readonly HeadingRow[]; total: number }> {
    const { kind, removed, words, after, limit } = request;
    const index = this.transaction.objectStore('headings').index('by-time');
    // A list sorts after every text, so the last bound takes in all that begin alike.
    const all = IDBKeyRange.bound([kind, removed ? 1 : 0], [kind, removed ? 1 : 0, []]);
    if (words.length > 0) {
      const found = (await index.getAll(all)).filter((row) => words.every((word) => row.search.includes(word)));
      const rest = found.reverse().filter((row) => after === null || isBefore(row, after));
      return { headings: rest.slice(0, limit).map(headingRow), total: found.length };
    }
    const total = await index.count(all);
    const from =
      after === null
        ? all
        : IDBKeyRange.bound([kind, removed ? 1 : 0], [kind, removed ? 1 : 0, after.updatedAt, after.id], false, true);
    const headings: HeadingRow[] = [];
    let cursor = await index.openCursor(from, 'prev');
    while (cursor !== null && headings.length < limit) {
      headings.push(headingRow(cursor.value));
      cursor = await cursor.continue();
    }
    return { headings, total };
  }

  async entry(jobId: string, id: string): Promise<EntryRow | null> {
    return (await this.transaction.objectStore('entries').get([jobId, id])) ?? null;
  }

  async entries(
    jobId: string,
    after: { readonly at: string; readonly id: string } | null,
    limit: number,
  ): Promise<readonly EntryRow[]> {
    const from = after === null ? [jobId] : [jobId, after.at, after.id];
    const range = IDBKeyRange.bound(from, [jobId, []], after !== null);
    return this.transaction.objectStore('entries').index('by-time').getAll(range, limit);
  }

  async allRevisions(): Promise<readonly RevisionRow[]> {
    return this.transaction.objectStore('revisions').getAll();
  }

  async allEntries(): Promise<readonly EntryRow[]> {
    return this.transaction.objectStore('entries').getAll();
  }
}

/** Reads and writes inside one browser transaction. */
export class IndexedDbWriter extends IndexedDbReader<'readwrite'> implements Writer {
  async addRevision(row: RevisionRow): Promise<void> {
    await this.transaction.objectStore('revisions').add(row);
  }

  async setHeading(row: HeadingRow): Promise<void> {
    await this.transaction.objectStore('headings').put({ ...row, removed: row.removed ? 1 : 0 });
  }

  async addEntry(row: EntryRow): Promise<void> {
    await this.transaction.objectStore('entries').add(row);
  }
}

function revisionsOf(kind: string, id: string): IDBKeyRange {
  return IDBKeyRange.bound([kind, id, 0], [kind, id, Number.POSITIVE_INFINITY]);
}

function headingRow(record: HeadingRecord): HeadingRow {
  return { ...record, removed: record.removed === 1 };
}

function isBefore(row: HeadingRecord, place: { readonly updatedAt: string; readonly id: string }): boolean {
  return row.updatedAt < place.updatedAt || (row.updatedAt === place.updatedAt && row.id < place.id);
}
