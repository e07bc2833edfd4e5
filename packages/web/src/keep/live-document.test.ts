import { type Engine, type Store, StoreFull } from '@slabwright/store';
import { memoryDisk, openMemoryStore } from '@slabwright/store/memory';
import { describe, expect, test } from 'vitest';
import { LiveDocument } from './live-document.ts';

interface Body {
  title: string;
}
const heading = { title: ({ title }: Body) => title, searchText: () => '' };
const draft = {
  kind: 'job',
  id: 'a',
  updatedAt: '2026-05-12T18:00:00.000Z',
  title: 'one',
  searchText: '',
  body: { title: 'one' },
};

const quiet = (): Promise<void> => new Promise((later) => setTimeout(later, 10));
const titled = (title: string) => (body: Body) => {
  body.title = title;
};

async function opened(store: Store): Promise<LiveDocument<Body>> {
  const stored = (await store.get('job', 'a')) ?? (await store.put(draft, 0));
  return new LiveDocument<Body>(store, stored, heading);
}

describe('one document being worked on', () => {
  test('every change is written, undo too', async () => {
    const store = await openMemoryStore();
    const live = await opened(store);
    live.change(titled('two'));
    live.change(titled('three'));
    await quiet();
    expect(live.get()).toMatchObject({ keeping: 'kept', canUndo: true });
    live.undo();
    await quiet();
    expect((await store.get('job', 'a'))?.body).toEqual({ title: 'two' });
    expect(live.get().canRedo).toBe(true);
  });

  test('another tab’s change is shown where nothing was unwritten, and undo goes back', async () => {
    const disk = memoryDisk();
    const [here, there] = [await openMemoryStore({ disk }), await openMemoryStore({ disk })];
    const live = await opened(here);
    const other = await opened(there);
    other.change(titled('theirs'));
    await quiet();
    expect(live.get().body.title).toBe('theirs');
    expect(live.get().followed).toBeDefined();
    live.undo();
    await quiet();
    expect((await there.get('job', 'a'))?.body).toEqual({ title: 'one' });
    expect(other.get().body.title).toBe('one');
  });

  test('two tabs changing at once: one is told, and both versions stay in the history', async () => {
    const disk = memoryDisk();
    const [here, there] = [await openMemoryStore({ disk }), await openMemoryStore({ disk })];
    const live = await opened(here);
    const stored = await there.get('job', 'a');
    const write = there.put({ ...draft, title: 'theirs', body: { title: 'theirs' } }, stored?.revision ?? 0);
    live.change(titled('mine'));
    await write;
    await quiet();
    expect(live.get().theirs?.body).toEqual({ title: 'theirs' });
    expect(live.get().body.title).toBe('mine');
    live.keepMine();
    await quiet();
    expect((await there.get('job', 'a'))?.body).toEqual({ title: 'mine' });
    expect(await there.history('job', 'a')).toHaveLength(3);
    expect(live.get()).toMatchObject({ keeping: 'kept' });
    expect(live.get().theirs).toBeUndefined();
  });

  test('theirs taken: undo brings back mine', async () => {
    const disk = memoryDisk();
    const [here, there] = [await openMemoryStore({ disk }), await openMemoryStore({ disk })];
    const live = await opened(here);
    const write = there.put({ ...draft, title: 'theirs', body: { title: 'theirs' } }, 1);
    live.change(titled('mine'));
    await write;
    await quiet();
    live.takeTheirs();
    expect(live.get().body.title).toBe('theirs');
    live.undo();
    await quiet();
    expect((await there.get('job', 'a'))?.body).toEqual({ title: 'mine' });
  });

  test('no room: the reason is said, what was typed stays, and is kept once there is room', async () => {
    let full = false;
    const wrap = (engine: Engine): Engine =>
      new Proxy(engine, {
        get(target, name) {
          if (name === 'write' && full) return () => Promise.reject(new StoreFull(new Error('quota')));
          const found = Reflect.get(target, name, target) as unknown;
          return typeof found === 'function' ? found.bind(target) : found;
        },
      });
    const store = await openMemoryStore({ wrap });
    const live = await opened(store);
    full = true;
    live.change(titled('typed'));
    await quiet();
    expect(live.get()).toMatchObject({ keeping: 'failed', closed: false, body: { title: 'typed' } });
    expect(live.get().trouble).toContain('no room');
    full = false;
    live.again();
    await quiet();
    expect(live.get().keeping).toBe('kept');
    expect((await store.get('job', 'a'))?.body).toEqual({ title: 'typed' });
  });

  test('a closed store is said, and nothing more is tried on it', async () => {
    const store = await openMemoryStore();
    const live = await opened(store);
    await store.close();
    live.change(titled('late'));
    await quiet();
    expect(live.get()).toMatchObject({ keeping: 'failed', closed: true, body: { title: 'late' } });
  });
});
