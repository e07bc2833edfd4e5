import { spread } from '@slabwright/core';
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

/** Map and pours of a floor in the instance format, or why none were found. Metres and minutes, as in the file. */
export function floorText(found: Exclude<spread.SpreadResult, { kind: 'issues' }>): string {
  const { problem, check } = found;
  const { startMin } = problem.question.clock;
  if (found.kind === 'none') {
    const certain = spread.arithmeticReasons(problem);
    const reasons = [...certain, spread.searchedReason(problem, check.coldM, check.lateMin, check.maxAgeMin)].map(
      ({ code, figures }) => {
        const shown = Object.entries(figures).map(([name, value]) => `${name} ${round(value)}`);
        return `  ${code.replace('spread/', '').replaceAll('-', ' ')}: ${shown.join(', ')}`;
      },
    );
    return `${['No order of pours keeps every limit.', ...reasons].join('\n')}\n`;
  }
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
