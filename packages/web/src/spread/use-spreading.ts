import type { CatalogueFile } from '@slabwright/core';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import type { Made } from '../job/use-planning.ts';
import type { Units } from '../worker/api.ts';
import type { CoatCells, SpreadAnswer, SpreadRequest } from './api.ts';
import { LatestSpread } from './client.ts';
import { withSpread } from './merge.ts';
import { tellProgress } from './progress.ts';

/** How the spread of the option looked at stands to the plan shown. */
export interface Spreading {
  readonly cells: readonly CoatCells[];
  /** The pours shown are older than the plan. */
  readonly stale: boolean;
  readonly trouble: string | null;
  /** Somebody stopped the search: the pours shown stay, and are old. */
  readonly stopped: boolean;
  again(): void;
  stop(): void;
  /** Looks again: for up to half a minute, or only briefly. */
  look(effort: NonNullable<SpreadRequest['effort']>): void;
}

interface Found {
  readonly answer: SpreadAnswer | null;
  readonly for: Made | null;
  readonly option: string | null;
  readonly trouble: string | null;
}

/** How hard to look for the pours of one plan; the next plan is looked at quickly again. */
interface Asked {
  readonly times: number;
  readonly for: Made | null;
  readonly effort?: NonNullable<SpreadRequest['effort']>;
}

const QUICK: Asked = { times: 0, for: null };
const NOTHING: Found = { answer: null, for: null, option: null, trouble: null };
const NO_CELLS: readonly CoatCells[] = [];
/** A hand that drags a start asks for many plans; the search waits until it rests. */
const REST_MS = 150;

/** Plans the spread after each plan, and lays the pours over the plan they belong to. */
export function useSpreading(
  made: Made | null,
  option: string | null,
  catalogue: CatalogueFile,
  weather: unknown,
  units: Units | undefined,
  locale: string,
  /** False while the plan shown is the one kept from last time: the search waits for the worker's own. */
  settled: boolean,
): { readonly made: Made | null; readonly spreading: Spreading } {
  const [found, setFound] = useState<Found>(NOTHING);
  const [asked, setAsked] = useState<Asked>(QUICK);
  const [stopped, setStopped] = useState(false);
  const sent = useRef<CatalogueFile | null>(null);
  const latest = useRef<LatestSpread | null>(null);
  latest.current ??= new LatestSpread((cause) => {
    tellProgress(null);
    setFound((before) => ({ ...before, trouble: String(cause) }));
  }, tellProgress);
  useEffect(() => {
    if (!made || !option || !settled) return;
    const waits = setTimeout(() => {
      const same = sent.current === catalogue && asked.times === 0;
      sent.current = catalogue;
      setStopped(false);
      latest.current?.request(
        {
          job: made.from.job,
          catalogue: same ? null : catalogue,
          weather: weather ?? null,
          now: made.from.asOf ?? Date.now(),
          locale,
          option,
          ...(units ? { units } : {}),
          ...(asked.for === made && asked.effort ? { effort: asked.effort } : {}),
        },
        (answer) => {
          tellProgress(null);
          startTransition(() => setFound({ answer, for: made, option, trouble: null }));
        },
      );
    }, REST_MS);
    return () => clearTimeout(waits);
  }, [made, option, catalogue, weather, units, locale, settled, asked]);
  const { answer, trouble } = found;
  const stale = made !== null && option !== null && (found.for !== made || found.option !== option);
  const merged = useMemo(() => (made && answer ? withSpread(made, answer) : made), [made, answer]);
  const spreading = useMemo<Spreading>(
    () => ({
      cells: answer && answer.option === option ? answer.cells : NO_CELLS,
      stale,
      trouble: stale ? trouble : null,
      stopped,
      again: () => {
        setFound((before) => ({ ...before, trouble: null }));
        setAsked(({ times }) => ({ times: times + 1, for: null }));
      },
      stop: () => {
        latest.current?.stop();
        tellProgress(null);
        sent.current = null;
        if (stale) {
          setStopped(true);
          return;
        }
        // a longer look that is given up leaves the pours as they stand: found again at once, workings and all
        setFound((before) => ({ ...before, for: null }));
        setAsked(({ times }) => ({ times: times + 1, for: null }));
      },
      look: (effort) => setAsked(({ times }) => ({ times: times + 1, for: made, effort })),
    }),
    [answer, option, stale, trouble, stopped, made],
  );
  return { made: merged, spreading };
}
