import type { Entry } from '../../kernel/entry.ts';
import type { Recorder } from '../../kernel/trace.ts';

/**
 * Entries behind a ranking. Trying a system makes some two hundred numbers of which a reader is shown a handful: those
 * stay, the rest is let go with the system. Where the working is wanted everything stays.
 */
export class Shelf implements Recorder {
  readonly kept: Entry[] = [];
  private loose: Entry[] = [];
  private readonly ids = new Set<string>();
  private readonly everything: boolean;

  constructor(everything: boolean) {
    this.everything = everything;
  }

  put(entry: Entry): void {
    if (this.everything) this.kept.push(entry);
    else this.loose.push(entry);
  }

  /** Keeps an entry, once however often it is asked for. */
  keep(entry: Entry): void {
    if (this.everything || this.ids.has(entry.id)) return;
    this.ids.add(entry.id);
    this.kept.push(entry);
  }

  /** Keeps what is named and lets go of the rest. */
  settle(named: ReadonlySet<string> | 'all'): void {
    if (named === 'all') for (const entry of this.loose) this.keep(entry);
    else {
      let left = named.size;
      for (let i = 0; i < this.loose.length && left > 0; i++) {
        const entry = this.loose[i] as Entry;
        if (!named.has(entry.id)) continue;
        this.keep(entry);
        left--;
      }
    }
    this.loose = [];
  }
}
