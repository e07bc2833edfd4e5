import { existsSync, readFileSync } from 'node:fs';
import { type Backup, readBackup, StoreError } from '@slabwright/store';
import { type DataOptions, withData } from '../data/open-data.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

/** Backups are larger than single files: photos apart, a firm's years of jobs. */
function read(path: string): Backup {
  if (path !== '-' && !existsSync(path)) throw new BadInput([`${path}: there is no such file.`]);
  try {
    return readBackup(readFileSync(path === '-' ? 0 : path, 'utf8'));
  } catch (trouble) {
    if (trouble instanceof StoreError) throw new BadInput([`${path}: ${trouble.message}`]);
    throw new BadInput([`${path} cannot be read: ${trouble instanceof Error ? trouble.message : String(trouble)}.`]);
  }
}

/** `restore FILE`: adds from a backup what the data folder lacks. What is there stays; what differs is kept beside it. */
export async function restoreVerb(path: string, options: DataOptions, terminal: Terminal): Promise<number> {
  // Read before the folder is opened: a damaged backup leaves no empty folder behind.
  const backup = read(path);
  const report = await withData(options, 'is made', (store) => store.importAll(backup));
  if (options.json) {
    terminal.out(`${JSON.stringify(report)}\n`);
    return EXIT.fine;
  }
  const { revisionsAdded, revisionsAlreadyHere, entriesAdded, entriesAlreadyHere, diverged } = report;
  terminal.out(
    `${revisionsAdded} revisions and ${entriesAdded} log entries added; ` +
      `${revisionsAlreadyHere} and ${entriesAlreadyHere} were here already.\n`,
  );
  for (const { of, aside } of diverged) {
    terminal.err(`${of} is different here and in the backup. What was here stays; the backup's is kept as ${aside}.\n`);
  }
  return EXIT.fine;
}
