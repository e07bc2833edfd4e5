import type { EntryRow, RevisionRow } from './engine.ts';
import type { Conflict } from './errors.ts';
import type { Draft, Entry, Json, StoredDocument } from './port.ts';
import { documentOf, entryOf } from './rows.ts';
import { sha256 } from './sha-256.ts';

/**
 * The version that lost a conflict as a document of its own, so that it can be kept with `put(asideOf(…), 0)`
 * while the person decides. The id is made from the content: keeping the same version twice keeps it once.
 */
export function asideOf(conflict: Conflict, updatedAt: string): Draft {
  const offered = conflict.offered;
  const title = 'title' in offered ? offered.title : `Log entry ${offered.id}`;
  // Offers are made of documents and entries, which are JSON by their types.
  return aside(title, updatedAt, { conflict: conflict.message, offered: offered as unknown as Json });
}

/** The backup's history of a document that went another way than the store's. */
export function asideOfHistory(rows: readonly RevisionRow[], last: RevisionRow): RevisionRow {
  const revisions: readonly StoredDocument[] = rows.map(documentOf);
  return rowOf(aside(last.title, last.updatedAt, { from: 'backup', revisions: revisions as unknown as Json }));
}

/** A backup's log entry whose id is taken by another one. */
export function asideOfEntry(row: EntryRow): RevisionRow {
  const entry: Entry = entryOf(row);
  return rowOf(aside(`Log entry ${row.id}`, row.at, { from: 'backup', entry: entry as unknown as Json }));
}

function aside(title: string, updatedAt: string, body: Json): Draft {
  return { kind: 'aside', id: sha256(JSON.stringify(body)), updatedAt, title, searchText: '', body };
}

function rowOf(draft: Draft): RevisionRow {
  return { ...draft, revision: 1, removed: false, body: JSON.stringify(draft.body) };
}
