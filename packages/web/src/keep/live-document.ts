import { Conflict, type Json, type Store, StoreClosed, type StoredDocument, StoreError } from '@slabwright/store';
import { begin, changed, type History, redone, undone } from '../job/history.ts';

export interface LiveState<T> {
  readonly body: T;
  readonly revision: number;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly keeping: 'kept' | 'writing' | 'failed';
  /** Why it could not be kept, for the person at the screen. */
  readonly trouble?: string;
  /** True while the store itself is gone: writing again needs a reload. */
  readonly closed: boolean;
  /** A version another tab wrote meanwhile; neither is lost. */
  readonly theirs?: StoredDocument;
  /** When another tab's version was taken over without a question, because nothing here was unwritten. */
  readonly followed?: string;
}

export interface HeadingOf<T> {
  title(body: T): string;
  searchText(body: T): string;
}

/** One stored document being worked on: undo and redo here, every change written at once, other tabs heard. */
export class LiveDocument<T> {
  readonly kind: string;
  readonly id: string;
  private readonly store: Store;
  private readonly heading: HeadingOf<T>;
  private history: History<T>;
  private revision: number;
  /** The body the store has acknowledged. */
  private written: T;
  private running = false;
  private state: LiveState<T>;
  private readonly listeners = new Set<() => void>();
  private readonly stopWatching: () => void;

  constructor(store: Store, stored: StoredDocument, heading: HeadingOf<T>) {
    this.store = store;
    this.heading = heading;
    this.kind = stored.kind;
    this.id = stored.id;
    this.revision = stored.revision;
    this.history = begin(stored.body as unknown as T);
    this.written = this.history.present;
    this.state = this.snapshot({ keeping: 'kept', closed: false });
    this.stopWatching = store.watch((event) => {
      if (event.what === 'closed') this.show({ keeping: 'failed', trouble: event.message, closed: true });
      else if (event.elsewhere && event.documents.some(({ kind, id }) => kind === this.kind && id === this.id)) {
        void this.follow();
      }
    });
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };
  readonly get = (): LiveState<T> => this.state;

  /** Changes a copy of the body; `field` joins keystrokes of one field into one step of undo. */
  change(edit: (draft: T) => void, field?: string): void {
    const draft = structuredClone(this.history.present);
    edit(draft);
    this.move(changed(this.history, draft, field));
  }

  undo(): void {
    this.move(undone(this.history));
  }

  redo(): void {
    this.move(redone(this.history));
  }

  /** Tries again after the store had no room or was blocked. */
  again(): void {
    void this.write();
  }

  /** Keeps what stands here over another tab's version, which stays in the history. */
  keepMine(): void {
    const { theirs } = this.state;
    if (!theirs) return;
    this.revision = theirs.revision;
    this.show({ keeping: 'writing', closed: false });
    void this.write();
  }

  /** Takes the other tab's version; undo brings back what stood here. */
  takeTheirs(): void {
    const { theirs } = this.state;
    if (theirs) this.adopt(theirs);
  }

  close(): void {
    this.stopWatching();
    this.listeners.clear();
  }

  private move(next: History<T>): void {
    if (next === this.history) return;
    this.history = next;
    const { theirs, trouble } = this.state;
    this.show({
      keeping: theirs || this.state.closed ? 'failed' : 'writing',
      closed: this.state.closed,
      ...(theirs ? { theirs } : {}),
      ...(trouble && this.state.closed ? { trouble } : {}),
    });
    void this.write();
  }

  private adopt(document: StoredDocument): void {
    this.revision = document.revision;
    this.history = changed(this.history, document.body as unknown as T);
    this.written = this.history.present;
    this.show({ keeping: 'kept', closed: false, followed: document.updatedAt });
  }

  private async follow(): Promise<void> {
    try {
      const stored = await this.store.get(this.kind, this.id);
      if (!stored || stored.revision <= this.revision) return;
      if (this.written === this.history.present && !this.running) this.adopt(stored);
      else if (!this.running) this.show({ keeping: 'failed', closed: false, theirs: stored });
    } catch (trouble) {
      this.failed(trouble);
    }
  }

  private async write(): Promise<void> {
    if (this.running || this.state.theirs || this.state.closed) return;
    this.running = true;
    try {
      while (this.written !== this.history.present) {
        const body = this.history.present;
        const stored = await this.store.put(
          {
            kind: this.kind,
            id: this.id,
            updatedAt: new Date().toISOString(),
            title: this.heading.title(body),
            searchText: this.heading.searchText(body),
            body: body as unknown as Json,
          },
          this.revision,
        );
        this.revision = stored.revision;
        this.written = body;
      }
      this.show({ keeping: 'kept', closed: false });
    } catch (trouble) {
      this.failed(trouble);
    } finally {
      this.running = false;
    }
  }

  private failed(trouble: unknown): void {
    if (trouble instanceof Conflict && trouble.stored && 'revision' in trouble.stored) {
      this.show({ keeping: 'failed', closed: false, theirs: trouble.stored });
      return;
    }
    if (!(trouble instanceof StoreError)) throw trouble;
    this.show({ keeping: 'failed', trouble: trouble.message, closed: trouble instanceof StoreClosed });
  }

  private snapshot(rest: Pick<LiveState<T>, 'keeping' | 'closed'> & Partial<LiveState<T>>): LiveState<T> {
    return {
      ...rest,
      body: this.history.present,
      revision: this.revision,
      canUndo: this.history.past.length > 0,
      canRedo: this.history.future.length > 0,
    };
  }

  private show(rest: Pick<LiveState<T>, 'keeping' | 'closed'> & Partial<LiveState<T>>): void {
    this.state = this.snapshot(rest);
    for (const listener of this.listeners) listener();
  }
}
