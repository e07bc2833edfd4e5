import type { Backup, ImportReport } from './backup.ts';

/** Plain JSON: what a document body or a log entry may hold. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/** What a document is. Any lower-case word with dashes is stored; these are the ones the app uses. */
export const documentKinds = ['job', 'catalogue', 'price-book', 'weather', 'paper', 'settings', 'aside'] as const;

/** Kinds written once: an issued paper is never changed, only superseded; an aside is a losing version kept as it was. */
export const writtenOnce: readonly string[] = ['paper', 'aside'];

/** Names one document. */
export interface DocumentKey {
  readonly kind: string;
  /** 1 to 200 visible ASCII characters; made by the caller, never typed by a person. */
  readonly id: string;
}

/** A document as the caller hands it over. The store has no clock: `updatedAt` comes with it. */
export interface Draft extends DocumentKey {
  /** UTC instant as `YYYY-MM-DDTHH:mm:ss.sssZ`, so that text order is time order. */
  readonly updatedAt: string;
  readonly title: string;
  /** Further words the document is found by: customer, street, product. */
  readonly searchText: string;
  readonly body: Json;
}

/** A document as it is stored: one of its numbered revisions, counted from 1 without gaps. */
export interface StoredDocument extends Draft {
  readonly revision: number;
  /** True on a tombstone; the body of the revision before it is kept, so that removal can be undone. */
  readonly removed: boolean;
}

/** A document without its body, for lists and histories. */
export type Heading = Omit<StoredDocument, 'searchText' | 'body'>;

/** One reading or event of a job. Entries are added, never changed and never removed. */
export interface Entry {
  readonly jobId: string;
  readonly id: string;
  /** UTC instant of the reading, written like `updatedAt`. */
  readonly at: string;
  readonly body: Json;
}

/** The place in a list after which the next page starts. */
export interface ListPlace {
  readonly updatedAt: string;
  readonly id: string;
}

/** What to list: newest first, by `updatedAt`, then by id downwards. */
export interface ListQuery {
  readonly kind: string;
  /** Words, each of which must occur somewhere in the title or search text; case and accents do not count. */
  readonly text?: string;
  /** True lists the tombstones instead of the living. */
  readonly removed?: boolean;
  readonly after?: ListPlace;
  /** Headings on one page: 1 to 1,000, by default 50. */
  readonly limit?: number;
}

/** One page of a list. */
export interface ListPage {
  readonly headings: readonly Heading[];
  /** How many match in all, on every page together. */
  readonly total: number;
  /** Where the next page starts, or null when this is the last. */
  readonly next: ListPlace | null;
}

/** Which entries of a job to read: oldest first, by `at`, then by id. */
export interface EntryQuery {
  readonly after?: { readonly at: string; readonly id: string };
  /** 1 to 100,000, by default 10,000. */
  readonly limit?: number;
}

/** One change. `expected` is the revision the caller has seen; 0 means "there is none yet". */
export type Change =
  | { readonly do: 'put'; readonly draft: Draft; readonly expected: number }
  | (DocumentKey & { readonly do: 'remove' | 'restore'; readonly expected: number; readonly updatedAt: string })
  | { readonly do: 'append'; readonly entry: Entry };

/** What became of one change. */
export type Outcome =
  | { readonly did: 'put' | 'remove' | 'restore'; readonly document: StoredDocument }
  | { readonly did: 'append'; readonly entry: Entry; readonly added: boolean };

/** What watchers are told. */
export type StoreEvent =
  | {
      readonly what: 'changed';
      readonly documents: readonly (DocumentKey & { readonly revision: number })[];
      readonly entries: readonly { readonly jobId: string; readonly id: string }[];
      /** True when another tab or another handle on the same store wrote it. */
      readonly elsewhere: boolean;
    }
  | {
      /** The store has closed itself; `message` is for the person at the screen. */
      readonly what: 'closed';
      readonly message: string;
    };

/** Stops a watch. */
export type StopWatching = () => void;

/**
 * What is kept on the device: documents by kind and id with every earlier revision, and append-only log entries.
 * The rules are numbered in SPEC.md. A promise that resolves is an acknowledged write. Every failure is one of the
 * named errors of errors.ts.
 */
export interface Store {
  /** Writes the next revision. @throws Conflict when `expected` is not the stored revision. */
  put(draft: Draft, expected: number): Promise<StoredDocument>;
  /** The latest revision, or the one asked for; null when there is none. A removed document comes back with `removed: true`. */
  get(kind: string, id: string, revision?: number): Promise<StoredDocument | null>;
  /** Headings of every revision, oldest first. */
  history(kind: string, id: string): Promise<readonly Heading[]>;
  list(query: ListQuery): Promise<ListPage>;
  /** Writes a tombstone, which `restore` undoes. */
  remove(kind: string, id: string, expected: number, updatedAt: string): Promise<StoredDocument>;
  restore(kind: string, id: string, expected: number, updatedAt: string): Promise<StoredDocument>;
  /** Adds one reading or event; the same entry again is answered with `added: false`. */
  append(entry: Entry): Promise<{ readonly entry: Entry; readonly added: boolean }>;
  entries(jobId: string, query?: EntryQuery): Promise<readonly Entry[]>;
  /** All of the changes, in their order, or none of them. */
  transaction(changes: readonly Change[]): Promise<readonly Outcome[]>;
  exportAll(): Promise<Backup>;
  importAll(backup: Backup): Promise<ImportReport>;
  watch(listener: (event: StoreEvent) => void): StopWatching;
  /** Waits for running writes, then lets go of the file or database. Calling it again does nothing. */
  close(): Promise<void>;
}
