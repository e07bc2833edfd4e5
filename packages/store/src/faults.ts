import type { Engine, Writer } from './engine.ts';
import { StoreFull } from './errors.ts';

/** Which step of a write fails, counted from 1 over the life of the wrapped engine. */
export interface FaultPlan {
  readonly failAt: number;
  /** `once`: that step only. `onwards`: that step and all after it, as on a disk that stays full. */
  readonly lasting: 'once' | 'onwards';
  /** What the failing step throws; by default StoreFull. */
  readonly failure?: () => Error;
}

/** A wrapped engine and how many steps it has taken. */
export interface FaultyEngine extends Engine {
  readonly steps: () => number;
}

/**
 * Wraps an engine so that step N of its writes fails. Steps are every row written, the commit before it happens, and
 * the answer after the commit has happened. Reads never fail: a full disk is still read.
 */
export function withFaults(engine: Engine, plan: FaultPlan): FaultyEngine {
  let count = 0;
  function step(): void {
    count++;
    const fails = plan.lasting === 'once' ? count === plan.failAt : count >= plan.failAt;
    if (fails) throw plan.failure?.() ?? new StoreFull(new Error(`planned failure at step ${count}`));
  }
  return {
    steps: () => count,
    read: (work) => engine.read(work),
    async write(work) {
      const result = await engine.write(async (writer) => {
        const value = await work(faultyWriter(writer, step));
        step();
        return value;
      });
      step();
      return result;
    },
    tell: (event) => engine.tell(event),
    hear: (listener) => engine.hear(listener),
    close: () => engine.close(),
  };
}

function faultyWriter(writer: Writer, step: () => void): Writer {
  return {
    revision: (kind, id, revision) => writer.revision(kind, id, revision),
    revisions: (kind, id) => writer.revisions(kind, id),
    list: (request) => writer.list(request),
    entry: (jobId, id) => writer.entry(jobId, id),
    entries: (jobId, after, limit) => writer.entries(jobId, after, limit),
    allRevisions: () => writer.allRevisions(),
    allEntries: () => writer.allEntries(),
    async addRevision(row) {
      step();
      await writer.addRevision(row);
    },
    async setHeading(row) {
      step();
      await writer.setHeading(row);
    },
    async addEntry(row) {
      step();
      await writer.addEntry(row);
    },
  };
}
