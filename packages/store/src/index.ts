export { asideOf } from './aside.ts';
export { type Backup, backupSchema, backupText, checkBackup, type ImportReport, readBackup } from './backup.ts';
export type { Engine } from './engine.ts';
export {
  Conflict,
  type ConflictOffer,
  Damaged,
  FutureSchema,
  InvalidInput,
  MigrationFailed,
  NotFound,
  StoreBlocked,
  StoreClosed,
  StoreError,
  StoreFailed,
  StoreFull,
  WrittenOnce,
} from './errors.ts';
export {
  type Change,
  type DocumentKey,
  type Draft,
  documentKinds,
  type Entry,
  type EntryQuery,
  type Heading,
  type Json,
  type ListPage,
  type ListPlace,
  type ListQuery,
  type Outcome,
  type StopWatching,
  type Store,
  type StoredDocument,
  type StoreEvent,
  writtenOnce,
} from './port.ts';
export { searchForm } from './search.ts';
export { limits } from './valid.ts';
