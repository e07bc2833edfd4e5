import { type Area, answered, formatQuantity, type Job, layOut, type Plan } from '@slabwright/core';
import type { AreaDrawing, Dot, RoomsTogether, Units } from './api.ts';

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

type Doors = NonNullable<Job['doors']>;

/** A door to another room is an opening in the wall of each. */
function doorsOf(area: Area, doors: Doors, job: Job): AreaDrawing['exits'] {
  return doors.flatMap(({ id, name, sides, shut = false }) =>
    sides.flatMap(({ area: here, from, to }, i) => {
      if (here !== area.id) return [];
      const there = sides[i === 0 ? 1 : 0].area;
      const other = job.areas.find((one) => one.id === there)?.name ?? there;
      return [{ id, name: name ?? other, from: dot(from), to: dot(to), shut, outside: false }];
    }),
  );
}

function togetherOf(
  areas: readonly AreaDrawing[],
  doors: Doors,
  say: (value: number, kind: 'length' | 'area') => string,
): RoomsTogether | null {
  const laid = layOut(
    areas.filter(({ outline }) => outline.length > 2),
    doors.map(({ id, sides, wall }) => ({
      id,
      sides: [
        { area: sides[0].area, from: dot(sides[0].from), to: dot(sides[0].to) },
        { area: sides[1].area, from: dot(sides[1].from), to: dot(sides[1].to) },
      ],
      wall: wall?.value,
    })),
  );
  if (laid.doors.length === 0) return null;
  const named = new Map(doors.map((door) => [door.id, door]));
  return {
    rooms: laid.rooms.map(({ area, cos, sin, dx, dy }) => ({ area, cos, sin, dx, dy })),
    doors: laid.doors.map(({ door, areas: joined, sides, gap }) => ({
      id: door,
      name: named.get(door)?.name ?? door,
      shut: named.get(door)?.shut ?? false,
      areas: joined,
      sides: sides as RoomsTogether['doors'][number]['sides'],
      misses: gap < LEAST_GAP ? '' : say(gap, 'length'),
    })),
    overlaps: laid.overlaps.map(({ areas: over, area }) => ({ areas: over, text: say(area, 'area') })),
  };
}

/** Less than a tape is read to. */
const LEAST_GAP = 0.002;

/** Drawings of all areas, and the rooms put together by their doors. A taped room takes the outline its survey solved. */
export function drawingsOf(
  job: Job,
  plan: Plan,
  units: Units,
  locale: string,
): { readonly areas: readonly AreaDrawing[]; readonly together: RoomsTogether | null } {
  const solved = new Map(
    answered(plan.survey) ? plan.survey.areas.map(({ id, outline }) => [id, outline as readonly Dot[]]) : [],
  );
  const doors = job.doors ?? [];
  const areas = job.areas.map((area) => {
    const drawn = areaDrawing(area, solved.get(area.id), units, locale);
    return { ...drawn, exits: [...drawn.exits, ...doorsOf(area, doors, job)] };
  });
  const say = (value: number, kind: 'length' | 'area'): string =>
    formatQuantity(value, kind === 'area' ? 'm²' : 'm', { system: units, locale, kind }).text;
  return { areas, together: doors.length > 0 ? togetherOf(areas, doors, say) : null };
}
