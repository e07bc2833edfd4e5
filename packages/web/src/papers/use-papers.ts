import { useEffect, useRef, useState } from 'react';
import { useJob, usePlan } from '../job/job-context.tsx';
import { usePreferences } from '../job/preferences.ts';
import { localeHere } from '../job/use-planning.ts';
import { useStoredWeather } from '../keep/weather.ts';
import type { Language, PaperView } from './api.ts';
import { PapersClient, PapersStopped } from './client.ts';

/** How far the papers of the option looked at are. */
export type PapersState =
  /** Pours are being searched; `coats` have theirs. */
  | { readonly is: 'planning'; readonly coats: number }
  | { readonly is: 'ready'; readonly papers: readonly PaperView[] }
  | { readonly is: 'stopped' }
  /** The files cannot be planned as they stand. */
  | { readonly is: 'waits' }
  | { readonly is: 'failed'; readonly why: string };

export interface Papers {
  readonly state: PapersState;
  readonly client: PapersClient;
  stop(): void;
  again(): void;
}

/** Plans the papers of an option with its pours after each plan shown, in a worker that ends with the screen. */
export function usePapers(option: string | undefined, language: Language): Papers {
  const { catalogue, priceBook, device, document } = useJob();
  const { planned } = usePlan();
  const { units } = usePreferences();
  const weather = useStoredWeather(device.store, document.weather);
  const [state, setState] = useState<PapersState>({ is: 'planning', coats: 0 });
  const [tries, setTries] = useState(0);
  /** What the worker has planned, so that another language plans nothing again. */
  const [ready, setReady] = useState<object | null>(null);
  // Pours laid over a plan leave its numbers as they were: that is no new plan to make papers from.
  const made = planned?.shown;
  const client = useRef<PapersClient | null>(null);
  client.current ??= new PapersClient();
  const own = client.current;

  useEffect(() => () => own.stop(), [own]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new plan, and a press on "again", are what plan the papers again
  useEffect(() => {
    if (option === undefined || !made || weather === undefined) return;
    let left = false;
    setReady(null);
    setState({ is: 'planning', coats: 0 });
    const plan = async (): Promise<void> => {
      try {
        const request = {
          job: document.job,
          catalogue: catalogue.get().body,
          priceBook: priceBook?.get().body ?? null,
          weather,
          now: document.asOf ?? Date.now(),
          locale: localeHere(),
          option,
          ...(units ? { units } : {}),
        };
        const could = await own.plan(request, (coats) => {
          if (!left) setState({ is: 'planning', coats });
        });
        if (left) return;
        if (could) setReady({});
        else setState({ is: 'waits' });
      } catch (trouble) {
        if (!left && !(trouble instanceof PapersStopped)) setState({ is: 'failed', why: String(trouble) });
      }
    };
    void plan();
    return () => {
      left = true;
    };
  }, [own, option, made, weather, tries]);

  useEffect(() => {
    if (!ready) return;
    let left = false;
    const list = async (): Promise<void> => {
      try {
        const papers = await own.papers(language);
        if (!left) setState({ is: 'ready', papers });
      } catch (trouble) {
        if (!left && !(trouble instanceof PapersStopped)) setState({ is: 'failed', why: String(trouble) });
      }
    };
    void list();
    return () => {
      left = true;
    };
  }, [own, ready, language]);

  return {
    state,
    client: own,
    stop: () => {
      own.stop();
      setReady(null);
      setState({ is: 'stopped' });
    },
    again: () => setTries((before) => before + 1),
  };
}
