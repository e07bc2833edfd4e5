import type { Heading, ListPlace, Store } from '@slabwright/store';
import { StoreError } from '@slabwright/store';
import { useCallback, useDeferredValue, useEffect, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { GoodsHere } from '../edit/goods-here.tsx';
import { NewJobLink } from '../edit/new-job-link.tsx';
import { type Device, device } from '../keep/device.ts';
import { openFile, saveBackup } from '../keep/files.ts';
import { useDeviceNotes } from '../keep/use-device.ts';
import { sinceText } from '../when.ts';
import { words } from '../words.ts';
import { planWorker } from '../worker/client.ts';
import { ReaderChoices, Wordmark } from './header.tsx';
import { NewerVersion } from './newer-version.tsx';
import { RemovedJobs } from './removed-jobs.tsx';
import { StoragePlace } from './storage-place.tsx';

const PAGE = 50;

interface Listed {
  readonly headings: readonly Heading[];
  readonly total: number;
  readonly next: ListPlace | null;
}

/** Jobs newest first, found by any word; asked again when the store says that something changed. */
function useJobs(store: Store | null, text: string): { readonly listed: Listed | null; readonly more: () => void } {
  const [listed, setListed] = useState<Listed | null>(null);
  const [version, setVersion] = useState(0);
  useEffect(() => store?.watch(() => setVersion((before) => before + 1)), [store]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version is the reason to ask again
  useEffect(() => {
    if (!store) return;
    let left = false;
    void store.list({ kind: 'job', limit: PAGE, ...(text.trim() ? { text } : {}) }).then((page) => {
      if (!left) setListed(page);
    });
    return () => {
      left = true;
    };
  }, [store, text, version]);
  const more = useCallback(() => {
    const after = listed?.next;
    if (!store || !after) return;
    void store.list({ kind: 'job', limit: PAGE, after, ...(text.trim() ? { text } : {}) }).then((page) => {
      setListed({ ...page, headings: [...listed.headings, ...page.headings] });
    });
  }, [store, text, listed]);
  return { listed, more };
}

/** The list is there and the machine has nothing to do: the worker gets ready for the job that is opened next. */
function usePlannerReady(listed: boolean): void {
  useEffect(() => {
    if (!listed) return;
    const start = (): void => void planWorker();
    // Not every browser tells when it is idle.
    if (!('requestIdleCallback' in window)) return;
    const waits = requestIdleCallback(start, { timeout: 5000 });
    return () => cancelIdleCallback(waits);
  }, [listed]);
}

/** The first screen: the jobs, a search, and where all this is kept. */
export function JobList() {
  const [found, setFound] = useState<Device | null>(null);
  const [text, setText] = useState('');
  const asked = useDeferredValue(text);
  const { listed, more } = useJobs(found?.store ?? null, asked);
  usePlannerReady(listed !== null);
  useEffect(() => {
    document.title = words.program;
    void device().then(setFound);
  }, []);
  return (
    <main className="page">
      <header>
        <Wordmark />
        <span className="acts">
          <ReaderChoices own="imperial" />
        </span>
      </header>
      <NewerVersion />
      <section className="jobs">
        <h1>{words.list.title}</h1>
        <p className="quiet">{words.list.start}</p>
        <NewJobLink />
        <label className="search">
          <span className="unseen">{words.list.search}</span>
          <input
            type="search"
            value={text}
            placeholder={words.list.searchHint}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        {listed && listed.headings.length === 0 ? <p>{words.list.none}</p> : null}
        <ul>
          {(listed?.headings ?? []).map(({ id, title, updatedAt }) => (
            <li key={id}>
              <Link href={`/job/${id}/survey`}>
                <b>{title}</b>
                <small>
                  {id.startsWith('example-') ? words.list.examples : words.list.changed(sinceText(updatedAt))}
                </small>
              </Link>
            </li>
          ))}
        </ul>
        {listed?.next ? (
          <button type="button" className="press" onClick={more}>
            {words.list.more}
          </button>
        ) : null}
      </section>
      {found ? <RemovedJobs store={found.store} /> : null}
      {found && listed ? <GoodsHere store={found.store} /> : null}
      {found && listed ? <Keeping device={found} /> : null}
    </main>
  );
}

function Keeping({ device: on }: { readonly device: Device }) {
  const [said, setSaid] = useState<{ readonly ok: boolean; readonly lines: readonly string[] } | null>(null);
  const [version, setVersion] = useState(0);
  const notes = useDeviceNotes(version);
  const chosen = useRef<HTMLInputElement>(null);
  const [, navigate] = useLocation();
  const trying = async (act: () => Promise<void>): Promise<void> => {
    try {
      await act();
    } catch (trouble) {
      if (!(trouble instanceof StoreError)) throw trouble;
      setSaid({ ok: false, lines: [trouble.message] });
    }
    setVersion((before) => before + 1);
  };
  const open = (file: File): Promise<void> =>
    trying(async () => {
      const report = await openFile(on.store, file);
      setSaid(report);
      if (report.ok && report.job && report.lines.length === 1) navigate(`/job/${report.job}/survey`);
    });
  return (
    <section className="keeping">
      <StoragePlace trouble={on.trouble} />
      <p>{notes?.backupAt ? words.kept.saved(sinceText(notes.backupAt)) : words.kept.never}</p>
      <div className="presses">
        <button type="button" className="press" onClick={() => void trying(() => saveBackup(on.store))}>
          {words.list.backup}
        </button>
        <button type="button" className="press" onClick={() => chosen.current?.click()}>
          {words.list.importFile}
        </button>
        <input
          ref={chosen}
          className="unseen"
          type="file"
          accept=".json,application/json"
          aria-label={`${words.list.importFile}: ${words.list.importHint}`}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = '';
            if (file) void open(file);
          }}
        />
      </div>
      <div role="status">
        {said ? (
          <ul className={said.ok ? 'said' : 'said wrong'}>
            {said.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        ) : null}
      </div>
    </section>
  );
}
