import type { Entry, Reader } from '@slabwright/core';
import type { Shown } from './api.ts';
import { shownOf } from './shown.ts';

interface Kept {
  readonly mark: string;
  readonly shown: Shown;
}

export interface ShownChange {
  /** True when nothing of before holds: another reader, or the screen starts anew. */
  readonly afresh: boolean;
  readonly shown: Readonly<Record<string, Shown>>;
  readonly gone: readonly string[];
}

const readerMark = ({ locale, units, currency }: Reader): string => `${locale} ${units} ${currency ?? ''}`;

/**
 * Entries as the reader sees them, put into words only when they changed: moving a start touches a few of a thousand.
 * What the screen has is what the last answer left it with, so each answer carries the difference alone.
 */
export class ShownBefore {
  private before: ReadonlyMap<string, Kept> = new Map();
  private reader = '';

  change(entries: Readonly<Record<string, Entry>>, reader: Reader, startAnew: boolean): ShownChange {
    const mark = readerMark(reader);
    const afresh = startAnew || mark !== this.reader;
    const known = mark === this.reader ? this.before : new Map<string, Kept>();
    const now = new Map<string, Kept>();
    const shown: Record<string, Shown> = {};
    for (const [id, entry] of Object.entries(entries)) {
      const own = JSON.stringify(entry);
      const same = known.get(id);
      const kept = same?.mark === own ? same : { mark: own, shown: shownOf(entry, reader) };
      now.set(id, kept);
      if (afresh || kept !== same) shown[id] = kept.shown;
    }
    const gone = afresh ? [] : [...this.before.keys()].filter((id) => !now.has(id));
    this.before = now;
    this.reader = mark;
    return { afresh, shown, gone };
  }
}
