import type { CatalogueFile } from '@slabwright/core';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import type { Made } from '../job/use-planning.ts';
import type { Units } from '../worker/api.ts';
import type { CoatCells, SpreadAnswer } from './api.ts';
import { LatestSpread } from './client.ts';
import { withSpread } from './merge.ts';

/** How the spread of the option looked at stands to the plan shown. */
export interface Spreading {
  readonly cells: readonly CoatCells[];
  /** The pours shown are older than the plan. */
  readonly stale: boolean;
  readonly trouble: string | null;
  again(): void;
}

interface Found {
  readonly answer: SpreadAnswer | null;
  readonly for: Made | null;
  readonly option: string | null;
  readonly trouble: string | null;
}

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
  const [tries, setTries] = useState(0);
  const sent = useRef<CatalogueFile | null>(null);
  const latest = useRef<LatestSpread | null>(null);
  latest.current ??= new LatestSpread((cause) => setFound((before) => ({ ...before, trouble: String(cause) })));
  useEffect(() => {
    if (!made || !option || !settled) return;
    const waits = setTimeout(() => {
      const same = sent.current === catalogue && tries === 0;
      sent.current = catalogue;
      latest.current?.request(
        {
          job: made.from.job,
          catalogue: same ? null : catalogue,
          weather: weather ?? null,
          now: made.from.asOf ?? Date.now(),
          locale,
          option,
          ...(units ? { units } : {}),
        },
        (answer) => startTransition(() => setFound({ answer, for: made, option, trouble: null })),
      );
    }, REST_MS);
    return () => clearTimeout(waits);
  }, [made, option, catalogue, weather, units, locale, settled, tries]);
  const { answer, trouble } = found;
  const stale = made !== null && option !== null && (found.for !== made || found.option !== option);
  const merged = useMemo(() => (made && answer ? withSpread(made, answer) : made), [made, answer]);
  const spreading = useMemo<Spreading>(
    () => ({
      cells: answer && answer.option === option ? answer.cells : NO_CELLS,
      stale,
      trouble: stale ? trouble : null,
      again: () => {
        setFound((before) => ({ ...before, trouble: null }));
        setTries((n) => n + 1);
      },
    }),
    [answer, option, stale, trouble],
  );
  return { made: merged, spreading };
}
