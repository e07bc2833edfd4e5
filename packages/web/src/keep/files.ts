import type { CatalogueFile, JobFile, PriceBookFile } from '@slabwright/core';
import { backupText, type Json, readBackup, type Store } from '@slabwright/store';
import { words } from '../words.ts';
import { planWorker } from '../worker/client.ts';
import { noteOnDevice } from './device.ts';
import { catalogueHeading, type JobDocument, jobHeading } from './documents.ts';
import { hand } from './hand.ts';
import { type ShareBody, shareOf, takeShare } from './share.ts';

/** Files in and out: one job, or everything on this device. They work whatever else does not. */

const JSON_TYPE = 'application/json';

const fileName = (title: string): string =>
  title
    .normalize('NFKD')
    .replace(/[^\w\- ]+/g, '')
    .trim()
    .replace(/\s+/g, '-')
    .toLowerCase() || 'job';

const noteExport = (store: Store, id: string): Promise<void> => {
  const at = new Date().toISOString();
  return noteOnDevice(store, (before) => ({ ...before, exportedAt: { ...before.exportedAt, [id]: at } }));
};

/** The bare job as one file of the published format, from what is on the screen. */
export async function saveJobFile(store: Store, id: string, job: JobFile): Promise<void> {
  hand(`${JSON.stringify(job, null, 2)}\n`, `${fileName(job.title)}.job.json`, JSON_TYPE);
  await noteExport(store, id);
}

/**
 * The job with its catalogue and weather, as another device takes it in. Gives what another device would object to:
 * the file is handed over all the same, because what cannot be read yet must not be lost.
 */
export async function saveShare(
  store: Store,
  id: string,
  document: JobDocument,
  catalogue: CatalogueFile,
  priceBook: PriceBookFile | null,
): Promise<readonly string[]> {
  const weather = document.weather ? await store.get('weather', document.weather) : null;
  const share = shareOf(document, catalogue, weather && !weather.removed ? weather.body : null, priceBook);
  const text = `${JSON.stringify(share, null, 2)}\n`;
  hand(text, `${fileName(document.job.title)}.share.json`, JSON_TYPE);
  await noteExport(store, id);
  const { issues } = await planWorker().read(text);
  return issues;
}

export async function saveBackup(store: Store): Promise<void> {
  const at = new Date().toISOString();
  hand(backupText(await store.exportAll()), `slabwright-${at.slice(0, 10)}.backup.json`, JSON_TYPE);
  await noteOnDevice(store, (before) => ({ ...before, backupAt: at }));
}

export const MOST_FILE = 200 * 1024 * 1024;

export interface Opened {
  readonly ok: boolean;
  readonly lines: readonly string[];
  /** Job to go to. */
  readonly job?: string;
}

const wrong = (name: string, lines: readonly string[]): Opened => ({
  ok: false,
  lines: [words.imported.wrong(name), ...lines],
});

/** Takes in a file a person chose. Nothing already here is lost: an older version stays in its history. */
export async function openFile(store: Store, file: File): Promise<Opened> {
  if (file.size > MOST_FILE)
    return wrong(file.name, [words.imported.large(`${Math.round(file.size / 1024 / 1024)} MB`)]);
  const text = await file.text();
  if (/^\s*\{\s*"schema"\s*:\s*"slabwright\.backup\//.test(text.slice(0, 200))) return openBackup(store, text);
  const report = await planWorker().read(text);
  if (report.issues.length > 0) return wrong(file.name, report.issues);
  switch (report.kind) {
    case 'job':
      return openJob(store, report.value as JobFile, file.name);
    case 'catalogue':
      return openOther(store, 'catalogue', report.id, report.value as Json, words.imported.catalogue(report.id));
    case 'price-book':
      return openOther(store, 'price-book', report.id, report.value as Json, words.imported.priceBook(report.id));
    case 'share':
      return openShare(store, report.value as ShareBody);
    case 'backup':
      return openBackup(store, text);
    case 'weather':
      return wrong(file.name, [words.imported.weather]);
    case 'not known':
      return wrong(file.name, [words.imported.unknownKind]);
  }
}

async function openShare(store: Store, share: ShareBody): Promise<Opened> {
  const { job, before, same } = await takeShare(store, share);
  const more = same ? [words.imported.same] : before ? [words.imported.otherKept] : [];
  return { ok: true, lines: [words.imported.job(share.job.title), ...more], job };
}

async function openBackup(store: Store, text: string): Promise<Opened> {
  const report = await store.importAll(readBackup(text));
  const lines = [words.imported.backup(report.revisionsAdded, report.entriesAdded)];
  if (report.diverged.length > 0) lines.push(words.imported.diverged(report.diverged.length));
  return { ok: true, lines };
}

async function putNewest(
  store: Store,
  kind: string,
  id: string,
  title: string,
  searchText: string,
  body: Json,
): Promise<string[]> {
  const before = await store.get(kind, id);
  if (before && !before.removed && JSON.stringify(before.body) === JSON.stringify(body)) return [words.imported.same];
  await store.put({ kind, id, title, searchText, updatedAt: new Date().toISOString(), body }, before?.revision ?? 0);
  return before ? [words.imported.otherKept] : [];
}

async function openOther(
  store: Store,
  kind: 'catalogue' | 'price-book',
  id: string,
  body: Json,
  said: string,
): Promise<Opened> {
  const searchText = kind === 'catalogue' ? catalogueHeading.searchText(body as unknown as CatalogueFile) : '';
  return { ok: true, lines: [said, ...(await putNewest(store, kind, id, id, searchText, body))] };
}

/** A catalogue on this device that holds every system the job names; price books go by the same name. */
async function catalogueFor(store: Store, job: JobFile): Promise<string | null> {
  const wanted = job.options.map(({ system }) => system);
  const { headings } = await store.list({ kind: 'catalogue', limit: 1000 });
  for (const { id } of headings) {
    const found = await store.get('catalogue', id);
    if (!found) continue;
    const systems = new Set((found.body as unknown as CatalogueFile).systems.map((system) => system.id));
    if (wanted.every((system) => systems.has(system))) return id;
  }
  return null;
}

async function openJob(store: Store, job: JobFile, name: string): Promise<Opened> {
  const known = await store.get('job', job.id);
  const before = known ? (known.body as unknown as JobDocument) : null;
  const catalogue = before?.catalogue ?? (await catalogueFor(store, job));
  if (!catalogue)
    return wrong(name, [words.imported.needsCatalogue(words.and(job.options.map(({ system }) => system)))]);
  const priceBook = before?.priceBook ?? ((await store.get('price-book', catalogue)) ? catalogue : undefined);
  const document: JobDocument = { ...before, job, catalogue, ...(priceBook ? { priceBook } : {}) };
  const lines = await putNewest(
    store,
    'job',
    job.id,
    jobHeading.title(document),
    jobHeading.searchText(document),
    document as unknown as Json,
  );
  return { ok: true, lines: [words.imported.job(job.title), ...lines], job: job.id };
}
