import type { Change, Store } from '../port.ts';
import { changesOf } from './script.ts';

export interface Findings {
  /** What should not be; empty when every rule held. */
  readonly violations: readonly string[];
  /** The numbers of the writes found whole. */
  readonly present: ReadonlySet<number>;
}

/**
 * Reads the store and compares it with what the children said.
 *
 * @param acknowledged numbers that must be there whole
 * @param unknown numbers begun and not acknowledged: absent, unless it is `mayBeThere`; never in half
 */
export async function verify(
  store: Store,
  acknowledged: ReadonlySet<number>,
  unknown: ReadonlySet<number>,
  mayBeThere: number | null,
): Promise<Findings> {
  const violations: string[] = [];
  const present = new Set<number>();
  const { documents, entries } = await store.exportAll();
  const stored = new Map<string, string>();
  for (const { kind, id, revision, title, body } of documents) {
    stored.set(`${kind}/${id}/${revision}`, JSON.stringify([title, body]));
  }
  for (const { jobId, id, body } of entries) stored.set(`log/${jobId}/${id}`, JSON.stringify(body));

  let expectedRows = 0;
  for (const number of new Set([...acknowledged, ...unknown])) {
    const rows = changesOf(number).map(rowOf);
    const found = rows.filter(([key, content]) => stored.get(key) === content).length;
    expectedRows += found;
    if (found === rows.length) present.add(number);
    if (acknowledged.has(number)) {
      if (found < rows.length)
        violations.push(`write ${number} was acknowledged; ${found} of ${rows.length} rows are there`);
    } else if (found > 0 && found < rows.length) {
      violations.push(`write ${number} is there in half: ${found} of ${rows.length} rows`);
    } else if (found > 0 && number !== mayBeThere) {
      violations.push(`write ${number} is there, though its commit was never asked for`);
    }
  }
  if (stored.size !== expectedRows) violations.push(`${stored.size} rows are there, ${expectedRows} are accounted for`);
  const listed = new Set<string>();
  let page = await store.list({ kind: 'job', limit: 1000 });
  for (const { id } of page.headings) listed.add(id);
  while (page.next !== null) {
    page = await store.list({ kind: 'job', limit: 1000, after: page.next });
    for (const { id } of page.headings) listed.add(id);
  }
  const jobs = new Set(documents.map(({ id }) => id));
  if (listed.size !== jobs.size) violations.push(`the list has ${listed.size} jobs, the store ${jobs.size}`);
  return { violations, present };
}

function rowOf(change: Change): readonly [key: string, content: string] {
  if (change.do === 'append') {
    const { jobId, id, body } = change.entry;
    return [`log/${jobId}/${id}`, JSON.stringify(body)];
  }
  if (change.do !== 'put') throw new Error(`the children make no ${change.do}`);
  const { kind, id, title, body } = change.draft;
  return [`${kind}/${id}/${change.expected + 1}`, JSON.stringify([title, body])];
}
