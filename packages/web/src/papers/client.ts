import { proxy, type Remote, wrap } from 'comlink';
import type { PlanWorker } from '../worker/api.ts';
import { startWorker } from '../worker/client.ts';
import type { Language, PaperSize, PapersDesk, PapersRequest, PaperView } from './api.ts';

type Desk = Remote<PlanWorker & PapersDesk>;

/** Said to whoever waits when the worker was put away. */
export class PapersStopped extends Error {
  override readonly name = 'PapersStopped';
}

/** A worker for the papers of one screen. Stopping ends it in the middle of a search; the next question starts another. */
export class PapersClient {
  private running: { readonly worker: Worker; readonly desk: Desk } | null = null;
  private readonly waiting = new Set<(stopped: PapersStopped) => void>();

  plan(request: PapersRequest, coat: (found: number) => void): Promise<boolean> {
    this.stop();
    return this.ask((desk) => desk.planPapers(request, proxy(coat)));
  }

  papers(language: Language): Promise<readonly PaperView[]> {
    return this.ask((desk) => desk.papers(language));
  }

  pdf(kind: string, language: Language, size: PaperSize): Promise<Uint8Array> {
    return this.ask((desk) => desk.pdf(kind, language, size));
  }

  stop(): void {
    if (!this.running) return;
    this.running.worker.terminate();
    this.running = null;
    for (const tell of this.waiting) tell(new PapersStopped());
    this.waiting.clear();
  }

  private desk(): Desk {
    if (!this.running) {
      const worker = startWorker();
      this.running = { worker, desk: wrap<PlanWorker & PapersDesk>(worker) };
    }
    return this.running.desk;
  }

  /** A worker that was ended never answers, so whoever asked it is told here. */
  private async ask<T>(question: (desk: Desk) => Promise<T>): Promise<T> {
    let tell: ((stopped: PapersStopped) => void) | undefined;
    const stopped = new Promise<never>((_, reject) => {
      tell = reject;
      this.waiting.add(reject);
    });
    try {
      return await Promise.race([question(this.desk()), stopped]);
    } finally {
      if (tell) this.waiting.delete(tell);
    }
  }
}
