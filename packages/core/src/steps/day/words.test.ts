import { describe, expect, test } from 'vitest';
import calendar from '../../words/en/calendar.json' with { type: 'json' };
import climate from '../../words/en/climate.json' with { type: 'json' };
import day from '../../words/en/day.json' with { type: 'json' };
import schedule from '../../words/en/schedule.json' with { type: 'json' };
import { MESSAGES } from '../../words/messages.ts';

/** Sources as text, so that a code without words, or words without a code, cannot pass. */
const files = import.meta.glob(['../../*.ts', '../**/*.ts', '../../science/**/*.ts', '../../paper-content/**/*.ts'], {
  query: '?raw',
  import: 'default',
  eager: true,
}) as Readonly<Record<string, string>>;
const sources = Object.entries(files).filter(([path]) => !/\.(test|prop)\.ts$/.test(path));
const text = sources.map(([, source]) => source).join('\n');
const own = sources.filter(([path]) => /science\/(heat|windows|weather|cure)\//.test(path)).map(([, source]) => source);
const codesIn = (source: string, families: string): readonly string[] =>
  [...source.matchAll(new RegExp(`'@?((?:${families})-[a-z-]*[a-z])'`, 'g'))].map(([, code]) => code ?? '');

/** Whole codes as they stand in the source; elsewhere than in its own laws, `slab-…` names numbers, not sentences. */
const written = new Set([
  ...codesIn(text, 'day|schedule|calendar|weather|cure|window|lift'),
  ...codesIn(own.join('\n'), 'slab'),
]);
/** Reasons of the search are said as they are in a stretch, and with their coat at the start: two sentences each. */
const reasons = [...written].filter((code) => /^(window|lift)-/.test(code));
const ofStart = reasons.map((code) => `day-${code}`);
/** Said at the start only, where somebody chose one. */
const CHOSEN_ONLY = new Set(['window-recoat-not-surely-open']);
/** Put together where they are said: the beginning stands in the source, the ends are these. */
const MADE: readonly (readonly [string, readonly string[]])[] = [
  ['day-material-', ['cold', 'cold-lift', 'hot', 'hot-lift']],
  ['day-promise-', ['likely', 'even', 'unlikely', 'open']],
  ['calendar-use-', ['foot', 'light', 'vehicle', 'full']],
];
const made = MADE.flatMap(([stem, ends]) => ends.map((end) => `${stem}${end}`));
const ABSENT = ['rain', 'wind', 'pressure'].map((field) => `weather-${field}-not-given`);
/** `schedule-slow-crew` with its way out. */
const LIFTS = ['schedule-slow-crew-lift'];
/** Names of numbers that only look like codes. */
const NOT_CODES = new Set(['day-hottest', 'day-coldest']);

const all = new Set([...written, ...ofStart, ...made, ...ABSENT, ...LIFTS].filter((code) => !NOT_CODES.has(code)));

describe('words of the day, the schedule, the weather and the calendar', () => {
  test('the beginnings of codes that are put together stand in the source', () => {
    for (const [stem] of MADE) expect(text, stem).toContain(`${stem}\${`);
    expect(text).toContain('`weather-$' + '{field}-not-given`');
  });

  test('every code has English words', () => {
    expect(all.size).toBeGreaterThan(120);
    const missing = [...all].filter((code) => !MESSAGES.en.has(code) && !CHOSEN_ONLY.has(code));
    expect(missing).toEqual([]);
  });

  test('no words are dead', () => {
    const keys = [calendar, climate, day, schedule].flatMap((words) => Object.keys(words));
    expect(keys.filter((code) => !all.has(code))).toEqual([]);
  });

  test('what a crew sheet or its calendar can say has Spanish', () => {
    const shown = [...all].filter(
      (code) =>
        /^(day-(window|lift|holds|start-proposed|slab-never)|calendar|cure)-?/.test(code) && MESSAGES.en.has(code),
    );
    expect(shown.length).toBeGreaterThan(50);
    expect(shown.filter((code) => !MESSAGES.es.has(code))).toEqual([]);
  });
});
