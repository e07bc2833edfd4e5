import { formatQuantity, spread } from '@slabwright/core';
import { plainVoice } from '../voice.ts';
import { columns } from './lines.ts';

const round = (value: number, digits = 1): string => value.toFixed(digits);

function clock(minutes: number): string {
  const whole = ((Math.floor(minutes) % 1440) + 1440) % 1440;
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

/** An issue of the planner as a sentence: field, value, allowed range, way out. */
export function issueLine({ code, path, value, limits }: spread.SpreadIssue): string {
  const text = (given: number | string): string =>
    typeof given === 'number' ? `${Math.round(given * 1000) / 1000}` : given;
  const all = Object.fromEntries(Object.entries(limits).map(([name, limit]) => [name, text(limit)]));
  const names = { path, value: text(value), low: '', high: '', unit: '', lowestLane: '', ...all };
  return plainVoice().say({ code: code.replaceAll('/', '-'), names });
}

const UNITS = [
  [/M2PerMin$/, 1 / 60, 'm²/s', 'area-rate'],
  [/M2$/, 1, 'm²', 'area'],
  [/L$/, 1e-3, 'm³', 'volume'],
  [/Min$/, 60, 's', 'duration'],
  [/M$|^metres$/, 1, 'm', 'length'],
] as const;

/** Figures of the planner as a person reads them, each also as a plain number for its plural. */
function shownFigures(figures: Readonly<Record<string, number>>): Readonly<Record<string, string>> {
  const all: Record<string, string> = {};
  for (const [name, value] of Object.entries(figures)) {
    const found = UNITS.find(([ends]) => ends.test(name));
    const shown = found
      ? formatQuantity(value * found[1], found[2], { system: 'metric', locale: 'en-US', kind: found[3] }).text
      : `${value}`;
    all[name] = name === 'startMin' || name === 'insteadMin' ? clock(value) : shown;
    all[`${name}N`] = `${value}`;
  }
  return { ...all, ...(all.startMin ? { at: all.startMin } : {}) };
}

/** Why no order was found, and the smallest change of each kind that was planned and works. */
function noneText(
  { problem, check }: Extract<spread.SpreadResult, { kind: 'none' }>,
  repairs: readonly spread.RepairTrial[],
): string {
  const { name: layer, stopLines } = problem.question;
  const say = (code: string, names: Readonly<Record<string, string>>): string =>
    plainVoice().say({ code: code.replaceAll('/', '-'), names: { layer, ...names } });
  const [certain] = spread.arithmeticReasons(problem);
  const reason = certain ?? spread.searchedReason(problem, check.coldM, check.lateMin, check.maxAgeMin);
  const mean = reason.code === 'spread/batch-outlasts-working-time' && !reason.certain ? '-on-the-mean' : '';
  const tried = repairs.map(({ kind, repair }) => {
    if (!repair) return `  · ${say('spread-repair-none', { kind: `@spread-kind-${kind.replaceAll(' ', '-')}` })}`;
    const { line } = repair.figures;
    const joint = line === undefined ? {} : { joint: `${stopLines[line]?.kind ?? 'line'} ${line + 1}` };
    return `  → ${say(`spread-${repair.code}`, { ...shownFigures(repair.figures), ...joint })}`;
  });
  return `${[
    'No order of pours keeps every limit.',
    `  ■ ${say(`${reason.code}${mean}`, shownFigures(reason.figures))}`,
    ...tried,
  ].join('\n')}\n`;
}

/** Map and pours of a floor in the instance format, or why none were found. Metres and minutes, as in the file. */
export function floorText(
  found: Exclude<spread.SpreadResult, { kind: 'issues' }>,
  repairs: readonly spread.RepairTrial[] = [],
): string {
  const { problem, check } = found;
  const { startMin } = problem.question.clock;
  if (found.kind === 'none') return noneText(found, repairs);
  const map = spread.textMap(problem.squares, found.best.clock.pourOf);
  const rows = spread
    .pourSheets(problem, found.best)
    .map((pour) => [
      `${pour.pour}`,
      `${round(pour.mixLitres)} L`,
      `${round(pour.areaM2)} m²`,
      `mix ${clock(startMin + pour.mixFromMin)}`,
      `spread ${clock(startMin + pour.startMin)} to ${clock(startMin + pour.endMin)}`,
      `place by ${clock(startMin + pour.mixedMin + pour.workingMin)}`,
    ]);
  const lines = [
    ...map.map((row) => `  ${[...row].join(' ')}`),
    '',
    ...columns(rows, { gap: 2, indent: 2, right: [0, 1, 2] }),
    '',
    `  oldest wet edge ${round(check.maxAgeMin)} min, seams ${round(check.seamM)} m, walking ${round(check.walkM)} m, left over ${round(check.leftoverL)} L, ${round(check.minutes)} min in all`,
    ...(found.openTimeAssumed ? ['  The open time is assumed.'] : []),
  ];
  return `${lines.join('\n')}\n`;
}
