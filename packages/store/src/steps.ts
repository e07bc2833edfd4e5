import type { Engine, Writer } from './engine.ts';

/** A moment inside a write: a row is about to be written, the commit is about to happen, or it has happened. */
export type WriteStep = 'row' | 'commit' | 'answer';

/**
 * Wraps an engine so that `onStep` is called at every step of a write. What it throws is what the write fails with;
 * the write waits for it (an adapter over a browser database must not be kept waiting: there it may only throw).
 */
export function withSteps(engine: Engine, onStep: (step: WriteStep) => void | Promise<void>): Engine {
  return {
    read: (work) => engine.read(work),
    async write(work) {
      const result = await engine.write(async (writer) => {
        const value = await work(steppedWriter(writer, () => onStep('row')));
        await onStep('commit');
        return value;
      });
      await onStep('answer');
      return result;
    },
    tell: (event) => engine.tell(event),
    hear: (listener) => engine.hear(listener),
    close: () => engine.close(),
  };
}

function steppedWriter(writer: Writer, onRow: () => void | Promise<void>): Writer {
  return {
    revision: (kind, id, revision) => writer.revision(kind, id, revision),
    revisions: (kind, id) => writer.revisions(kind, id),
    history: (kind, id) => writer.history(kind, id),
    list: (request) => writer.list(request),
    entry: (jobId, id) => writer.entry(jobId, id),
    entries: (jobId, after, limit) => writer.entries(jobId, after, limit),
    allRevisions: () => writer.allRevisions(),
    allEntries: () => writer.allEntries(),
    async addRevision(row) {
      await onRow();
      await writer.addRevision(row);
    },
    async setHeading(row) {
      await onRow();
      await writer.setHeading(row);
    },
    async addEntry(row) {
      await onRow();
      await writer.addEntry(row);
    },
  };
}
