import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { mostInSequence, sumInSequence } from '../formulas/spread.ts';
import type { DayLine, DaySpread } from './days.ts';
import { endInWords, linesOf, type Side } from './edges.ts';
import type { FloorPart } from './floor.ts';
import { INCH_M, type PlannedFacts, type Spreaded, TAPE_M } from './planned.ts';

/** A coat that is more than a day's work, and no way to part it by days was found. */
export function tooLong(
  needed: number,
  fullDay: number,
  names: Readonly<Record<string, string>>,
  trace: Trace,
): readonly Reason[] {
  const given = (name: string, minutes: number) =>
    trace.given(name, { value: minutes * 60, unit: 's', origin: 'reading', shows: 'duration' }).id;
  const figures = { needed: given('needed', needed), day: given('working-day', fullDay) };
  return [{ verdict: 'caution', code: 'spread-longer-than-a-day', names, figures }];
}

/** Sides of this day's squares along the line to the next day. */
function sidesOn({ result }: DaySpread, line: DayLine): readonly Side[] {
  const { count, link, x, y, cellM } = result.problem.squares;
  const upright = Math.abs(line.a[0] - line.b[0]) < 1e-9;
  const at = upright ? line.a[0] : line.a[1];
  const [across, along] = upright ? [x, y] : [y, x];
  return Array.from({ length: count }, (_, s) => s).flatMap((s) => {
    const middle = across[s] as number;
    const side = (upright ? 0 : 1) + (middle < at ? 0 : 2);
    if ((link[4 * s + side] as number) >= 0 || Math.abs(middle - at) > 0.75 * cellM) return [];
    return [{ upright, line: at, from: (along[s] as number) - cellM / 2, stop: line.stops[0] ?? -1 }];
  });
}

const jointsOf = ({ stops }: DayLine, part: FloorPart): string =>
  [...new Set(stops.map((stop) => part.stopLines[stop]?.name ?? `${stop + 1}`))].join(', ');

/** The plan of one day, with where it ends tonight, how it meets yesterday's film, and how many days there are. */
export function ofDay(
  one: Spreaded,
  days: readonly DaySpread[],
  index: number,
  { part, hands, door, ctx, common }: PlannedFacts,
  trace: Trace,
): Spreaded {
  const day = days[index] as DaySpread;
  const { squares } = day.result.problem;
  const names = { layer: common.name, day: `${index + 1}`, days: `${days.length}` };
  const metres = (name: string, value: number): Known<'m'> =>
    trace.taken(name, sumInSequence, { value, unit: 'm', shows: 'length', inputs: { along: hands.decides } });
  const area = trace.taken('area', sumInSequence, {
    value: squares.areaM2.reduce((sum, own) => sum + own, 0),
    unit: 'm²',
    shows: 'area',
    inputs: { along: part.areas.map(({ net }) => net.id) },
  });
  const says: Said[] = [];
  const before = days[index - 1]?.line;
  if (before) {
    const joint = jointsOf(before, part);
    const code = joint ? 'spread-day-meets-joint' : 'spread-day-meets-tape';
    says.push({ code, names: { ...names, joint } });
    says.push({ code: day.walkable ? 'spread-day-before-walkable' : 'spread-day-before-not-walkable', names });
  }
  let { pours } = one.coat;
  const last = pours.at(-1);
  if (day.line && last) {
    const sides = sidesOn(day, day.line);
    const mark = ctx.job.reader.units === 'imperial' ? INCH_M : TAPE_M;
    const ends = endInWords(sides, squares, part, door, hands.decides, mark, trace.within('night'));
    pours = [...pours.slice(0, -1), { ...last, ends, edge: [...last.edge, ...linesOf(sides, squares.cellM)] }];
    const joint = jointsOf(day.line, part);
    const figures = { metres: metres('night.metres', day.line.metres).id };
    says.push({ code: joint ? 'spread-day-ends-joint' : 'spread-day-ends-tape', names: { ...names, joint }, figures });
  }
  const coat = { ...one.coat, pours, day: { number: index + 1, of: days.length, area, says } };
  if (index > 0) return { ...one, coat };
  const work = trace.taken('work', mostInSequence, {
    value: days.reduce((sum, { result }) => sum + result.best.clock.minutes, 0) * 60,
    unit: 's',
    shows: 'duration',
    inputs: { along: hands.decides },
  });
  const reason: Reason = { verdict: 'caution', code: 'spread-takes-days', names, figures: { work: work.id } };
  return {
    ...one,
    coat,
    reasons: [...one.reasons, reason],
    notes: [...one.notes, { code: 'spread-days-same-hours', names }],
  };
}
