import type { CatalogueFile, JobFile, PriceBookFile } from '@slabwright/core';
import type { StoredDocument } from '@slabwright/store';
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { type Device, device } from '../keep/device.ts';
import { catalogueHeading, type JobDocument, jobHeading, priceBookHeading } from '../keep/documents.ts';
import { LiveDocument, type LiveState } from '../keep/live-document.ts';
import type { IssueShown, Planned } from '../worker/api.ts';
import { LatestPlan, planWorker } from '../worker/client.ts';
import { usePreferences } from './preferences.ts';
import { type ViewVoice, viewVoice } from './voice.ts';

/** The open job: what was typed, what follows from it, and whether the one has caught up with the other. */
export interface OpenJob {
  readonly id: string;
  readonly document: JobDocument;
  readonly file: JobFile;
  /** Edits a copy of the job file; `field` joins keystrokes of one field into one step of undo. */
  change(edit: (draft: JobFile) => void, field?: string): void;
  /** The same for what is kept beside the job file: which catalogue, planned as of when. */
  changeDocument(edit: (draft: JobDocument) => void): void;
  undo(): void;
  redo(): void;
  readonly keeping: LiveState<JobDocument>;
  readonly live: LiveDocument<JobDocument>;
  readonly catalogue: LiveDocument<CatalogueFile>;
  readonly priceBook: LiveDocument<PriceBookFile> | null;
  readonly device: Device;
  /** The last plan that could be made; null until the first one is there. */
  readonly planned: Planned | null;
  readonly plan: Planned['plan'] | null;
  readonly voice: ViewVoice | null;
  /** True while the plan shown is older than what was typed. */
  readonly stale: boolean;
  /** What keeps the newest version from being planned. */
  readonly issues: readonly IssueShown[];
  readonly trouble: string | null;
  readonly optionId: string | null;
  chooseOption(id: string): void;
}

interface Opened {
  readonly device: Device;
  readonly live: LiveDocument<JobDocument>;
  readonly catalogue: LiveDocument<CatalogueFile>;
  readonly priceBook: LiveDocument<PriceBookFile> | null;
}

export type Opening = { readonly is: 'opening' } | { readonly is: 'absent' } | ({ readonly is: 'open' } & Opened);

/** Opens a stored job with its catalogue and price book. */
export function useOpened(id: string): Opening {
  const [opening, setOpening] = useState<Opening>({ is: 'opening' });
  useEffect(() => {
    let left = false;
    let close = (): void => undefined;
    const open = async (): Promise<void> => {
      const found = await device();
      const { store } = found;
      const stored = await store.get('job', id);
      if (!stored || stored.removed) {
        if (!left) setOpening({ is: 'absent' });
        return;
      }
      const { catalogue: catalogueId, priceBook: priceBookId } = stored.body as unknown as JobDocument;
      const beside = await Promise.all([
        store.get('catalogue', catalogueId),
        priceBookId ? store.get('price-book', priceBookId) : null,
      ]);
      if (left) return;
      const [catalogue, priceBook] = beside;
      if (!catalogue) {
        setOpening({ is: 'absent' });
        return;
      }
      const open: Opened = {
        device: found,
        live: new LiveDocument<JobDocument>(store, stored, jobHeading),
        catalogue: new LiveDocument<CatalogueFile>(store, catalogue, catalogueHeading),
        priceBook: priceBook
          ? new LiveDocument<PriceBookFile>(store, priceBook as StoredDocument, priceBookHeading)
          : null,
      };
      close = () => {
        open.live.close();
        open.catalogue.close();
        open.priceBook?.close();
      };
      setOpening({ is: 'open', ...open });
    };
    void open();
    return () => {
      left = true;
      close();
    };
  }, [id]);
  return opening;
}

const Context = createContext<OpenJob | null>(null);

export function useJob(): OpenJob {
  const job = useContext(Context);
  if (!job) throw new Error('useJob stands outside a job');
  return job;
}

