import type { Json, Store } from '@slabwright/store';
import { words } from '../words.ts';
import { type JobDocument, jobHeading } from './documents.ts';
import { forgetPlan } from './kept-plan.ts';

/** A copy to work on: the same facts and choices under an id of its own, no longer an example. */
export async function copyJob(store: Store, document: JobDocument): Promise<string> {
  const id = `job-${crypto.randomUUID().slice(0, 8)}`;
  const job = { ...structuredClone(document.job), id, title: words.list.copyOf(document.job.title).slice(0, 120) };
  const { example: _, ...rest } = document;
  const copy: JobDocument = { ...rest, job };
  await store.put(
    {
      kind: 'job',
      id,
      title: jobHeading.title(copy),
      searchText: jobHeading.searchText(copy),
      updatedAt: new Date().toISOString(),
      body: copy as unknown as Json,
    },
    0,
  );
  return id;
}

/** A tombstone; the list of the removed brings it back. */
export async function removeJob(store: Store, id: string): Promise<void> {
  const stored = await store.get('job', id);
  if (stored) await store.remove('job', id, stored.revision, new Date().toISOString());
  await forgetPlan(id);
}

export async function restoreJob(store: Store, id: string): Promise<void> {
  const stored = await store.get('job', id);
  if (stored) await store.restore('job', id, stored.revision, new Date().toISOString());
}
