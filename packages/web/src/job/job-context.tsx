import type { CatalogueFile, JobFile, PriceBookFile } from '@slabwright/core';
import type { StoredDocument } from '@slabwright/store';
import {
  createContext,
  type ReactNode,
  startTransition,
  useContext,
  useEffect,
  useMemo,
  useState,
  useSyncExternalStore,
} from 'react';
import { type Device, device, deviceAsItIs } from '../keep/device.ts';
import { catalogueHeading, type JobDocument, jobHeading, priceBookHeading } from '../keep/documents.ts';
import { keptPlan } from '../keep/kept-plan.ts';
import { LiveDocument, type LiveState } from '../keep/live-document.ts';
import { useStoredWeather } from '../keep/weather.ts';
import { type Spreading, useSpreading } from '../spread/use-spreading.ts';
import type { IssueShown, KeptPlan, Planned } from '../worker/api.ts';
import { PROGRAM_VERSION } from '../worker/client.ts';
import { followGoods } from './follow-goods.ts';
import { usePreferences } from './preferences.ts';
import { localeHere, usePlanning } from './use-planning.ts';
import type { ViewVoice } from './voice.ts';

/** What can be done to the open job. It stays the same as long as the job is open, so whoever only acts is not redrawn. */
export interface JobActs {
  /** Edits a copy of the job file; `field` joins keystrokes of one field into one step of undo. */
  change(edit: (draft: JobFile) => void, field?: string): void;
  /** The same for what is kept beside the job file: which catalogue, planned as of when. */
  changeDocument(edit: (draft: JobDocument) => void): void;
  undo(): void;
  redo(): void;
  chooseOption(id: string): void;
  readonly live: LiveDocument<JobDocument>;
  readonly catalogue: LiveDocument<CatalogueFile>;
  readonly priceBook: LiveDocument<PriceBookFile> | null;
  readonly device: Device;
}

/** The open job: what was typed, what follows from it, and whether the one has caught up with the other. */
export interface OpenJob extends JobPlan, JobActs {
  readonly document: JobDocument;
  readonly file: JobFile;
  /** True while the plan shown is older than what was typed. */
  readonly stale: boolean;
  /** What keeps the newest version from being planned. */
  readonly issues: readonly IssueShown[];
  readonly trouble: string | null;
}

/** What follows from the job. It changes only when an answer of the worker comes, so a drag does not redraw the facts. */
export interface JobPlan {
  readonly id: string;
  /** The last plan that could be made; null until the first one is there. */
  readonly planned: Planned | null;
  readonly plan: Planned['plan'] | null;
  readonly voice: ViewVoice | null;
  /** The job file the plan was made from. */
  readonly planFile: JobFile | null;
  readonly optionId: string | null;
  /** Whether the pours shown belong to this plan. */
  readonly spreading: Spreading;
}

interface Opened {
  readonly device: Device;
  readonly live: LiveDocument<JobDocument>;
  readonly catalogue: LiveDocument<CatalogueFile>;
  readonly priceBook: LiveDocument<PriceBookFile> | null;
  /** The plan as it was last shown here. */
  readonly kept: KeptPlan | null;
}

export type Opening = { readonly is: 'opening' } | { readonly is: 'absent' } | ({ readonly is: 'open' } & Opened);

/** Opens a stored job with its catalogue and price book. */
export function useOpened(id: string): Opening {
  const [opening, setOpening] = useState<Opening>({ is: 'opening' });
  useEffect(() => {
    let left = false;
    let close = (): void => undefined;
    let leave = (): void => undefined;
    const open = async (): Promise<void> => {
      const keeping = keptPlan(id, PROGRAM_VERSION);
      const found = await deviceAsItIs();
      const { store } = found;
      const stored = (await store.get('job', id)) ?? (await (await device()).store.get('job', id));
      if (!stored || stored.removed) {
        if (!left) setOpening({ is: 'absent' });
        return;
      }
      const { catalogue: catalogueId, priceBook: priceBookId } = stored.body as unknown as JobDocument;
      const beside = await Promise.all([
        store.get('catalogue', catalogueId),
        priceBookId ? store.get('price-book', priceBookId) : null,
        keeping,
      ]);
      if (left) return;
      const [catalogue, priceBook, kept] = beside;
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
        kept,
      };
      let goods = open;
      close = () => {
        leave();
        open.live.close();
        goods.catalogue.close();
        goods.priceBook?.close();
      };
      setOpening({ is: 'open', ...open });
      leave = followGoods(store, open.live, open, (next) => {
        goods = next;
        setOpening({ is: 'open', ...next });
      });
    };
    void open();
    return () => {
      left = true;
      close();
    };
  }, [id]);
  return opening;
}

