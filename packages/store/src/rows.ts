import type { EntryRow, HeadingRow, RevisionRow } from './engine.ts';
import { Damaged } from './errors.ts';
import type { Entry, Heading, Json, StoredDocument } from './port.ts';
import { searchForm } from './search.ts';

/** @throws Damaged when the stored body is not JSON any more. */
export function documentOf(row: RevisionRow): StoredDocument {
  return {
    kind: row.kind,
    id: row.id,
    revision: row.revision,
    updatedAt: row.updatedAt,
    removed: row.removed,
    title: row.title,
    searchText: row.searchText,
    body: parsed(row.body, `The ${row.kind} "${row.id}"`),
  };
}

export function rowOfDocument(document: StoredDocument): RevisionRow {
  return {
    kind: document.kind,
    id: document.id,
    revision: document.revision,
    updatedAt: document.updatedAt,
    removed: document.removed,
    title: document.title,
    searchText: document.searchText,
    body: JSON.stringify(document.body),
  };
}

export function headingOf(row: RevisionRow | HeadingRow): Heading {
  return {
    kind: row.kind,
    id: row.id,
    revision: row.revision,
    updatedAt: row.updatedAt,
    removed: row.removed,
    title: row.title,
  };
}

export function headingRowOf(row: RevisionRow): HeadingRow {
  return { ...headingOf(row), search: searchForm(`${row.title} ${row.searchText}`) };
}

/** @throws Damaged when the stored body is not JSON any more. */
export function entryOf(row: EntryRow): Entry {
  const body = parsed(row.body, `The log entry "${row.id}" of job "${row.jobId}"`);
  return { jobId: row.jobId, id: row.id, at: row.at, body };
}

export function rowOfEntry(entry: Entry): EntryRow {
  return { jobId: entry.jobId, id: entry.id, at: entry.at, body: JSON.stringify(entry.body) };
}

/** Whether two revisions say the same, whatever their numbers. */
export function sameContent(a: Omit<RevisionRow, 'revision'>, b: Omit<RevisionRow, 'revision'>): boolean {
  return (
    a.updatedAt === b.updatedAt &&
    a.removed === b.removed &&
    a.title === b.title &&
    a.searchText === b.searchText &&
    a.body === b.body
  );
}

function parsed(text: string, what: string): Json {
  try {
    return JSON.parse(text) as Json;
  } catch (cause) {
    throw new Damaged(`${what} does not read back as it was written.`, { cause });
  }
}
