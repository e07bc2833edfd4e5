import { type Json, type Store, StoreError } from '@slabwright/store';
import { askToPersist, type DeviceStorage, openIndexedDbStore } from '@slabwright/store/indexeddb';
import { exampleChanges } from './examples.ts';

/** The store of this device, opened once. Without a database the app still works, and says that nothing is kept. */
export interface Device {
  readonly store: Store;
  /** Why nothing is kept past this tab, when the browser gives no database. */
  readonly trouble?: string;
}

/** What the device remembers about itself: when what was saved elsewhere. */
export interface DeviceNotes {
  readonly examples?: boolean;
  readonly backupAt?: string;
  /** Whether this device may ask a public forecast service; off until somebody allows it here. */
  readonly mayAskForecast?: boolean;
  readonly exportedAt?: Readonly<Record<string, string>>;
}

export const STORE_NAME = 'slabwright';

let opened: Promise<Device> | null = null;
let seeded: Promise<Device> | null = null;

/** The device with the examples in it. */
export function device(): Promise<Device> {
  seeded ??= seed();
  return seeded;
}

/** The device as it is: what somebody stored here before is read without waiting for the examples. */
export function deviceAsItIs(): Promise<Device> {
  opened ??= openStore();
  return opened;
}

async function seed(): Promise<Device> {
  const found = await deviceAsItIs();
  await seedExamples(found.store);
  return found;
}

async function openStore(): Promise<Device> {
  try {
    return { store: await openIndexedDbStore({ name: STORE_NAME }) };
  } catch (trouble) {
    if (!(trouble instanceof StoreError)) throw trouble;
    const { openMemoryStore } = await import('@slabwright/store/memory');
    return { store: await openMemoryStore(), trouble: trouble.message };
  }
}

async function seedExamples(store: Store): Promise<void> {
  const notes = await readNotes(store);
  if (notes.body.examples) return;
  const changes = await exampleChanges(store);
  if (changes.length > 0) await store.transaction(changes);
  await noteOnDevice(store, (before) => ({ ...before, examples: true }));
}

async function readNotes(store: Store): Promise<{ readonly body: DeviceNotes; readonly revision: number }> {
  const stored = await store.get('settings', 'device');
  return { body: (stored?.body ?? {}) as unknown as DeviceNotes, revision: stored?.revision ?? 0 };
}

export const deviceNotes = async (store: Store): Promise<DeviceNotes> => (await readNotes(store)).body;

export async function noteOnDevice(store: Store, edit: (before: DeviceNotes) => DeviceNotes): Promise<void> {
  const { body, revision } = await readNotes(store);
  const next = edit(body);
  await store.put(
    {
      kind: 'settings',
      id: 'device',
      title: 'device',
      searchText: '',
      updatedAt: new Date().toISOString(),
      body: next as unknown as Json,
    },
    revision,
  );
}

let room: Promise<DeviceStorage> | null = null;

/** Asks once a visit that the browser keeps this site's data. */
export function deviceRoom(): Promise<DeviceStorage> {
  room ??= askToPersist();
  return room;
}
