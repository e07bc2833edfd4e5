import { type Remote, wrap } from 'comlink';
import type { PlanAnswer, PlanRequest, PlanWorker } from './api.ts';

/** The one worker of this tab, started when the first job opens. */
let started: Remote<PlanWorker> | null = null;

/** A worker with the whole program of plans in it. */
export const startWorker = (): Worker =>
  new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module', name: 'plan' });

/** Changes with every build: this file names the worker's program, whose name carries the digest of its content. */
export const PROGRAM_VERSION = import.meta.url;

export function planWorker(): Remote<PlanWorker> {
  started ??= wrap<PlanWorker>(startWorker());
  return started;
}

type Ask = (request: PlanRequest) => Promise<PlanAnswer>;

/**
 * Asks for plans one at a time. While one is being made only the newest question waits; those between are dropped,
 * because nobody would look at their answers.
 */
export class LatestPlan {
  private readonly ask: Ask;
  private waiting: { readonly request: PlanRequest; readonly tell: (answer: PlanAnswer) => void } | null = null;
  private busy = false;
  private readonly fail: (trouble: unknown) => void;

  constructor(ask: Ask, fail: (trouble: unknown) => void) {
    this.ask = ask;
    this.fail = fail;
  }

  request(request: PlanRequest, tell: (answer: PlanAnswer) => void): void {
    const dropped = this.waiting?.request;
    // A dropped question may have carried the catalogue that the next one leaves out as unchanged.
    const carried = {
      ...request,
      catalogue: request.catalogue ?? dropped?.catalogue ?? null,
      priceBook: request.priceBook ?? dropped?.priceBook ?? null,
      weather: request.weather === 'same' ? (dropped?.weather ?? 'same') : request.weather,
      afresh: request.afresh || (dropped?.afresh ?? false),
    };
    this.waiting = { request: carried, tell };
    void this.next();
  }

  private async next(): Promise<void> {
    if (this.busy || !this.waiting) return;
    const { request, tell } = this.waiting;
    this.waiting = null;
    this.busy = true;
    try {
      tell(await this.ask(request));
    } catch (trouble) {
      this.fail(trouble);
    } finally {
      this.busy = false;
      void this.next();
    }
  }
}
