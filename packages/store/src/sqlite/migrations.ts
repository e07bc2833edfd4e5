/** One named step that brings a file up to date. Steps are only ever added at the end; a published one is not changed. */
export interface SqliteMigration {
  readonly name: string;
  readonly statements: readonly string[];
}

/** The schema's history. The file's `user_version` is how many of these it has been through. */
export const sqliteMigrations: readonly SqliteMigration[] = [
  {
    name: '2026-11 documents, headings and log entries',
    statements: [
      `create table revisions (
        kind text not null, id text not null, revision integer not null, updated_at text not null,
        removed integer not null, title text not null, search_text text not null, body text not null,
        primary key (kind, id, revision)
      ) strict`,
      `create table headings (
        kind text not null, id text not null, revision integer not null, updated_at text not null,
        removed integer not null, title text not null, search text not null,
        primary key (kind, id)
      ) strict`,
      'create index headings_by_time on headings (kind, removed, updated_at, id)',
      `create table entries (
        job_id text not null, id text not null, at text not null, body text not null,
        primary key (job_id, id)
      ) strict`,
      'create index entries_by_time on entries (job_id, at, id)',
    ],
  },
];
