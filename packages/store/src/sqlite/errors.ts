import { Damaged, StoreBlocked, StoreError, StoreFailed, StoreFull } from '../errors.ts';

/** SQLite's own failures as the named errors of the store; a named error passes through. */
export function namedSqliteError(cause: unknown, path: string): StoreError {
  if (cause instanceof StoreError) return cause;
  const code = codeOf(cause);
  if (code.startsWith('SQLITE_FULL')) return new StoreFull(cause);
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new StoreBlocked(`Another program is writing to ${path}.`, 'Wait for it or close it, then try again.', {
      cause,
    });
  }
  if (code.startsWith('SQLITE_CORRUPT') || code.startsWith('SQLITE_NOTADB')) {
    return new Damaged(`The file ${path} is damaged or is no store of this program.`, { cause });
  }
  return new StoreFailed(cause);
}

function codeOf(cause: unknown): string {
  if (typeof cause !== 'object' || cause === null || !('code' in cause)) return '';
  return typeof cause.code === 'string' ? cause.code : '';
}
