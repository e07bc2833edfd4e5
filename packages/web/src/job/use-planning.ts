import type { CatalogueFile, PriceBookFile } from '@slabwright/core';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import type { JobDocument } from '../keep/documents.ts';
import type { StoredWeather } from '../keep/weather.ts';
import type { IssueShown, KeptPlan, PlanAnswer, Planned, Units } from '../worker/api.ts';
import { withChanges } from '../worker/changes.ts';
import { LatestPlan, PROGRAM_VERSION, planWorker } from '../worker/client.ts';
import { digest } from '../worker/digest.ts';
import { type ViewVoice, viewVoice } from './voice.ts';

export interface Made {
  readonly planned: Planned;
  readonly voice: ViewVoice;
  readonly from: JobDocument;
}

interface Question {
  readonly id: string;
  readonly document: JobDocument;
  readonly catalogueBody: CatalogueFile;
  readonly priceBookBody: PriceBookFile | null;
  /** `undefined` while it is being read. */
  readonly weatherBody: StoredWeather;
  readonly units: Units | undefined;
  /** Versions of catalogue and price book as they are stored. */
  readonly beside: string;
}

interface Planning {
  readonly made: Made | null;
  readonly issues: readonly IssueShown[];
  readonly trouble: string | null;
  readonly answeredFor: Question | null;
}

const START: Planning = { made: null, issues: [], trouble: null, answeredFor: null };

let wordsOnce: Promise<Readonly<Record<string, string>>> | null = null;
const words = (): Promise<Readonly<Record<string, string>>> => {
  wordsOnce ??= planWorker().words();
  return wordsOnce;
};

export const localeHere = (): string => (navigator.language.startsWith('en') ? navigator.language : 'en-US');

const HOUR = 3_600_000;

/** All a plan follows from, as far as the screen knows it before anything is computed. */
const keyOf = ({ document, units, beside }: Question): string =>
  digest([document, units ?? '', beside, localeHere(), document.asOf ? '' : Math.floor(Date.now() / HOUR)]);

/** What stands there until the worker has answered: the plan as this device last showed it. */
const startWith = (kept: KeptPlan | null, document: JobDocument): Planning =>
  kept
    ? {
        ...START,
        made: {
          planned: kept.planned,
          voice: viewVoice(kept.planned, kept.words),
          from: { ...document, job: kept.job },
        },
      }
    : START;

type Good = Extract<PlanAnswer, { ok: true }>;

/** An answer laid over what was there is whole again. */
function whole(answer: Exclude<Good, { is: 'known' }>, before: Planned | undefined): Planned {
  if (answer.is === 'whole') return answer.planned;
  if (!before) throw new Error('what changed was told to a screen that had nothing');
  return answer.changes ? withChanges(before, answer.changes) : before;
}

function answeredWith(answer: Good, known: Readonly<Record<string, string>>, from: JobDocument, before: Made | null) {
  // All of it stands there already, and is not drawn again.
  if (answer.is === 'known') return before;
  const planned = whole(answer, before?.planned);
  return { planned, voice: viewVoice(planned, known), from };
}

/**
 * Asks the worker whenever anything the plan stands on changed, and keeps the last plan until the next one is there.
 * `settled` says that the worker has answered at least once; before, what is shown was kept from last time.
 */
export function usePlanning(
  question: Question,
  kept: KeptPlan | null,
): Planning & { readonly stale: boolean; readonly settled: boolean } {
  const { id, document, catalogueBody, priceBookBody, weatherBody, units, beside } = question;
  const asked = useMemo(
    () => ({ id, document, catalogueBody, priceBookBody, weatherBody, units, beside }),
    [id, document, catalogueBody, priceBookBody, weatherBody, units, beside],
  );
  const [state, setState] = useState<Planning>(() => startWith(kept, document));
  const latest = useRef<LatestPlan | null>(null);
  latest.current ??= new LatestPlan(
    (request) => planWorker().plan(request),
    (cause) => setState((before) => ({ ...before, trouble: String(cause) })),
  );
  const sent = useRef<Question | null>(null);
  useEffect(() => {
    if (asked.weatherBody === undefined) return;
    const before = sent.current;
    // The worker keeps the catalogue and price book it has; they are sent again only when they changed.
    const same = before?.catalogueBody === asked.catalogueBody && before.priceBookBody === asked.priceBookBody;
    const sameWeather = before !== null && before.weatherBody === asked.weatherBody;
    sent.current = asked;
    latest.current?.request(
      {
        job: asked.document.job,
        catalogue: same ? null : asked.catalogueBody,
        priceBook: same ? null : asked.priceBookBody,
        weather: sameWeather ? 'same' : asked.weatherBody === null ? 'none' : { file: asked.weatherBody },
        now: asked.document.asOf ?? Date.now(),
        locale: localeHere(),
        afresh: before === null,
        keepAs: { id: asked.id, version: PROGRAM_VERSION, key: keyOf(asked) },
        ...(before === null && kept ? { known: kept.mark } : {}),
        ...(asked.units ? { units: asked.units } : {}),
      },
      async (answer) => {
        const known = kept?.words ?? (await words());
        startTransition(() =>
          setState(({ made }) => {
            if (!answer.ok) return { made, issues: answer.issues, trouble: null, answeredFor: asked };
            const next = answeredWith(answer, known, asked.document, made);
            return { made: next, issues: [], trouble: null, answeredFor: asked };
          }),
        );
      },
    );
  }, [asked, kept]);
  const { made, answeredFor, issues } = state;
  const current = answeredFor === null ? kept?.key === keyOf(asked) : answeredFor === asked;
  return { ...state, stale: made !== null && (!current || issues.length > 0), settled: answeredFor !== null };
}
