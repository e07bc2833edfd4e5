import { asideOfEntry, asideOfHistory } from './aside.ts';
import type { Backup, ImportReport } from './backup.ts';
import type { EntryRow, RevisionRow, Writer } from './engine.ts';
import { headingRowOf, rowOfDocument, rowOfEntry, sameContent } from './rows.ts';

/** What an import wrote, for the report and for the watchers. */
export interface Imported {
  readonly report: ImportReport;
  readonly revisions: readonly RevisionRow[];
  readonly entries: readonly EntryRow[];
}

/**
 * Adds what the store does not have yet, inside the caller's transaction. A history that continues the stored one is
 * continued; one that went another way is kept beside it as an aside, never mixed in and never dropped.
 */
export async function importInto(writer: Writer, backup: Backup): Promise<Imported> {
  const revisions: RevisionRow[] = [];
  const entries: EntryRow[] = [];
  const diverged: { of: string; aside: string }[] = [];
  let revisionsAlreadyHere = 0;
  let entriesAlreadyHere = 0;

  async function addHistory(rows: readonly RevisionRow[]): Promise<void> {
    for (const row of rows) await writer.addRevision(row);
    const last = rows.at(-1);
    if (last !== undefined) await writer.setHeading(headingRowOf(last));
    revisions.push(...rows);
  }

  async function keepAside(of: string, row: RevisionRow): Promise<void> {
    diverged.push({ of, aside: row.id });
    if ((await writer.revision(row.kind, row.id, null)) === null) await addHistory([row]);
    else revisionsAlreadyHere++;
  }

  for (const offered of histories(backup)) {
    const last = offered.at(-1);
    if (last === undefined) continue;
    const stored = await writer.revisions(last.kind, last.id);
    const common = commonLength(stored, offered);
    revisionsAlreadyHere += common;
    if (common === stored.length) await addHistory(offered.slice(common));
    else if (common < offered.length) await keepAside(`${last.kind}/${last.id}`, asideOfHistory(offered, last));
  }
  for (const row of backup.entries.map(rowOfEntry)) {
    const stored = await writer.entry(row.jobId, row.id);
    if (stored === null) {
      await writer.addEntry(row);
      entries.push(row);
    } else if (stored.at === row.at && stored.body === row.body) entriesAlreadyHere++;
    else await keepAside(`${row.jobId}/${row.id}`, asideOfEntry(row));
  }
  const report = {
    revisionsAdded: revisions.length,
    revisionsAlreadyHere,
    entriesAdded: entries.length,
    entriesAlreadyHere,
    diverged,
  };
  return { report, revisions, entries };
}

function histories(backup: Backup): readonly (readonly RevisionRow[])[] {
  const byKey = new Map<string, RevisionRow[]>();
  for (const row of backup.documents.map(rowOfDocument)) {
    const key = `${row.kind} ${row.id}`;
    const rows = byKey.get(key);
    if (rows === undefined) byKey.set(key, [row]);
    else rows.push(row);
  }
  return [...byKey.values()];
}

function commonLength(stored: readonly RevisionRow[], offered: readonly RevisionRow[]): number {
  const differs = offered.findIndex((row, index) => {
    const other = stored[index];
    return other === undefined || !sameContent(other, row);
  });
  return differs === -1 ? offered.length : differs;
}
