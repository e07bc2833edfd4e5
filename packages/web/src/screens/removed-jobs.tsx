import type { Heading, Store } from '@slabwright/store';
import { useEffect, useState } from 'react';
import { restoreJob } from '../keep/job-files.ts';
import { words } from '../words.ts';

/** Jobs somebody removed; each comes back with one press. */
export function RemovedJobs({ store }: { readonly store: Store }) {
  const [removed, setRemoved] = useState<readonly Heading[]>([]);
  useEffect(() => {
    let left = false;
    const read = (): void => {
      void store.list({ kind: 'job', removed: true, limit: 20 }).then(({ headings }) => {
        if (!left) setRemoved(headings);
      });
    };
    read();
    const stop = store.watch(read);
    return () => {
      left = true;
      stop();
    };
  }, [store]);
  if (removed.length === 0) return null;
  return (
    <section className="removed">
      <h2>{words.list.removedTitle}</h2>
      <ul>
        {removed.map(({ id, title }) => (
          <li key={id}>
            <span>{title}</span>
            <button type="button" className="press" onClick={() => void restoreJob(store, id)}>
              {words.list.restore}
              <span className="unseen"> {title}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
