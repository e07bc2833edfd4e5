import { type Area, answered, formatQuantity, type Job, type Plan } from '@slabwright/core';
import type { AreaDrawing, Dot, Units } from './api.ts';

type Typed = readonly [{ readonly value: number }, { readonly value: number }];

const dot = ([x, y]: Typed): Dot => [x.value, y.value];
const dots = (line: readonly Typed[] | undefined): readonly Dot[] => (line ?? []).map(dot);

function overall(outline: readonly Dot[], axis: 0 | 1, units: Units, locale: string): string {
  if (outline.length === 0) return '';
  const along = outline.map((corner) => corner[axis]);
  const length = Math.max(...along) - Math.min(...along);
  return formatQuantity(length, 'm', { system: units, locale, kind: 'length' }).text;
}

function areaDrawing(area: Area, solved: readonly Dot[] | undefined, units: Units, locale: string): AreaDrawing {
  const outline = area.outline ? dots(area.outline) : (solved ?? []);
  return {
    id: area.id,
    name: area.name,
    outline,
    holes: (area.holes ?? []).map((hole) => dots(hole.outline)),
    exits: (area.exits ?? []).map(({ id, name, from, to, shut, outside }) => ({
      id,
      name: name ?? id,
      from: dot(from),
      to: dot(to),
      shut: shut ?? false,
      outside: outside ?? false,
    })),
    joints: (area.joints ?? []).map(({ id, kind, along }) => ({ id, kind, along: dots(along) })),
    cracks: (area.cracks ?? []).map(({ id, along }) => ({ id, along: dots(along) })),
    spots: (area.spots ?? []).map(({ id, kind, at, area: size }) => ({ id, kind, at: dot(at), area: size.value })),
    points: (area.points ?? []).map(({ id, name, at }) => ({ id, name: name ?? id, at: dot(at) })),
    sun: (area.sun ?? []).map(({ id, outline: patch, from, until }) => ({
      id,
      outline: dots(patch),
      ...(from ? { from } : {}),
      ...(until ? { until } : {}),
    })),
    width: overall(outline, 0, units, locale),
    depth: overall(outline, 1, units, locale),
  };
}

/** Drawings of all areas; a taped room takes the outline its survey solved. */
export function drawingsOf(job: Job, plan: Plan, units: Units, locale: string): readonly AreaDrawing[] {
  const solved = new Map(
    answered(plan.survey) ? plan.survey.areas.map(({ id, outline }) => [id, outline as readonly Dot[]]) : [],
  );
  return job.areas.map((area) => areaDrawing(area, solved.get(area.id), units, locale));
}
