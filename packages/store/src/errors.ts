import type { Entry, StoredDocument } from './port.ts';

/** Any failure of a store. `message` says what happened, that nothing is lost, and a way out. */
export class StoreError extends Error {
  override readonly name: string = 'StoreError';
}

/** No room is left: nothing of the change was written, everything acknowledged before is still there. */
export class StoreFull extends StoreError {
  override readonly name = 'StoreFull';
  constructor(cause: unknown) {
    super(
      'There is no room left on this device, so the last change was not kept; everything kept before is still there. ' +
        'Leave this screen open, export a backup to another place, free some room and try again.',
      { cause },
    );
  }
}

/** The store cannot be reached: another tab or program holds it, or the browser forbids it. */
export class StoreBlocked extends StoreError {
  override readonly name = 'StoreBlocked';
  constructor(reason: string, wayOut: string, options?: ErrorOptions) {
    super(`${reason} ${wayOut} Nothing kept before is lost.`, options);
  }
}

/** The revision seen is no longer the latest, or an entry id is taken. Both versions are here; neither was dropped. */
export class Conflict extends StoreError {
  override readonly name = 'Conflict';
  readonly stored: StoredDocument | Entry | null;
  readonly offered: ConflictOffer;
  constructor(message: string, stored: StoredDocument | Entry | null, offered: ConflictOffer) {
    super(message);
    this.stored = stored;
    this.offered = offered;
  }
}

/** The change that was not made. */
export type ConflictOffer = Omit<StoredDocument, 'revision'> | Entry;

/** What is stored, or a backup, does not read as it was written. Nothing was changed. */
export class Damaged extends StoreError {
  override readonly name = 'Damaged';
  constructor(what: string, options?: ErrorOptions) {
    super(`${what} Nothing was changed. Keep the file as it is and restore the last backup into a new store.`, options);
  }
}

/** Written by a newer version of this program. */
export class FutureSchema extends StoreError {
  override readonly name = 'FutureSchema';
  readonly found: string | number;
  readonly known: string | number;
  constructor(what: string, found: string | number, known: string | number) {
    super(
      `${what} was written by a newer version of this program (${found}; this version reads up to ${known}). ` +
        'Nothing was changed. Update the program and open it again.',
    );
    this.found = found;
    this.known = known;
  }
}

/** Bringing an older store up to date failed; it is left as it was, readable by the version that wrote it. */
export class MigrationFailed extends StoreError {
  override readonly name = 'MigrationFailed';
  readonly migration: string;
  constructor(migration: string, cause: unknown) {
    super(
      `The step "${migration}" that brings the stored data up to date failed. The data is left as it was: ` +
        'the version of the program that wrote it still opens it. Export a backup there before trying again.',
      { cause },
    );
    this.migration = migration;
  }
}

/** A value the store does not take, with the range it does. */
export class InvalidInput extends StoreError {
  override readonly name = 'InvalidInput';
  readonly field: string;
  readonly value: unknown;
  constructor(field: string, value: unknown, allowed: string) {
    super(`${field} is ${shown(value)}; allowed is ${allowed}. Nothing was written.`);
    this.field = field;
    this.value = value;
  }
}

/** Removal, restoring or a revision of a document that is not there. */
export class NotFound extends StoreError {
  override readonly name = 'NotFound';
  constructor(kind: string, id: string) {
    super(`There is no ${kind} "${id}" in this store. Look in the list, also among the removed ones.`);
  }
}

/** An issued paper was to be changed. */
export class WrittenOnce extends StoreError {
  override readonly name = 'WrittenOnce';
  constructor(kind: string, id: string) {
    super(`The ${kind} "${id}" is written once and never changed. Put a new one under a new id that supersedes it.`);
  }
}

/** The store has been closed. */
export class StoreClosed extends StoreError {
  override readonly name = 'StoreClosed';
  constructor(reason = 'This store is closed.') {
    super(`${reason} Open it again to read or write.`);
  }
}

/** The disk or database failed in a way with no better name. */
export class StoreFailed extends StoreError {
  override readonly name = 'StoreFailed';
  constructor(cause: unknown) {
    const detail = cause instanceof Error ? cause.message : String(cause);
    super(`The store could not do this: ${detail}. The change was not kept; what was kept before is not touched.`, {
      cause,
    });
  }
}

function shown(value: unknown): string {
  if (typeof value === 'string') {
    return value.length > 60 ? `a text of ${value.length} characters` : JSON.stringify(value);
  }
  if (value === undefined) return 'missing';
  return typeof value === 'object' && value !== null ? 'an object of another shape' : String(value);
}
