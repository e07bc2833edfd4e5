import type { Entry } from '../../kernel/entry.ts';
import type { Recorder } from '../../kernel/trace.ts';

/**
 * Keeps entries in the order they come, and leaves laying them out by id to whoever asks for words: a ranking records
 * tens of thousands of which a reader opens a handful.
 */
export class LightRecorder implements Recorder {
  readonly list: Entry[] = [];

  put(entry: Entry): void {
    this.list.push(entry);
  }
}
