import { readFileSync } from 'node:fs';
import { catalogueFromText, jobFromText, type Plan, plan, type Result, voice, weatherFromText } from '@slabwright/core';
import ical from 'ical-generator';
import { expect, test } from 'vitest';
import { icsOf } from './index.ts';

/** RFC 5545, 3.1, from memory: a line is at most 75 octets, a folded one goes on after a blank. */
function unfolded(text: string): readonly string[] {
  const lines = text.split('\r\n');
  for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(text.replaceAll('\r\n', '')).not.toContain('\n');
  return text.replaceAll('\r\n ', '').split('\r\n');
}

function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const text = (file: string): string => readFileSync(new URL(`../../../jobs/garage/${file}`, import.meta.url), 'utf8');
const garage = (): Plan =>
  plan({
    job: good(jobFromText(text('job.json'))),
    catalogue: good(catalogueFromText(text('catalogue.json'))),
    weather: good(weatherFromText(text('weather.json'))),
    now: '2026-05-12T18:00:00-06:00',
  });

test('a calendar of the garage in both languages: days on site, coats, the lowest margin, return to service', () => {
  const made = garage();
  const [option] = made.options;
  if (!option) throw new Error('the garage has options');
  for (const language of ['en', 'es'] as const) {
    const speaker = voice(language, { locale: 'en-US', units: 'imperial' }, made.entries);
    const ics = icsOf(made, option, speaker);
    expect(icsOf(garage(), option, speaker)).toBe(ics);
    const lines = unfolded(ics);
    const ids = lines.filter((line) => line.startsWith('UID:'));
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ['site-1', 'base-lay', 'base-margin', 'service-vehicle'])
      expect(ids).toContain(`UID:garage-flake-${id}@slabwright`);
    for (const line of lines.filter((one) => /^DT(START|END|STAMP)/.test(one))) expect(line).toMatch(/:\d{8}T\d{6}Z$/);
  }
});

test('text is escaped and folded without splitting a letter (RFC 5545, 3.3.11, from memory)', () => {
  const summary = `a;b,c\\d\nä${'ö€😀'.repeat(40)}`;
  const calendar = ical({ name: 'x' });
  calendar.createEvent({ id: 'one', start: new Date(0), stamp: new Date(0), summary });
  const found = unfolded(calendar.toString()).find((line) => line.startsWith('SUMMARY:'));
  expect(found).toBe(`SUMMARY:a\\;b\\,c\\\\d\\nä${'ö€😀'.repeat(40)}`);
});
