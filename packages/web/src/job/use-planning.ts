import type { CatalogueFile, PriceBookFile } from '@slabwright/core';
import { startTransition, useEffect, useMemo, useRef, useState } from 'react';
import type { JobDocument } from '../keep/documents.ts';
import type { StoredWeather } from '../keep/weather.ts';
import type { IssueShown, Planned, Units } from '../worker/api.ts';
import { LatestPlan, planWorker } from '../worker/client.ts';
import { type ViewVoice, viewVoice } from './voice.ts';

export interface Made {
  readonly planned: Planned;
  readonly voice: ViewVoice;
  readonly from: JobDocument;
}

interface Question {
  readonly document: JobDocument;
  readonly catalogueBody: CatalogueFile;
  readonly priceBookBody: PriceBookFile | null;
  /** `undefined` while it is being read. */
  readonly weatherBody: StoredWeather;
  readonly units: Units | undefined;
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

/** An answer holds only what changed; laid over what was there it is whole again. */
function whole(answer: Planned, before: Planned | null): Planned {
  if (answer.afresh || !before) return answer;
  const shown = { ...before.shown, ...answer.shown };
  for (const id of answer.gone) delete shown[id];
  return { ...answer, shown };
}

export const localeHere = (): string => (navigator.language.startsWith('en') ? navigator.language : 'en-US');

/** Asks the worker whenever anything the plan stands on changed, and keeps the last plan until the next one is there. */
export function usePlanning(question: Question): Planning & { readonly stale: boolean } {
  const { document, catalogueBody, priceBookBody, weatherBody, units } = question;
  const asked = useMemo(
    () => ({ document, catalogueBody, priceBookBody, weatherBody, units }),
    [document, catalogueBody, priceBookBody, weatherBody, units],
  );
  const [state, setState] = useState<Planning>(START);
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
        ...(asked.units ? { units: asked.units } : {}),
      },
      async (answer) => {
        const known = await words();
        startTransition(() =>
          setState(({ made }) => {
            if (!answer.ok) return { made, issues: answer.issues, trouble: null, answeredFor: asked };
            const planned = whole(answer, made?.planned ?? null);
            return {
              made: { planned, voice: viewVoice(planned, known), from: asked.document },
              issues: [],
              trouble: null,
              answeredFor: asked,
            };
          }),
        );
      },
    );
  }, [asked]);
  return { ...state, stale: state.made !== null && (state.answeredFor !== asked || state.issues.length > 0) };
}
