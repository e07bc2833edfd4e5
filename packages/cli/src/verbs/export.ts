import { join } from 'node:path';
import type { JobDocument } from '@slabwright/server';
import type { Json, Store } from '@slabwright/store';
import { findJob, jobIn } from '../data/find-job.ts';
import { type DataOptions, withData } from '../data/open-data.ts';
import { refuseExisting, writeWhole } from '../data/write-file.ts';
import { EXIT, type Terminal } from '../terminal.ts';

export interface ExportOptions extends DataOptions {
  readonly out: string;
  readonly overwrite?: boolean;
}

interface FileToWrite {
  readonly path: string;
  readonly body: unknown;
}

/** A name that ends in .json is one file; any other is a folder that `plan` reads as it is. */
const isFile = (out: string): boolean => out.endsWith('.json');

async function filesOf(store: Store, document: JobDocument, out: string): Promise<readonly FileToWrite[]> {
  if (isFile(out)) return [{ path: out, body: document.job }];
  const beside = async (kind: string, id: string | undefined, name: string): Promise<readonly FileToWrite[]> => {
    const found = id === undefined ? null : await store.get(kind, id);
    return found === null || found.removed ? [] : [{ path: join(out, name), body: found.body }];
  };
  return [
    { path: join(out, 'job.json'), body: document.job },
    ...(await beside('catalogue', document.catalogue, 'catalogue.json')),
    ...(await beside('price-book', document.priceBook, 'price-book.json')),
    ...(await beside('weather', document.weather, 'weather.json')),
  ];
}

const textOf = (body: unknown): string => `${JSON.stringify(body as Json, null, 2)}\n`;

/** `export JOB-ID --out FILE|FOLDER|-`: one job out of the data folder as files of the published formats. */
export function exportVerb(id: string, options: ExportOptions, terminal: Terminal): Promise<number> {
  return withData(options, 'must be there', async (store) => {
    const document = jobIn(await findJob(store, id));
    if (options.out === '-') {
      terminal.out(textOf(document.job));
      return EXIT.fine;
    }
    const files = await filesOf(store, document, options.out);
    for (const { path } of files) refuseExisting(path, options.overwrite);
    for (const { path, body } of files) writeWhole(path, textOf(body));
    const written = files.map(({ path }) => path);
    terminal.out(options.json ? `${JSON.stringify({ written })}\n` : `${written.join('\n')}\n`);
    return EXIT.fine;
  });
}
