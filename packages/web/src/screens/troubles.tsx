import { StoreError } from '@slabwright/store';
import { useEffect, useState } from 'react';
import { useJob, useKeeping } from '../job/job-context.tsx';
import { saveJobFile } from '../keep/files.ts';
import { sinceText } from '../when.ts';
import { words } from '../words.ts';
import { NewerVersion } from './newer-version.tsx';

/** What stands between what was typed and its being kept: no room, another tab, no database. It stays until answered. */
export function Troubles() {
  const { live, device, id, file } = useJob();
  const keeping = useKeeping();
  const elsewhere = useOpenElsewhere(id);
  const [seen, setSeen] = useState(false);
  const [followedSeen, setFollowedSeen] = useState<string | null>(null);
  const save = (
    <button type="button" className="press" onClick={() => void handOut(saveJobFile(device.store, id, file))}>
      {words.kept.saveFile}
    </button>
  );
  return (
    <div className="troubles" aria-live="polite">
      <NewerVersion />
      {device.trouble ? (
        <section className="trouble">
          <p>
            <b>{words.kept.noDatabase}</b> {device.trouble}
          </p>
          {save}
        </section>
      ) : null}
      {keeping.trouble ? (
        <section className="trouble" role="alert">
          <p>{keeping.trouble}</p>
          {keeping.closed ? (
            <button type="button" className="press" onClick={() => location.reload()}>
              {words.kept.reload}
            </button>
          ) : (
            <button type="button" className="press" onClick={() => live.again()}>
              {words.kept.tryAgain}
            </button>
          )}
          {save}
        </section>
      ) : null}
      {keeping.theirs ? (
        <section className="trouble" role="alert">
          <p>{words.kept.theirs(sinceText(keeping.theirs.updatedAt))}</p>
          <button type="button" className="press" onClick={() => live.takeTheirs()}>
            {words.kept.takeTheirs}
          </button>
          <button type="button" className="press" onClick={() => live.keepMine()}>
            {words.kept.keepMine}
          </button>
        </section>
      ) : null}
      {keeping.followed && keeping.followed !== followedSeen ? (
        <section className="trouble">
          <p>{words.kept.followed(sinceText(keeping.followed))}</p>
          <button type="button" className="press" onClick={() => setFollowedSeen(keeping.followed ?? null)}>
            {words.kept.dismiss}
          </button>
        </section>
      ) : null}
      {elsewhere && !seen ? (
        <section className="trouble">
          <p>{words.kept.elsewhere}</p>
          <button type="button" className="press" onClick={() => setSeen(true)}>
            {words.kept.dismiss}
          </button>
        </section>
      ) : null}
    </div>
  );
}

/** The file is handed out first; that its date cannot be noted while nothing can be written is said above already. */
async function handOut(saving: Promise<void>): Promise<void> {
  try {
    await saving;
  } catch (trouble) {
    if (!(trouble instanceof StoreError)) throw trouble;
  }
}

/** Ends of this tab's own locks by job: looked at again, a job waits for them and does not take itself for another tab. */
const given = new Map<string, Promise<unknown>>();

/** True when another tab had this job open first. The lock goes with the tab, so a crash leaves nothing behind. */
function useOpenElsewhere(id: string): boolean {
  const [elsewhere, setElsewhere] = useState(false);
  useEffect(() => {
    const { locks } = navigator as { locks?: LockManager };
    if (!locks) return;
    const leave = new AbortController();
    let free = (): void => undefined;
    const held = new Promise<void>((done) => {
      free = done;
    });
    const asked = async (): Promise<void> => {
      await given.get(id);
      if (leave.signal.aborted) return;
      await locks.request(`slabwright-job-${id}`, { ifAvailable: true }, async (lock) => {
        if (leave.signal.aborted) return;
        setElsewhere(lock === null);
        if (lock) await held;
      });
    };
    given.set(id, asked());
    return () => {
      leave.abort();
      free();
    };
  }, [id]);
  return elsewhere;
}
