import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogueFrom } from '../../catalogue.ts';
import { jobFrom } from '../../job.ts';
import type { Result } from '../../kernel/issue.ts';
import { papersOf, paperText } from '../../paper-content/index.ts';
import { answered, plan } from '../../plan.ts';
import { checkSequence } from '../../spread/index.ts';
import { voice } from '../../words/index.ts';
import { MESSAGES } from '../../words/messages.ts';
import type { SpreadSeen } from './index.ts';

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

// biome-ignore lint/suspicious/noExplicitAny: read from a file and changed
const file = (name: string): any =>
  JSON.parse(readFileSync(new URL(`../../../../../jobs/garage/${name}.json`, import.meta.url), 'utf8'));

/** A hall of 30 × 12 m with joints each 6 m across, invented; two people from 08:00, the door at its right end. */
function hall({ joints = true, until = '12:00', start = '08:00' } = {}) {
  const job = file('job');
  const [area] = job.areas;
  job.areas = [
    {
      id: 'main',
      name: 'Hall',
      outline: [
        ['0 m', '0 m'],
        ['30 m', '0 m'],
        ['30 m', '12 m'],
        ['0 m', '12 m'],
      ],
      exits: [{ id: 'gate', name: 'gate', from: ['30 m', '4 m'], to: ['30 m', '8 m'], outside: true }],
      profileDepth: area.profileDepth,
      joints: joints
        ? [6, 12, 18, 24].map((x) => ({
            id: `j${x}`,
            kind: 'contraction',
            along: [
              [`${x} m`, '0 m'],
              [`${x} m`, '12 m'],
            ],
            width: '3 mm',
            depth: '25 mm',
          }))
        : [],
    },
  ];
  // a larger floor needs more of the same readings
  const { tests } = job.survey.moisture;
  job.survey.moisture.tests = [1, 2, 3].flatMap((n) =>
    tests.map((one: { id: string }) => ({ ...one, id: `${one.id}-${n}` })),
  );
  // the readings of the day the clear goes down, at the hours it needs here
  const [reading] = job.survey.climate.filter(({ at }: { at: string }) => at.startsWith('2026-05-13T1'));
  for (const at of ['2026-05-15T08:00', '2026-05-15T13:00', '2026-05-15T23:00'])
    job.survey.climate.push({ ...reading, at: `${at}:00-06:00` });
  job.options = job.options.slice(0, 1);
  delete job.options[0].changes;
  Object.assign(job.options[0], {
    workday: { from: '08:00', until },
    starts: [
      { layer: 'base', at: `2026-05-13T${start}:00-06:00` },
      { layer: 'clear', at: '2026-05-15T08:00:00-06:00' },
    ],
  });
  const catalogue = file('catalogue');
  for (const product of catalogue.products) {
    for (const time of product.times ?? []) {
      if (time.what === 'open time') time.value = '40 min';
      if (time.what === 'pot life') time.value = '60 min';
    }
  }
  const seen: SpreadSeen[] = [];
  const read = { job: must(jobFrom(job)), catalogue: must(catalogueFrom(catalogue)) };
  const made = plan({
    ...read,
    now: '2026-05-12T18:00:00-06:00',
    spread: 12,
    onSpread: (one) => seen.push(one),
  });
  const found = made.options[0]?.spread;
  if (!found || !answered(found)) throw new Error(JSON.stringify(found));
  return { ...read, made, found, seen, coats: found.coats.filter(({ layer }) => layer === 'base') };
}

