import { Damaged, StoreBlocked, StoreClosed, StoreError, StoreFailed, StoreFull } from '../errors.ts';

/** The browser's own failures as the named errors of the store; a named error passes through. */
export function namedBrowserError(cause: unknown): StoreError {
  if (cause instanceof StoreError) return cause;
  switch (nameOf(cause)) {
    case 'QuotaExceededError':
      return new StoreFull(cause);
    case 'InvalidStateError':
      // The connection has been closed under us, by the browser or for a newer version.
      return new StoreClosed('The browser has closed the store.');
    case 'SecurityError':
      return new StoreBlocked(
        'The browser does not let this page keep data.',
        'Leave the private window, or allow site data for this page, and open it again.',
        { cause },
      );
    case 'UnknownError':
    case 'DataError':
      return new Damaged("The browser's database does not open or read as it was written.", { cause });
    default:
      return new StoreFailed(cause);
  }
}

function nameOf(cause: unknown): string {
  if (typeof cause !== 'object' || cause === null || !('name' in cause)) return '';
  return typeof cause.name === 'string' ? cause.name : '';
}
