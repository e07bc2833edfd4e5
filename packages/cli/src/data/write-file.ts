import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { BadInput } from '../terminal.ts';

/** Refuses before any work is done when a file is in the way. */
export function refuseExisting(path: string, overwrite: boolean | undefined): void {
  if (!overwrite && existsSync(path)) {
    throw new BadInput([`${path} is there already. Name another file, or pass --overwrite to replace it.`]);
  }
}

/** Writes a file that is whole or not there: written beside its place, brought to the disk, then moved into it. */
export function writeWhole(path: string, text: string): void {
  const beside = `${path}.part`;
  try {
    mkdirSync(dirname(path), { recursive: true });
    const file = openSync(beside, 'w', 0o600);
    try {
      writeSync(file, text);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (cause) {
    throw new BadInput([`${path} cannot be written: ${cause instanceof Error ? cause.message : String(cause)}.`]);
  }
}
