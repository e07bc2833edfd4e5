import type { EntryRow, HeadingRow, RevisionRow } from '../engine.ts';
import type { Heading } from '../port.ts';

/**
 * The rows as SQLite holds them. Typed texts are held as JSON texts: a zero character would otherwise end a text when
 * it is read back, and the rest would be gone without a word.
 */
export interface Tables {
  readonly revisions: RevisionRecord;
  readonly headings: HeadingRecord;
  readonly entries: EntryRecord;
}

export interface RevisionRecord {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly updated_at: string;
  readonly removed: number;
  readonly title: string;
  readonly search_text: string;
  readonly body: string;
}

export interface HeadingRecord {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly updated_at: string;
  readonly removed: number;
  readonly title: string;
  /** In searched form, which holds no control characters. */
  readonly search: string;
}

export interface EntryRecord {
  readonly job_id: string;
  readonly id: string;
  readonly at: string;
  readonly body: string;
}

export function revisionRecord(row: RevisionRow): RevisionRecord {
  return {
    kind: row.kind,
    id: row.id,
    revision: row.revision,
    updated_at: row.updatedAt,
    removed: row.removed ? 1 : 0,
    title: JSON.stringify(row.title),
    search_text: JSON.stringify(row.searchText),
    body: row.body,
  };
}

export function revisionRow(record: RevisionRecord): RevisionRow {
  return {
    kind: record.kind,
    id: record.id,
    revision: record.revision,
    updatedAt: record.updated_at,
    removed: record.removed === 1,
    title: JSON.parse(record.title) as string,
    searchText: JSON.parse(record.search_text) as string,
    body: record.body,
  };
}

export function headingRecord(row: HeadingRow): HeadingRecord {
  return {
    kind: row.kind,
    id: row.id,
    revision: row.revision,
    updated_at: row.updatedAt,
    removed: row.removed ? 1 : 0,
    title: JSON.stringify(row.title),
    search: row.search,
  };
}

export function headingRow(record: HeadingRecord): HeadingRow {
  return { ...heading(record), search: record.search };
}

/** The columns headings and revisions have in common. */
export function heading(record: Omit<HeadingRecord, 'search'>): Heading {
  return {
    kind: record.kind,
    id: record.id,
    revision: record.revision,
    updatedAt: record.updated_at,
    removed: record.removed === 1,
    title: JSON.parse(record.title) as string,
  };
}

export function entryRecord(row: EntryRow): EntryRecord {
  return { job_id: row.jobId, id: row.id, at: row.at, body: row.body };
}

export function entryRow(record: EntryRecord): EntryRow {
  return { jobId: record.job_id, id: record.id, at: record.at, body: record.body };
}
