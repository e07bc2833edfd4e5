import type { JobDocument } from '@slabwright/server';
import type { Store, StoredDocument } from '@slabwright/store';
import { nearest } from '../nearest.ts';
import { BadInput } from '../terminal.ts';

const MOST_NAMED = 12;

/** Every stored document of a kind that is not removed, page by page. */
export async function documentsOf(store: Store, kind: string): Promise<readonly StoredDocument[]> {
  const found: StoredDocument[] = [];
  let page = await store.list({ kind, limit: 1000 });
  for (;;) {
    for (const { id } of page.headings) {
      const document = await store.get(kind, id);
      if (document !== null && !document.removed) found.push(document);
    }
    if (page.next === null) return found;
    page = await store.list({ kind, limit: 1000, after: page.next });
  }
}

export const jobIn = (document: StoredDocument): JobDocument => document.body as unknown as JobDocument;

/** The stored job of this id: the one it is stored under, or the one its file names. @throws BadInput. */
export async function findJob(store: Store, id: string): Promise<StoredDocument> {
  const direct = /^[\x21-\x7e]{1,200}$/.test(id) ? await store.get('job', id) : null;
  if (direct !== null && !direct.removed) return direct;
  const all = await documentsOf(store, 'job');
  const named = all.filter((document) => jobIn(document).job?.id === id);
  const [one, another] = named;
  if (one !== undefined && another === undefined) return one;
  const ids = all.map((document) => document.id);
  if (another !== undefined) {
    throw new BadInput([
      `${named.length} jobs are called "${id}": ${named.map((job) => job.id).join(', ')}. Name one.`,
    ]);
  }
  const close = nearest(id, ids);
  throw new BadInput([
    `There is no job "${id}" here.${close.length > 0 ? ` Perhaps ${close.join(' or ')}?` : ''}`,
    ids.length === 0 ? 'The folder holds no jobs.' : `It holds ${ids.slice(0, MOST_NAMED).join(', ')}.`,
  ]);
}
