import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openMemoryStore } from '../memory/index.ts';
import { killTimes } from './run.ts';
import { changesOf } from './script.ts';
import { verify } from './verify.ts';

const here = dirname(fileURLToPath(import.meta.url));
const packageFolder = join(here, '..', '..');
let folder = '';

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'slabwright-kill-test-'));
  // The child is a process of its own and runs compiled code.
  const compiler = join(dirname(createRequire(import.meta.url).resolve('typescript/package.json')), 'bin', 'tsc');
  await promisify(execFile)(process.execPath, [compiler, '-b', packageFolder]);
});

afterAll(() => rm(folder, { recursive: true }));

describe('K1: a process killed while writing', () => {
  test('K1: every acknowledged write is there and none in half, kill after kill on one file', async () => {
    const child = join(packageFolder, 'dist', 'kill', 'child.js');
    const kills = await killTimes({ path: join(folder, 'store.db'), child, kills: 5, seed: 7 });
    expect(kills.flatMap(({ violations }) => violations)).toEqual([]);
    expect(kills.length).toBe(5);
    expect(kills.reduce((sum, kill) => sum + kill.acknowledged, 0)).toBeGreaterThanOrEqual(5);
  });
});

describe('the check itself notices', () => {
  test('a lost write, a half write, one too many and one not committed', async () => {
    const store = await openMemoryStore();
    await store.transaction(changesOf(1));
    await store.transaction(changesOf(2));
    await store.transaction(changesOf(4).slice(0, 2));
    const whole = await verify(store, new Set([1, 2, 3]), new Set([4]), null);
    expect(whole.violations).toEqual([
      'write 3 was acknowledged; 0 of 1 rows are there',
      'write 4 is there in half: 2 of 5 rows',
    ]);
    expect((await verify(store, new Set([1]), new Set([2]), null)).violations).toEqual([
      'write 2 is there, though its commit was never asked for',
      '8 rows are there, 6 are accounted for',
    ]);
    await store.close();
  });
});
