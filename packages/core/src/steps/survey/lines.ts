import type { Area } from '../../drawing.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, givenField } from '../context.ts';
import { lineLength } from '../formulas/survey.ts';
import type { CrackMeasure, JointMeasure, SpotMeasure } from '../results.ts';
import { type TypedPoint, tracePoints } from './outline.ts';

function lengthOf(trace: Trace, along: readonly TypedPoint[]) {
  const { x, y } = tracePoints(trace, 'point', along);
  return trace.figure('length', lineLength, { pointsX: x, pointsY: y });
}

/** Two widths of one crack read on different days that differ by more than this show that it moves. An assumption. */
const MOVES_BEYOND = 0.05e-3;

type Crack = NonNullable<Area['cracks']>[number];

/** What was said about a crack, else what its readings show: a change between them means it moves. */
function movesOf(crack: Crack): CrackMeasure['moves'] {
  if (crack.moves === 'yes' || crack.moves === 'no') return crack.moves;
  const widths = crack.widths.map(({ width }) => width.value);
  if (widths.length < 2) return 'not known';
  // Readings of one temperature prove nothing about the next season, so a steady crack stays not known.
  return Math.max(...widths) - Math.min(...widths) > MOVES_BEYOND ? 'yes' : 'not known';
}

export function measureCracks(trace: Trace, area: Area): readonly CrackMeasure[] {
  return (area.cracks ?? []).map((crack) => {
    const t = trace.within(`crack.${crack.id}`);
    const readings = crack.widths.map(({ width, on }, i) =>
      givenField(t, `width.${i}`, width, 'reading', { when: on }),
    );
    const width = readings.reduce<Known<'m'> | undefined>((w, r) => (w && w.value >= r.value ? w : r), undefined);
    return {
      id: crack.id,
      area: area.id,
      length: lengthOf(t, crack.along),
      ...(width ? { width } : {}),
      moves: movesOf(crack),
    };
  });
}

export const measureJoints = (trace: Trace, area: Area): readonly JointMeasure[] =>
  (area.joints ?? []).map(({ id, kind, along }) => ({
    id,
    area: area.id,
    kind,
    length: lengthOf(trace.within(`joint.${id}`), along),
  }));

export const measureSpots = (trace: Trace, area: Area): readonly SpotMeasure[] =>
  (area.spots ?? []).map((spot) => {
    const t = trace.within(`spot.${spot.id}`);
    const extent = givenFact(t, 'extent', spot.area);
    const depth = spot.depth ? { depth: givenFact(t, 'depth', spot.depth) } : {};
    return { id: spot.id, area: area.id, kind: spot.kind, extent, ...depth };
  });
