import type { Entry, Reader } from '@slabwright/core';
import type { Shown } from './api.ts';
import { same } from './changes.ts';
import { shownOf } from './shown.ts';

interface Kept {
  readonly entry: Entry;
  readonly shown: Shown;
}

const readerMark = ({ locale, units, currency }: Reader): string => `${locale} ${units} ${currency ?? ''}`;

/**
 * Entries as the reader sees them, put into words only when they changed: moving a start touches a few of a thousand.
 * What did not change is the same object as before.
 */
export class ShownBefore {
  private before: ReadonlyMap<string, Kept> = new Map();
  private reader = '';

  all(entries: Readonly<Record<string, Entry>>, reader: Reader): Readonly<Record<string, Shown>> {
    const mark = readerMark(reader);
    const known = mark === this.reader ? this.before : new Map<string, Kept>();
    const now = new Map<string, Kept>();
    const shown: Record<string, Shown> = {};
    for (const [id, entry] of Object.entries(entries)) {
      const before = known.get(id);
      const kept = before && same(before.entry, entry) ? before : { entry, shown: shownOf(entry, reader) };
      now.set(id, kept);
      shown[id] = kept.shown;
    }
    this.before = now;
    this.reader = mark;
    return shown;
  }
}
