import type { Area } from '../../drawing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { coveFace, coveFill, flightFace, wallFace } from '../../science/shape/index.ts';
import { givenCount, givenFact } from '../context.ts';
import { riserLength } from '../formulas/survey.ts';
import type { VerticalMeasure } from '../results.ts';

/** Stem walls, coves and flights of steps of one area: what is coated beside the floor itself. */
export function measureVerticals(trace: Trace, area: Area): readonly VerticalMeasure[] {
  const walls = (area.stemWalls ?? []).map((wall): VerticalMeasure => {
    const t = trace.within(`stem-wall.${wall.id}`);
    const length = givenFact(t, 'length', wall.length);
    const height = givenFact(t, 'height', wall.height);
    return { id: wall.id, kind: 'stem wall', length, face: t.figure('face', wallFace, { lengths: [length], height }) };
  });
  const coves = (area.coves ?? []).map((cove): VerticalMeasure => {
    const t = trace.within(`cove.${cove.id}`);
    const length = givenFact(t, 'length', cove.length);
    const radius = givenFact(t, 'radius', cove.radius);
    const face = t.figure('face', coveFace, { radius, length });
    return { id: cove.id, kind: 'cove', length, face, fill: t.figure('fill', coveFill, { radius, length }) };
  });
  const flights = (area.steps ?? []).map((flight): VerticalMeasure => {
    const t = trace.within(`steps.${flight.id}`);
    const riserCount = givenCount(t, 'risers', flight.risers, 'reading');
    const riser = givenFact(t, 'riser', flight.riser);
    const tread = givenFact(t, 'tread', flight.tread);
    const width = givenFact(t, 'width', flight.width);
    const face = t.figure('face', flightFace, { riserCount, riser, tread, width });
    return { id: flight.id, kind: 'steps', length: t.figure('length', riserLength, { riserCount, width }), face };
  });
  return [...walls, ...coves, ...flights];
}
