import { readFileSync } from 'node:fs';
import { spread } from '@slabwright/core';
import { beforeEach, expect, test, vi } from 'vitest';

let piped = '';
vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>();
  return {
    ...real,
    readFileSync: (from: Parameters<typeof real.readFileSync>[0], how?: BufferEncoding) =>
      from === 0 ? piped : real.readFileSync(from, how),
  };
});
beforeEach(() => vi.resetModules());

const read = (file: string): string => readFileSync(new URL(`../../../${file}`, import.meta.url), 'utf8');
const catalogue = new URL('../../../jobs/garage/catalogue.json', import.meta.url).pathname;

/** A run of its own for each: standard input is read once in a process. */
async function fed(text: string, ...args: string[]): Promise<{ status: number; out: string; err: string }> {
  piped = text;
  const { run } = await import('./index.ts');
  let out = '';
  let err = '';
  const status = await run(args, {
    out: (more) => {
      out += more;
    },
    err: (more) => {
      err += more;
    },
    colour: false,
    width: 100,
    now: () => '2026-05-12T18:00:00-06:00',
  });
  return { status, out, err };
}

test('a floor through standard input: a solution in the same format, which the checker passes', async () => {
  const { status, out } = await fed(
    read('reference/spread/garage-6x6.json'),
    'spread',
    '-',
    '--json',
    '--effort',
    '60',
  );
  expect(status).toBe(0);
  const answer: unknown = JSON.parse(out);
  const question = spread.readInstance(answer);
  const solution = spread.readSolution(answer);
  if (!question.ok || !solution.ok) throw new Error('not what was asked for');
  expect(spread.checkSequence(question.value, solution.value, 'clipped').ok).toBe(true);
  // what was written can be read in again
  expect((await fed(out, 'spread', '-', '--effort', '60')).status).toBe(0);
});

test('a job through standard input, with its catalogue named', async () => {
  const { status, out } = await fed(
    read('jobs/garage/job.json'),
    'spread',
    '-',
    '--catalogue',
    catalogue,
    '--effort',
    '60',
  );
  expect(status).toBe(0);
  expect(out).toContain('base coat');
});

test('neither of both is refused with what was missing', async () => {
  const { status, err } = await fed('{"hello": 1}', 'spread', '-', '--catalogue', catalogue);
  expect(status).toBe(2);
  expect(err).toContain('schema');
});
