import { type Remote, wrap } from 'comlink';
import type { PlanWorker } from '../worker/api.ts';
import { startWorker } from '../worker/client.ts';
import type { SpreadAnswer, SpreadDesk, SpreadRequest } from './api.ts';

let started: Remote<PlanWorker & SpreadDesk> | null = null;

/** A second worker with the same program: a search of seconds holds up neither plan nor typing. */
export function spreadWorker(): Remote<PlanWorker & SpreadDesk> {
  started ??= wrap<PlanWorker & SpreadDesk>(startWorker());
  return started;
}

/** Numbers of the spread have their working where they were planned. */
export const isOfSpread = (id: string): boolean => /^[^.]+\.spread\./.test(id);

interface Waiting {
  readonly request: SpreadRequest;
  readonly tell: (answer: SpreadAnswer | null) => void;
}

/** One search at a time; while it runs only the newest question waits. */
export class LatestSpread {
  private waiting: Waiting | null = null;
  private busy = false;
  private readonly fail: (trouble: unknown) => void;

  constructor(fail: (trouble: unknown) => void) {
    this.fail = fail;
  }

  request(request: SpreadRequest, tell: Waiting['tell']): void {
    const dropped = this.waiting?.request;
    this.waiting = { request: { ...request, catalogue: request.catalogue ?? dropped?.catalogue ?? null }, tell };
    void this.next();
  }

  private async next(): Promise<void> {
    if (this.busy || !this.waiting) return;
    const { request, tell } = this.waiting;
    this.waiting = null;
    this.busy = true;
    try {
      tell(await spreadWorker().spread(request));
    } catch (trouble) {
      this.fail(trouble);
    } finally {
      this.busy = false;
      void this.next();
    }
  }
}
