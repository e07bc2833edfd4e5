import { readFileSync } from 'node:fs';
import { spread } from '@slabwright/core';
import { expect, test } from 'vitest';
import { BadInput } from './terminal.ts';
import { heard, terminalInto } from './testing/heard.ts';
import { type SpreadVerbOptions, spreadText } from './verbs/spread.ts';

const read = (file: string): string => readFileSync(new URL(`../../../${file}`, import.meta.url), 'utf8');
const catalogue = new URL('../../../jobs/garage/catalogue.json', import.meta.url).pathname;

/** What the verb makes of a text that came through standard input. */
function fed(text: string, options: SpreadVerbOptions): { status: number; out: string } {
  const said = heard();
  const status = spreadText(text, options, terminalInto(said));
  return { status, out: said.out };
}

test('a floor through standard input: a solution in the same format, which the checker passes', () => {
  const { status, out } = fed(read('reference/spread/garage-6x6.json'), { json: true, effort: '60' });
  expect(status).toBe(0);
  const answer: unknown = JSON.parse(out);
  const question = spread.readInstance(answer);
  const solution = spread.readSolution(answer);
  if (!question.ok || !solution.ok) throw new Error('not what was asked for');
  expect(spread.checkSequence(question.value, solution.value, 'clipped').ok).toBe(true);
  // what was written can be read in again
  expect(fed(out, { effort: '60' }).status).toBe(0);
});

test('a job through standard input, with its catalogue named', () => {
  const { status, out } = fed(read('jobs/garage/job.json'), { catalogue, effort: '60' });
  expect(status).toBe(0);
  expect(out).toContain('base coat');
});

test('neither of both is refused with what was missing', () => {
  expect(() => fed('{"hello": 1}', { catalogue })).toThrow(BadInput);
  expect(() => fed('{"hello": 1}', { catalogue })).toThrow(/schema/);
});

test('a floor no order fits says why with the arithmetic, and what was planned instead', () => {
  const file = JSON.parse(read('reference/spread/garage-6x6.json'));
  const instance = file.instance ?? file;
  instance.stopLines = [];
  instance.clock.openMin = [[0, 3]];
  const { status, out } = fed(JSON.stringify(instance), { effort: '40' });
  expect(status).toBe(1);
  expect(out).toContain('No order of pours keeps every limit.');
  expect(out).toMatch(/■ .*the open time of 3\smin/);
  expect(out).toMatch(/→ .*planned and checked/);
  expect(out).not.toMatch(/[{}]|NaN|undefined/);
  const data = JSON.parse(fed(JSON.stringify(instance), { effort: '40', json: true }).out);
  expect(data.repairs).toHaveLength(5);
});
