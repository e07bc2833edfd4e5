import { useEffect, useState } from 'react';
import { type DeviceNotes, device, deviceNotes } from './device.ts';

/** What the device remembers about itself; read again when `version` changes. */
export function useDeviceNotes(version: unknown): DeviceNotes | null {
  const [notes, setNotes] = useState<DeviceNotes | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new version is the reason to read again
  useEffect(() => {
    let left = false;
    void device()
      .then(({ store }) => deviceNotes(store))
      .then((found) => {
        if (!left) setNotes(found);
      });
    return () => {
      left = true;
    };
  }, [version]);
  return notes;
}
