import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { run } from '../index.ts';

const folder = mkdtempSync(join(tmpdir(), 'slabwright-calendar-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const garage = new URL('../../../../jobs/garage', import.meta.url).pathname;

async function hours(...more: string[]): Promise<{ status: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const status = await run(['hours', garage, ...more], {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    colour: false,
    width: 100,
    now: () => '2026-05-12T18:00:00-06:00',
  });
  return { status, out, err };
}

/** RFC 5545, 3.1, from memory: a line is at most 75 octets, a folded one goes on after a blank. */
function unfolded(text: string): readonly string[] {
  const lines = text.split('\r\n');
  for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  return text.replaceAll('\r\n ', '').split('\r\n');
}

test('the calendar keeps the rules of its format: folds, escapes, stable ids, alarms', async () => {
  const file = join(folder, 'day.ics');
  expect((await hours('--ics', file)).status).toBe(0);
  const first = readFileSync(file, 'utf8');
  const lines = unfolded(first);
  expect(lines).toContain('UID:garage-flake-base-lay@slabwright');
  const count = (of: string): number => lines.filter((line) => line === `BEGIN:${of}`).length;
  // Days on site call nobody; everything else rings.
  const days = lines.filter((line) => line.startsWith('SUMMARY:On site')).length;
  expect(days).toBeGreaterThan(0);
  expect(count('VALARM')).toBe(count('VEVENT') - days);
  for (const line of lines.filter((one) => /^DT(START|END|STAMP)/.test(one))) expect(line).toMatch(/:\d{8}T\d{6}Z$/);
  expect(first).toContain('TRIGGER:-PT30M');
  await hours('--ics', file);
  expect(readFileSync(file, 'utf8')).toBe(first);
});

test('hours prints rows, windows, schedule and return to service; data with --json', async () => {
  const { status, out } = await hours();
  expect(status).toBe(0);
  for (const part of [
    'Hours',
    'dew point',
    'May lay',
    'base coat',
    'with care',
    'Schedule',
    'waits for',
    'Return to service',
  ])
    expect(out).toContain(part);
  const data = JSON.parse((await hours('--json')).out);
  expect(data.day.coats).toHaveLength(2);
  expect(data.entries['site.slab'].values.length).toBeGreaterThan(100);
  expect((await hours('--option', 'none')).status).toBe(2);
});
