import type { RevisionRow } from './engine.ts';
import { Conflict, NotFound, WrittenOnce } from './errors.ts';
import { type Change, writtenOnce } from './port.ts';
import { documentOf, sameContent } from './rows.ts';
import { checkDraft, checkId, checkInstant, checkKind, checkRevision } from './valid.ts';

/** A put, removal or restoring. */
export type DocumentChange = Exclude<Change, { readonly do: 'append' }>;

/** A checked change, ready for a transaction, with the body already as JSON text. */
export type PreparedChange = { readonly change: DocumentChange; readonly key: DocumentNames; readonly body: string };

interface DocumentNames {
  readonly kind: string;
  readonly id: string;
}

/** @throws InvalidInput naming the field that cannot be stored. */
export function prepare(change: DocumentChange): PreparedChange {
  checkRevision(change.expected, 'expected', 0);
  if (change.do === 'put') {
    const body = checkDraft(change.draft);
    return { change, key: { kind: change.draft.kind, id: change.draft.id }, body };
  }
  checkKind(change.kind);
  checkId(change.id);
  checkInstant(change.updatedAt, 'updatedAt');
  return { change, key: { kind: change.kind, id: change.id }, body: '' };
}

/**
 * What a change makes of the revision now stored: a row to add, or the stored row when there is nothing to do.
 *
 * @throws Conflict when the caller has not seen the stored revision.
 * @throws NotFound when there is nothing to remove or restore.
 * @throws WrittenOnce when an issued paper was to be changed.
 */
export function settle(
  { change, key, body }: PreparedChange,
  stored: RevisionRow | null,
): { readonly row: RevisionRow; readonly isNew: boolean } {
  const offered = offeredRow(change, body, stored);
  const storedRevision = stored?.revision ?? 0;
  if (stored !== null && storedRevision === change.expected + 1 && sameContent(stored, offered)) {
    // The answer to an earlier try was lost, for instance with a killed page: it did arrive.
    return { row: stored, isNew: false };
  }
  if (storedRevision !== change.expected) {
    const document = stored === null ? null : documentOf(stored);
    const { revision: _, ...offer } = documentOf({ ...offered, revision: 0 });
    throw new Conflict(conflictMessage(key, change.expected, storedRevision), document, offer);
  }
  if (stored !== null) {
    if (change.do !== 'put' && stored.removed === offered.removed) return { row: stored, isNew: false };
    if (writtenOnce.includes(key.kind)) throw new WrittenOnce(key.kind, key.id);
  }
  return { row: { ...offered, revision: storedRevision + 1 }, isNew: true };
}

function offeredRow(change: DocumentChange, body: string, stored: RevisionRow | null): Omit<RevisionRow, 'revision'> {
  if (change.do === 'put') {
    const { kind, id, updatedAt, title, searchText } = change.draft;
    return { kind, id, updatedAt, removed: false, title, searchText, body };
  }
  if (stored === null) throw new NotFound(change.kind, change.id);
  return { ...stored, updatedAt: change.updatedAt, removed: change.do === 'remove' };
}

function conflictMessage(key: DocumentNames, expected: number, stored: number): string {
  const seen = expected === 0 ? 'as new' : `from revision ${expected}`;
  const is = stored === 0 ? 'is not in this store' : `is at revision ${stored}`;
  return (
    `The ${key.kind} "${key.id}" was changed ${seen}, but it ${is}: it was changed somewhere else meanwhile. ` +
    'Both versions are here; nothing was overwritten. Compare them and save the one to keep.'
  );
}
