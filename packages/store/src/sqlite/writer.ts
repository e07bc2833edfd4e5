import { type Kysely, type SelectQueryBuilder, sql } from 'kysely';
import type { EntryRow, HeadingRow, ListRequest, RevisionRow, Writer } from '../engine.ts';
import type { Heading } from '../port.ts';
import {
  entryRecord,
  entryRow,
  heading,
  headingRecord,
  headingRow,
  revisionRecord,
  revisionRow,
  type Tables,
} from './tables.ts';

/** The queries, all with bound parameters, on a connection that is inside a transaction. */
export class SqliteWriter implements Writer {
  readonly #queries: Kysely<Tables>;

  constructor(queries: Kysely<Tables>) {
    this.#queries = queries;
  }

  async revision(kind: string, id: string, revision: number | null): Promise<RevisionRow | null> {
    let query = this.#queries.selectFrom('revisions').selectAll().where('kind', '=', kind).where('id', '=', id);
    if (revision !== null) query = query.where('revision', '=', revision);
    const record = await query.orderBy('revision', 'desc').limit(1).executeTakeFirst();
    return record === undefined ? null : revisionRow(record);
  }

  async revisions(kind: string, id: string): Promise<readonly RevisionRow[]> {
    const query = this.#queries.selectFrom('revisions').selectAll().where('kind', '=', kind).where('id', '=', id);
    return (await query.orderBy('revision').execute()).map(revisionRow);
  }

  async history(kind: string, id: string): Promise<readonly Heading[]> {
    const query = this.#queries
      .selectFrom('revisions')
      .select(['kind', 'id', 'revision', 'updated_at', 'removed', 'title'])
      .where('kind', '=', kind)
      .where('id', '=', id);
    return (await query.orderBy('revision').execute()).map(heading);
  }

  async list(request: ListRequest): Promise<{ headings: readonly HeadingRow[]; total: number }> {
    const matching = this.#matching(request);
    const counted = await matching.select(({ fn }) => fn.countAll<number>().as('total')).executeTakeFirstOrThrow();
    let page = matching.selectAll();
    if (request.after !== null) {
      const { updatedAt, id } = request.after;
      page = page.where(({ eb, refTuple, tuple }) => eb(refTuple('updated_at', 'id'), '<', tuple(updatedAt, id)));
    }
    const sorted = page.orderBy('updated_at', 'desc').orderBy('id', 'desc').limit(request.limit);
    return { headings: (await sorted.execute()).map(headingRow), total: counted.total };
  }

  async entry(jobId: string, id: string): Promise<EntryRow | null> {
    const query = this.#queries.selectFrom('entries').selectAll().where('job_id', '=', jobId).where('id', '=', id);
    const record = await query.executeTakeFirst();
    return record === undefined ? null : entryRow(record);
  }

  async entries(
    jobId: string,
    after: { readonly at: string; readonly id: string } | null,
    limit: number,
  ): Promise<readonly EntryRow[]> {
    let query = this.#queries.selectFrom('entries').selectAll().where('job_id', '=', jobId);
    if (after !== null) {
      query = query.where(({ eb, refTuple, tuple }) => eb(refTuple('at', 'id'), '>', tuple(after.at, after.id)));
    }
    return (await query.orderBy('at').orderBy('id').limit(limit).execute()).map(entryRow);
  }

  async allRevisions(): Promise<readonly RevisionRow[]> {
    return (await this.#queries.selectFrom('revisions').selectAll().execute()).map(revisionRow);
  }

  async allEntries(): Promise<readonly EntryRow[]> {
    return (await this.#queries.selectFrom('entries').selectAll().execute()).map(entryRow);
  }

  async addRevision(row: RevisionRow): Promise<void> {
    await this.#queries.insertInto('revisions').values(revisionRecord(row)).execute();
  }

  async setHeading(row: HeadingRow): Promise<void> {
    await this.#queries.replaceInto('headings').values(headingRecord(row)).execute();
  }

  async addEntry(row: EntryRow): Promise<void> {
    await this.#queries.insertInto('entries').values(entryRecord(row)).execute();
  }

  #matching({ kind, removed, words }: ListRequest): SelectQueryBuilder<Tables, 'headings', object> {
    let query = this.#queries
      .selectFrom('headings')
      .where('kind', '=', kind)
      .where('removed', '=', removed ? 1 : 0);
    for (const word of words) query = query.where(sql<boolean>`instr(search, ${word}) > 0`);
    return query;
  }
}
