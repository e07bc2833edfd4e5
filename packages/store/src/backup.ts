import type { EntryRow, RevisionRow } from './engine.ts';
import { Damaged, FutureSchema } from './errors.ts';
import type { Entry, Json, StoredDocument } from './port.ts';
import { documentOf, entryOf } from './rows.ts';
import { sha256 } from './sha-256.ts';
import { checkId, checkInstant, checkKind, checkRevision } from './valid.ts';

/** Name and version of the backup's shape. */
export const backupSchema = 'slabwright.backup/1';

/** Everything in a store as one object: every revision of every document, and every log entry, in a fixed order. */
export interface Backup {
  readonly schema: typeof backupSchema;
  /** `sha-256:` and the digest of the JSON text of `{ documents, entries, unreadable }`. */
  readonly checksum: string;
  readonly documents: readonly StoredDocument[];
  readonly entries: readonly Entry[];
  /** Names of what no longer read when the backup was made; the body is then `{ unreadable: <the stored text> }`. */
  readonly unreadable: readonly string[];
}

/** What an import did. Nothing already in the store was changed or removed. */
export interface ImportReport {
  readonly revisionsAdded: number;
  readonly revisionsAlreadyHere: number;
  readonly entriesAdded: number;
  readonly entriesAlreadyHere: number;
  /** Where store and backup disagree: the store's version stays, the backup's is kept as the `aside` named here. */
  readonly diverged: readonly { readonly of: string; readonly aside: string }[];
}

/**
 * The backup of these rows; the same rows give the same bytes, whatever order they come in. It is made even when a
 * body no longer reads: one damaged job must not keep all the others from being saved.
 */
export function backupOf(revisions: readonly RevisionRow[], entries: readonly EntryRow[]): Backup {
  const unreadable: string[] = [];
  function readable<Row extends { readonly body: string }>(row: Row, name: string): Row {
    if (isJson(row.body)) return row;
    unreadable.push(name);
    return { ...row, body: JSON.stringify({ unreadable: row.body }) };
  }
  const documents = revisions
    .map((row) => documentOf(readable(row, `${row.kind}/${row.id} revision ${row.revision}`)))
    .sort((a, b) => order(a.kind, b.kind) || order(a.id, b.id) || a.revision - b.revision);
  const log = entries
    .map((row) => entryOf(readable(row, `log ${row.jobId}/${row.id}`)))
    .sort((a, b) => order(a.jobId, b.jobId) || order(a.at, b.at) || order(a.id, b.id));
  return backupWith(documents, log, unreadable.sort(order));
}

/** The backup file's text: UTF-8 JSON on one line. */
export function backupText(backup: Backup): string {
  return `${JSON.stringify(backup)}\n`;
}

/**
 * Reads a backup file's text.
 *
 * @throws Damaged when it is not whole.
 * @throws FutureSchema when a newer version of the program wrote it.
 */
export function readBackup(text: string): Backup {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (cause) {
    throw new Damaged('The backup is not whole: it does not read as JSON.', { cause });
  }
  return checkBackup(value);
}

/**
 * Checks schema, shape and checksum.
 *
 * @throws Damaged, FutureSchema as readBackup.
 */
export function checkBackup(value: unknown): Backup {
  const { schema, checksum, documents, entries, unreadable } = fieldsOf(value, 'The backup');
  checkSchema(schema);
  if (!Array.isArray(documents) || !Array.isArray(entries) || !Array.isArray(unreadable)) {
    throw new Damaged('The backup lacks its list of documents, of log entries or of what no longer read.');
  }
  let backup: Backup;
  try {
    backup = backupWith(documents.map(readDocument), entries.map(readEntry), unreadable.map(String));
  } catch (cause) {
    if (cause instanceof Damaged) throw cause;
    throw new Damaged('The backup holds a document or log entry of a shape no version wrote.', { cause });
  }
  if (backup.checksum !== checksum) {
    throw new Damaged(`The backup is not as it was written: its checksum is ${backup.checksum}, not ${checksum}.`);
  }
  checkRevisionsComplete(backup.documents);
  return backup;
}

function checkSchema(schema: unknown): void {
  if (schema === backupSchema) return;
  const version = typeof schema === 'string' ? /^slabwright\.backup\/(\d+)$/.exec(schema)?.[1] : undefined;
  if (version !== undefined && Number(version) > 1) throw new FutureSchema('The backup', String(schema), backupSchema);
  throw new Damaged(`This is not a backup of this program: its schema is ${JSON.stringify(schema)}.`);
}

function checkRevisionsComplete(documents: readonly StoredDocument[]): void {
  const latest = new Map<string, number>();
  for (const document of documents) {
    const key = `${document.kind} ${document.id}`;
    if (document.revision !== (latest.get(key) ?? 0) + 1) {
      throw new Damaged(`The backup lacks a revision of the ${document.kind} "${document.id}".`);
    }
    latest.set(key, document.revision);
  }
}

function readDocument(value: unknown): StoredDocument {
  const { kind, id, revision, updatedAt, removed, title, searchText, body } = fieldsOf(value, 'A document');
  checkKind(kind);
  checkId(id);
  checkRevision(revision, 'revision', 1);
  checkInstant(updatedAt, 'updatedAt');
  if (typeof removed !== 'boolean' || typeof title !== 'string' || typeof searchText !== 'string') {
    throw new Damaged('A document in the backup lacks its title, its search text or its removed mark.');
  }
  // The checks above are what makes these types true.
  const names = {
    kind: kind as string,
    id: id as string,
    revision: revision as number,
    updatedAt: updatedAt as string,
  };
  return { ...names, removed, title, searchText, body: present(body) };
}

function readEntry(value: unknown): Entry {
  const { jobId, id, at, body } = fieldsOf(value, 'A log entry');
  checkId(jobId, 'jobId');
  checkId(id);
  checkInstant(at, 'at');
  return { jobId: jobId as string, id: id as string, at: at as string, body: present(body) };
}

function present(body: unknown): Json {
  if (body === undefined) throw new Damaged('A document or log entry in the backup lacks its body.');
  return body as Json;
}

function fieldsOf(value: unknown, what: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Damaged(`${what} is not an object.`);
  return value as Record<string, unknown>;
}

function backupWith(
  documents: readonly StoredDocument[],
  entries: readonly Entry[],
  unreadable: readonly string[],
): Backup {
  const checksum = `sha-256:${sha256(JSON.stringify({ documents, entries, unreadable }))}`;
  return { schema: backupSchema, checksum, documents, entries, unreadable };
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