describe('a coat that is more than a day of work', () => {
  const { job, catalogue, made, found, seen, coats } = hall();
  const value = (id: string | undefined): number => {
    const entry = id === undefined ? undefined : made.entries[id];
    if (!entry || !('value' in entry)) throw new Error(`no value for ${id}`);
    return entry.value;
  };

  test('is planned day by day within the hours of the crew, far end first', () => {
    expect(coats.map(({ state, day }) => [state, day?.number, day?.of])).toEqual([
      ['planned', 1, 2],
      ['planned', 2, 2],
    ]);
    for (const { start = '', laid = '' } of coats) {
      expect(start.slice(11, 16)).toBe('08:00');
      expect(laid.slice(0, 10)).toBe(start.slice(0, 10));
      expect(laid.slice(11, 16) <= '12:00').toBe(true);
    }
    expect(coats.map(({ start }) => start?.slice(0, 10))).toEqual(['2026-05-13', '2026-05-14']);
    expect(found.verdict.reasons.map(({ code }) => code)).toContain('spread-takes-days');
  });

  test('ends on a joint that runs right across, and says so at the last pour and of the day', () => {
    const [first, second] = coats;
    expect(first?.day?.says.map(({ code, names }) => [code, names?.joint])).toEqual([['spread-day-ends-joint', 'j18']]);
    expect(first?.pours.at(-1)?.ends.code).toBe('spread-end-across-joint');
    expect(second?.day?.says.map(({ code }) => code)).toEqual(['spread-day-meets-joint', 'spread-day-before-walkable']);
    expect(second?.pours.at(-1)?.ends.code).toBe('spread-end-way-out');
  });

  test('covers the floor once: 30 × 12 m, the first day up to the joint at 18 m (own arithmetic)', () => {
    expect(coats.map(({ day }) => value(day?.area))).toEqual([expect.closeTo(216, 6), expect.closeTo(144, 6)]);
  });

  test('the checker accepts every day, and the days are told apart', () => {
    const own = seen.filter(({ layer }) => layer === 'base');
    expect(own.map(({ day }) => day)).toEqual([1, 2]);
    for (const { question, result } of own) {
      if (result.kind !== 'plan') throw new Error(result.kind);
      expect(checkSequence(question, result.solution, 'clipped').breaks).toEqual([]);
    }
  });

  test('the crew sheet tells day, end line and seam, and numbers pours by day', () => {
    const heads = {
      en: ['Floor of several days', 'Day 1 of 2', 'j18'],
      es: ['Piso de varios días', 'Día 1 de 2', 'j18'],
    };
    for (const language of ['en', 'es'] as const) {
      const sheet = papersOf(made, job, catalogue, { language }).find(
        (one) => one.ok && one.paper.kind === 'crew-sheet',
      );
      if (!sheet?.ok)
        throw new Error(JSON.stringify(papersOf(made, job, catalogue, { language }).filter(({ ok }) => !ok)));
      const text = paperText(sheet.paper, voice(language, { ...job.reader, locale: language }, made.entries));
      for (const head of [...heads[language], '1.1', '2.1']) expect(text).toContain(head);
    }
  });

  test('every sentence has its words, for the crew in both languages', () => {
    const said = coats.flatMap(({ day }) => day?.says ?? []);
    for (const { code } of said)
      for (const lang of ['en', 'es'] as const) expect(MESSAGES[lang].has(code), code).toBe(true);
    for (const { code } of [...found.verdict.reasons, ...found.notes]) expect(MESSAGES.en.has(code), code).toBe(true);
  });
});

test('without joints the day ends on tape, as wide as the hall', () => {
  const { coats, made } = hall({ joints: false });
  const [said] = coats[0]?.day?.says ?? [];
  expect(said?.code).toBe('spread-day-ends-tape');
  expect(made.entries[said?.figures?.metres ?? '']).toMatchObject({ value: 12, unit: 'm' });
  expect(coats[1]?.day?.says[0]?.code).toBe('spread-day-meets-tape');
});

test('a floor that fits the day stays in one piece', () => {
  const { coats } = hall({ until: '18:00' });
  expect(coats.map(({ state, day }) => [state, day])).toEqual([['planned', undefined]]);
});

test('hours too short for one strip: said with the figures, and the floor is planned in one go', () => {
  const { coats, found } = hall({ joints: false, until: '08:06' });
  expect(coats.map(({ day }) => day)).toEqual([undefined]);
  expect(found.verdict.reasons.map(({ code }) => code)).toContain('spread-longer-than-a-day');
});

test('a start chosen before the day begins is kept, and one chosen after its end waits for the morning', () => {
  const begins = (start: string) => hall({ start }).coats.map((coat) => coat.start?.slice(0, 16));
  expect(begins('07:00')).toEqual(['2026-05-13T07:00', '2026-05-14T08:00']);
  expect(begins('14:00')).toEqual(['2026-05-14T08:00', '2026-05-15T08:00']);
});
