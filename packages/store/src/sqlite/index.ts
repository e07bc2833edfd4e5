export { openSqliteStore, type SqliteOptions } from './open.ts';