const ActsContext = createContext<JobActs | null>(null);
const Context = createContext<OpenJob | null>(null);
const PlanContext = createContext<JobPlan | null>(null);

/** The open job as it is typed. What only shows the plan uses `usePlan`, and is drawn again only when the plan changed. */
export function useJob(): OpenJob {
  const job = useContext(Context);
  if (!job) throw new Error('useJob stands outside a job');
  return job;
}

/** For whoever changes the job without showing what is typed. */
export function useActs(): JobActs {
  const acts = useContext(ActsContext);
  if (!acts) throw new Error('useActs stands outside a job');
  return acts;
}

export function usePlan(): JobPlan {
  const made = useContext(PlanContext);
  if (!made) throw new Error('usePlan stands outside a job');
  return made;
}

/** Whether what was typed is kept, and whether it can be undone. */
export function useKeeping(): LiveState<JobDocument> {
  const { live } = useActs();
  return useSyncExternalStore(live.subscribe, live.get);
}

/** The voice of the plan shown. Only for what is drawn when a plan is there. */
export function useVoice(): ViewVoice {
  const { voice } = usePlan();
  if (!voice) throw new Error('useVoice before the first plan');
  return voice;
}

/** The body alone: that it is being written or is written redraws nothing else. */
const useBody = <T,>(live: LiveDocument<T>): T => useSyncExternalStore(live.subscribe, () => live.get().body);

const nobody = (): (() => void) => () => undefined;
const nothing = (): null => null;

export function JobProvider({ opened, children }: { readonly opened: Opened; readonly children: ReactNode }) {
  const { live, catalogue, priceBook, device: on, kept } = opened;
  const document = useBody(live);
  const catalogueBody = useBody(catalogue);
  const priceBookBody = useSyncExternalStore(
    priceBook?.subscribe ?? nobody,
    priceBook ? () => priceBook.get().body : nothing,
  );
  const weatherBody = useStoredWeather(on.store, document.weather);
  const { units } = usePreferences();
  const beside = `${catalogue.get().revision} ${priceBook?.get().revision ?? ''}`;
  const planning = usePlanning(
    { id: live.id, document, catalogueBody, priceBookBody, weatherBody, units, beside },
    kept,
  );
  const { made: bare, issues, trouble, stale, settled } = planning;
  const [chosen, setChosen] = useState<string | null>(null);

  const options = bare?.planned.plan.options ?? [];
  const optionId =
    (options.find(({ id }) => id === chosen) ?? options.find(({ accepted }) => accepted) ?? options[0])?.id ?? null;
  const { made, spreading } = useSpreading(bare, optionId, catalogueBody, weatherBody, units, localeHere(), settled);
  const follows = useMemo<JobPlan>(
    () => ({
      id: live.id,
      planned: made?.planned ?? null,
      plan: made?.planned.plan ?? null,
      voice: made?.voice ?? null,
      planFile: made?.from.job ?? null,
      optionId,
      spreading,
    }),
    [live, made, optionId, spreading],
  );
  const acts = useMemo<JobActs>(
    () => ({
      change: (edit, field) => live.change((draft) => edit(draft.job), field),
      changeDocument: (edit) => live.change(edit),
      undo: () => live.undo(),
      redo: () => live.redo(),
      chooseOption: (id) => startTransition(() => setChosen(id)),
      live,
      catalogue,
      priceBook,
      device: on,
    }),
    [live, catalogue, priceBook, on],
  );
  const job = useMemo<OpenJob>(
    () => ({ ...follows, ...acts, document, file: document.job, stale, issues, trouble }),
    [follows, acts, document, stale, issues, trouble],
  );
  return (
    <ActsContext value={acts}>
      <Context value={job}>
        <PlanContext value={follows}>{children}</PlanContext>
      </Context>
    </ActsContext>
  );
}
