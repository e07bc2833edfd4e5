/** What the browser says about the room this site has. Null where the browser does not say. */
export interface DeviceStorage {
  /** True when the browser promises not to clear this site's data by itself. */
  readonly persisted: boolean | null;
  readonly usedBytes: number | null;
  readonly quotaBytes: number | null;
}

/**
 * Asks the browser to keep this site's data. Without its promise the data may be cleared when room runs short, or
 * after some days without a visit: show `persisted` and the time of the last backup to the person.
 */
export async function askToPersist(): Promise<DeviceStorage> {
  // Missing on pages served over plain http, whatever the types say.
  const storage = (globalThis.navigator as Navigator | undefined)?.storage as StorageManager | undefined;
  if (storage === undefined) return { persisted: null, usedBytes: null, quotaBytes: null };
  const persisted = (await storage.persisted()) || (await storage.persist());
  const { usage, quota } = await storage.estimate();
  return { persisted, usedBytes: usage ?? null, quotaBytes: quota ?? null };
}
