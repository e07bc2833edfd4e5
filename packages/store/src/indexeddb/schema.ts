import type { DBSchema, IDBPDatabase } from 'idb';
import type { EntryRow, HeadingRow, RevisionRow } from '../engine.ts';

/** The rows as the browser's database holds them. */
export interface Tables extends DBSchema {
  readonly revisions: { readonly key: [string, string, number]; readonly value: RevisionRow };
  readonly headings: {
    readonly key: [string, string];
    readonly value: HeadingRecord;
    readonly indexes: { readonly 'by-time': [string, number, string, string] };
  };
  readonly entries: {
    readonly key: [string, string];
    readonly value: EntryRow;
    readonly indexes: { readonly 'by-time': [string, string, string] };
  };
}

/** A heading with its mark as a number: true and false are no keys of an index. */
export type HeadingRecord = Omit<HeadingRow, 'removed'> & { readonly removed: number };

/** One named step that brings a database up to date. Steps are only ever added at the end. */
export interface IndexedDbMigration {
  readonly name: string;
  /** Runs inside the version change; nothing but the database's own stores may be awaited, so it is not async. */
  readonly upgrade: (database: IDBPDatabase<Tables>) => void;
}

/** The schema's history. The database's version is how many of these it has been through. */
export const indexedDbMigrations: readonly IndexedDbMigration[] = [
  {
    name: '2026-11 documents, headings and log entries',
    upgrade(database) {
      database.createObjectStore('revisions', { keyPath: ['kind', 'id', 'revision'] });
      const headings = database.createObjectStore('headings', { keyPath: ['kind', 'id'] });
      headings.createIndex('by-time', ['kind', 'removed', 'updatedAt', 'id']);
      const entries = database.createObjectStore('entries', { keyPath: ['jobId', 'id'] });
      entries.createIndex('by-time', ['jobId', 'at', 'id']);
    },
  },
];
