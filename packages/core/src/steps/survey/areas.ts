import type { Area } from '../../drawing.ts';
import type { Given } from '../../kernel/entry.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { outlineArea, outlinePerimeter } from '../../science/shape/index.ts';
import { allEdges, edgeToWork, netArea } from '../formulas/survey.ts';
import type { AreaMeasure } from '../results.ts';
import { measureCracks, measureJoints, measureSpots } from './lines.ts';
import { drawn, type Outline, outlineFromCorners, tracePoints } from './outline.ts';
import { outlineFromTape } from './tape.ts';
import { measureVerticals } from './verticals.ts';

export interface Measured {
  readonly areas: readonly AreaMeasure[];
  /** Areas that could not be measured, each with the reason. */
  readonly reasons: readonly Reason[];
  readonly notes: readonly Said[];
}

function openings(trace: Trace, area: Area): readonly Given<'m'>[] {
  return (area.exits ?? []).map((exit) =>
    trace.given(`exit.${exit.id}`, {
      value: Math.hypot(exit.to[0].value - exit.from[0].value, exit.to[1].value - exit.from[1].value),
      unit: 'm',
      origin: 'reading',
      where: exit.name ?? exit.id,
      shows: 'length',
    }),
  );
}

function measure(trace: Trace, area: Area, { ring, tapeError }: Outline): AreaMeasure {
  const holes = (area.holes ?? []).map((hole) => ({
    id: hole.id,
    ring: tracePoints(trace, `hole.${hole.id}`, hole.outline),
  }));
  const corners = { cornersX: ring.x, cornersY: ring.y };
  const grossArea = trace.figure('gross', outlineArea, corners);
  const holeAreas = holes.map((hole) =>
    trace.figure(`hole.${hole.id}.area`, outlineArea, { cornersX: hole.ring.x, cornersY: hole.ring.y }),
  );
  const perimeters = [
    trace.figure('outline-length', outlinePerimeter, corners),
    ...holes.map((hole) =>
      trace.figure(`hole.${hole.id}.edge`, outlinePerimeter, { cornersX: hole.ring.x, cornersY: hole.ring.y }),
    ),
  ];
  const perimeter = trace.figure('perimeter', allEdges, { perimeters, tapeError });
  return {
    id: area.id,
    name: area.name,
    outline: drawn(ring.points),
    holes: holes.map((hole) => drawn(hole.ring.points)),
    net: trace.figure('net', netArea, { grossArea, holeAreas, tapeError }),
    edge: trace.figure('edge', edgeToWork, { edges: perimeter, openings: openings(trace, area) }),
    perimeter,
    verticals: measureVerticals(trace, area),
    cracks: measureCracks(trace, area),
    joints: measureJoints(trace, area),
    spots: measureSpots(trace, area),
  };
}

const notMeasured = (area: Area, why: string): Reason => ({
  verdict: 'not known',
  code: 'survey-area-not-measured',
  names: { area: area.name, why: `@survey-why-${why}` },
  lift: { code: 'survey-area-not-measured-lift', names: { area: area.name } },
});

const SAID_WHY = new Set([
  'outline-crosses-itself',
  'outline-needs-three-corners',
  'holes-larger-than-the-floor',
  'openings-longer-than-the-walls',
]);

/** The outline of a taped room; what stands against it is added to the reasons. */
function tapedOutline(trace: Trace, area: Area, reasons: Reason[], notes: Said[]): Outline | undefined {
  const taped = outlineFromTape(trace, area);
  if (!taped) reasons.push(notMeasured(area, 'no-drawing'));
  else if (!taped.ok) reasons.push(taped.reason);
  else {
    reasons.push(...taped.reasons);
    notes.push(...taped.notes);
    return taped.outline;
  }
  return undefined;
}

/** Measures every area that can be; one that cannot is named and left out, and the others go on. */
export function measureAreas(trace: Trace, areas: readonly Area[]): Measured {
  const found: AreaMeasure[] = [];
  const reasons: Reason[] = [];
  const notes: Said[] = [];
  let assumedTape = false;
  for (const area of areas) {
    const t = trace.within(area.id);
    try {
      const outline = area.outline ? outlineFromCorners(t, area.outline) : tapedOutline(t, area, reasons, notes);
      if (!outline) continue;
      found.push(measure(t, area, outline));
      assumedTape ||= outline.assumed;
    } catch (trouble) {
      if (!(trouble instanceof FormulaRefused)) throw trouble;
      const why = trouble.refusal.code;
      reasons.push(notMeasured(area, SAID_WHY.has(why) ? why : 'outside-range'));
    }
  }
  if (assumedTape) notes.unshift({ code: 'survey-assumed-tape-error' });
  return { areas: found, reasons, notes };
}
