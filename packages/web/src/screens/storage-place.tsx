import type { DeviceStorage } from '@slabwright/store/indexeddb';
import { useEffect, useState } from 'react';
import { deviceRoom } from '../keep/device.ts';
import { useProgramVersion } from '../keep/program-version.ts';
import { words } from '../words.ts';

const size = (bytes: number): string =>
  bytes < 1e6
    ? `${Math.max(1, Math.round(bytes / 1e3))} kB`
    : bytes < 1e9
      ? `${Math.round(bytes / 1e6)} MB`
      : `${Math.round(bytes / 1e9)} GB`;

/** Where the data is, and whether the browser promises to keep it there. */
export function StoragePlace({ trouble }: { readonly trouble: string | undefined }) {
  const [room, setRoom] = useState<DeviceStorage | null>(null);
  const { offline } = useProgramVersion();
  useEffect(() => {
    let left = false;
    void deviceRoom().then((found) => {
      if (!left) setRoom(found);
    });
    return () => {
      left = true;
    };
  }, []);
  if (trouble) {
    return (
      <p role="alert">
        <b>{words.kept.noDatabase}</b> {trouble}
      </p>
    );
  }
  const promise =
    room?.persisted === null ? words.kept.unknown : room?.persisted ? words.kept.persisted : words.kept.mayClear;
  return (
    <p>
      <b>{words.kept.here}</b>
      {room ? `. ${promise}` : ''}
      {room?.usedBytes !== null && room?.quotaBytes
        ? ` ${words.kept.used(size(room.usedBytes), size(room.quotaBytes))}.`
        : ''}
      {offline ? ` ${words.update.offline}` : ''}
    </p>
  );
}
