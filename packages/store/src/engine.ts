import type { Heading, ListPlace, StoreEvent } from './port.ts';

/** One stored revision as an adapter keeps it. `body` is JSON text, so that what comes back is what was written. */
export interface RevisionRow {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly updatedAt: string;
  readonly removed: boolean;
  readonly title: string;
  readonly searchText: string;
  readonly body: string;
}

/** The latest revision of a document as lists see it, with its text in searched form. */
export interface HeadingRow {
  readonly kind: string;
  readonly id: string;
  readonly revision: number;
  readonly updatedAt: string;
  readonly removed: boolean;
  readonly title: string;
  readonly search: string;
}

/** One log entry as an adapter keeps it. */
export interface EntryRow {
  readonly jobId: string;
  readonly id: string;
  readonly at: string;
  readonly body: string;
}

/** A list query with defaults filled in and the text split into words. */
export interface ListRequest {
  readonly kind: string;
  readonly words: readonly string[];
  readonly removed: boolean;
  readonly after: ListPlace | null;
  readonly limit: number;
}

/** Reads inside one consistent view. */
export interface Reader {
  /** The revision asked for, or with null the latest. */
  revision(kind: string, id: string, revision: number | null): Promise<RevisionRow | null>;
  /** All revisions of one document, oldest first. */
  revisions(kind: string, id: string): Promise<readonly RevisionRow[]>;
  /** The same without their bodies, for histories: a job of a thousand revisions is listed without reading them. */
  history(kind: string, id: string): Promise<readonly Heading[]>;
  /** Newest first by updatedAt, then id downwards, with the number of all matches. */
  list(request: ListRequest): Promise<{ readonly headings: readonly HeadingRow[]; readonly total: number }>;
  entry(jobId: string, id: string): Promise<EntryRow | null>;
  /** Oldest first by at, then id. */
  entries(
    jobId: string,
    after: { readonly at: string; readonly id: string } | null,
    limit: number,
  ): Promise<readonly EntryRow[]>;
  /** Everything, in any order. */
  allRevisions(): Promise<readonly RevisionRow[]>;
  allEntries(): Promise<readonly EntryRow[]>;
}

/** Writes inside one transaction. Rows are only ever added; the one thing replaced is a heading. */
export interface Writer extends Reader {
  addRevision(row: RevisionRow): Promise<void>;
  setHeading(row: HeadingRow): Promise<void>;
  addEntry(row: EntryRow): Promise<void>;
}

/**
 * What an adapter supplies. The rules of SPEC.md are written once, in store.ts, over this; an adapter only keeps rows,
 * keeps a transaction whole, and turns its own failures into the named errors.
 *
 * `work` awaits nothing but the reader or writer it is given: a browser database commits a transaction as soon as it
 * is left waiting for anything else.
 */
export interface Engine {
  read<T>(work: (reader: Reader) => Promise<T>): Promise<T>;
  /** Resolves once the rows are as durable as the adapter promises; rejects with none of them kept. */
  write<T>(work: (writer: Writer) => Promise<T>): Promise<T>;
  /** Tells other handles on the same store. Adapters that cannot do nothing here and say so in SPEC.md. */
  tell(event: StoreEvent): void;
  /** Hears from other handles, and that the adapter had to close itself. */
  hear(listener: (event: StoreEvent) => void): void;
  close(): Promise<void>;
}