/** The voice of the plan shown. Only for what is drawn when a plan is there. */
export function useVoice(): ViewVoice {
  const { voice } = useJob();
  if (!voice) throw new Error('useVoice before the first plan');
  return voice;
}

const useLive = <T,>(live: LiveDocument<T>): LiveState<T> => useSyncExternalStore(live.subscribe, live.get);

const nothing = { subscribe: () => () => undefined, get: () => null };

interface Made {
  readonly planned: Planned;
  readonly voice: ViewVoice;
  readonly from: JobDocument;
}

let wordsOnce: Promise<Readonly<Record<string, string>>> | null = null;
const words = (): Promise<Readonly<Record<string, string>>> => {
  wordsOnce ??= planWorker().words();
  return wordsOnce;
};

export function JobProvider({ opened, children }: { readonly opened: Opened; readonly children: ReactNode }) {
  const { live, catalogue, priceBook, device: on } = opened;
  const keeping = useLive(live);
  const catalogueState = useLive(catalogue);
  const priceBookState = useSyncExternalStore(priceBook?.subscribe ?? nothing.subscribe, priceBook?.get ?? nothing.get);
  const { units } = usePreferences();
  const [made, setMade] = useState<Made | null>(null);
  const [issues, setIssues] = useState<readonly IssueShown[]>([]);
  const [answeredFor, setAnsweredFor] = useState<unknown>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [chosen, setChosen] = useState<string | null>(null);
  const latest = useRef<LatestPlan | null>(null);
  latest.current ??= new LatestPlan(
    (request) => planWorker().plan(request),
    (cause) => setTrouble(String(cause)),
  );

  const document = keeping.body;
  const catalogueBody = catalogueState.body;
  const priceBookBody = priceBookState?.body ?? null;
  const sent = useRef<{ readonly catalogue: unknown; readonly priceBook: unknown } | null>(null);

  const question = useMemo(
    () => ({ document, catalogueBody, priceBookBody, units }),
    [document, catalogueBody, priceBookBody, units],
  );
  useEffect(() => {
    const { document, catalogueBody, priceBookBody, units } = question;
    // The worker keeps the catalogue and price book it has; they are sent again only when they changed.
    const same = sent.current?.catalogue === catalogueBody && sent.current.priceBook === priceBookBody;
    sent.current = { catalogue: catalogueBody, priceBook: priceBookBody };
    latest.current?.request(
      {
        job: document.job,
        catalogue: same ? null : catalogueBody,
        priceBook: same ? null : priceBookBody,
        now: document.asOf ?? Date.now(),
        locale: navigator.language.startsWith('en') ? navigator.language : 'en-US',
        ...(units ? { units } : {}),
      },
      (answer) => {
        setAnsweredFor(question);
        setTrouble(null);
        if (!answer.ok) {
          setIssues(answer.issues);
          return;
        }
        void words().then((known) => {
          setIssues([]);
          setMade({ planned: answer, voice: viewVoice(answer, known), from: document });
        });
      },
    );
  }, [question]);

  const change = useCallback<OpenJob['change']>(
    (edit, field) => live.change((draft) => edit(draft.job), field),
    [live],
  );
  const changeDocument = useCallback<OpenJob['changeDocument']>((edit) => live.change(edit), [live]);
  const undo = useCallback(() => live.undo(), [live]);
  const redo = useCallback(() => live.redo(), [live]);

  const options = made?.planned.plan.options ?? [];
  const optionId =
    (options.find(({ id }) => id === chosen) ?? options.find(({ accepted }) => accepted) ?? options[0])?.id ?? null;
  const value: OpenJob = {
    id: live.id,
    document,
    file: document.job,
    change,
    changeDocument,
    undo,
    redo,
    keeping,
    live,
    catalogue,
    priceBook,
    device: on,
    planned: made?.planned ?? null,
    plan: made?.planned.plan ?? null,
    voice: made?.voice ?? null,
    stale: made !== null && (answeredFor !== question || made.from !== document),
    issues,
    trouble,
    optionId,
    chooseOption: setChosen,
  };
  return <Context value={value}>{children}</Context>;
}
