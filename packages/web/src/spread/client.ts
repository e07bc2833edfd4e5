import { proxy, type Remote, wrap } from 'comlink';
import type { PlanWorker } from '../worker/api.ts';
import { startWorker } from '../worker/client.ts';
import type { SpreadAnswer, SpreadDesk, SpreadRequest, SpreadTold } from './api.ts';

interface Running {
  readonly worker: Worker;
  readonly remote: Remote<PlanWorker & SpreadDesk>;
}

let started: Running | null = null;

/** A second worker with the same program: a search of seconds holds up neither plan nor typing. */
export function spreadWorker(): Remote<PlanWorker & SpreadDesk> {
  if (!started) {
    const worker = startWorker();
    started = { worker, remote: wrap<PlanWorker & SpreadDesk>(worker) };
  }
  return started.remote;
}

/** Ends a search in its middle: a worker that computes hears nothing, so it is let go and the next one begins afresh. */
function stopWorker(): void {
  started?.worker.terminate();
  started = null;
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
  private running: SpreadRequest | null = null;
  private round = 0;
  private readonly fail: (trouble: unknown) => void;
  private readonly progress: (told: SpreadTold) => void;

  constructor(fail: (trouble: unknown) => void, progress: (told: SpreadTold) => void) {
    this.fail = fail;
    this.progress = progress;
  }

  request(request: SpreadRequest, tell: Waiting['tell']): void {
    const dropped = this.waiting?.request;
    this.waiting = { request: { ...request, catalogue: request.catalogue ?? dropped?.catalogue ?? null }, tell };
    void this.next();
  }

  /** Stops the search that runs and forgets the one that waits. The next question must bring its catalogue again. */
  stop(): void {
    if (!this.running) return;
    this.round += 1;
    this.running = null;
    this.waiting = null;
    stopWorker();
  }

  private async next(): Promise<void> {
    if (this.running || !this.waiting) return;
    const { request, tell } = this.waiting;
    const { round } = this;
    this.waiting = null;
    this.running = request;
    const mine = (): boolean => round === this.round;
    try {
      const answer = await spreadWorker().spread(
        request,
        proxy((told) => mine() && this.progress(told)),
      );
      if (mine()) tell(answer);
    } catch (trouble) {
      if (mine()) this.fail(trouble);
    } finally {
      if (mine()) {
        this.running = null;
        void this.next();
      }
    }
  }
}
