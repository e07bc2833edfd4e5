import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Issue, MOST_BYTES } from '@slabwright/core';
import { BadInput } from './terminal.ts';
import { plainVoice } from './voice.ts';

/** Reads a file, a folder's `name`, or standard input for `-`; refuses what is too large before reading it. */
export function readInput(path: string, nameInFolder: string): { readonly text: string; readonly folder: string } {
  if (path === '-') return { text: readFileSync(0, 'utf8'), folder: process.cwd() };
  if (!existsSync(path)) throw new BadInput([`${path}: there is no such file or folder.`]);
  const file = statSync(path).isDirectory() ? join(path, nameInFolder) : path;
  if (!existsSync(file)) throw new BadInput([`${path}: the folder holds no ${nameInFolder}.`]);
  const { size } = statSync(file);
  if (size > MOST_BYTES)
    throw badInput(file, [{ code: 'file-too-large', path: [], value: `${size}`, limits: ['0', `${MOST_BYTES}`] }]);
  return { text: readFileSync(file, 'utf8'), folder: dirname(file) };
}

/** Reads a companion file beside the job when it is there, or the one named by an option, which must be there. */
export function readBeside(
  folder: string,
  name: string,
  named: string | undefined,
): { text: string; file: string } | undefined {
  if (named !== undefined) return { text: readInput(named, name).text, file: named };
  const file = join(folder, name);
  if (!existsSync(file)) return undefined;
  return { text: readInput(file, name).text, file };
}

/** Turns issues into the lines a person reads, each with the file it stands in. */
export function badInput(file: string, issues: readonly Issue[]): BadInput {
  const voice = plainVoice();
  return new BadInput(
    issues.map((issue) => `${file}: ${voice.sayIssue(issue)}`),
    issues,
  );
}
