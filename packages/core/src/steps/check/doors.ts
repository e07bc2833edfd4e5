import type { AreaDoor } from '../../drawing.ts';
import type { Job } from '../../job.ts';
import type { Issue } from '../../kernel/issue.ts';
import { DOOR_OFF_WALL, doorOnWall, joinRooms, LOOP_SLACK, layOut, type Point } from '../../science/shape/index.ts';
import { doorShapes, roomShapes } from '../survey/ring.ts';
import { type Path, unknownId } from './ids.ts';
import { sized } from './outline-sense.ts';

/** A door narrower than this lets nobody through with a roller, m; and two tapes differ by up to that much. No source. */
const NARROWEST = 0.45;

type Side = AreaDoor['sides'][number];
const at = ([x, y]: Side['from']): Point => [x.value, y.value];
const widthOf = ({ from, to }: Side): number => Math.hypot(to[0].value - from[0].value, to[1].value - from[1].value);

/** What one door says of itself: two different areas that exist, a wall to stand in, one width. */
function oneDoor(job: Job, door: AreaDoor, path: Path, rings: ReadonlyMap<string, readonly Point[]>): readonly Issue[] {
  const { units } = job.reader;
  const value = door.name ?? door.id;
  const known = job.areas.map(({ id }) => id);
  const called = (id: string): string => job.areas.find((area) => area.id === id)?.name ?? id;
  const [one, other] = door.sides;
  const unknown = door.sides.flatMap(({ area }, i) =>
    unknownId('check-area-unknown', area, known, [...path, 'sides', i, 'area']),
  );
  if (unknown.length > 0) return unknown;
  if (one.area === other.area) {
    return [{ code: 'check-door-to-itself', path, value, names: { area: called(one.area) } }];
  }
  const issues = door.sides.flatMap((side, i): readonly Issue[] => {
    const ring = rings.get(side.area);
    const names = { area: called(side.area) };
    const width = widthOf(side);
    const here = [...path, 'sides', i];
    if (width < NARROWEST) {
      const limits = [sized(NARROWEST, 'm', units)];
      const told = { ...names, width: sized(width, 'm', units) };
      return [{ code: 'check-door-narrow', path: here, value, limits, names: told }];
    }
    if (!ring || doorOnWall(ring, at(side.from), at(side.to))) return [];
    const limits = [sized(0, 'm', units), sized(DOOR_OFF_WALL, 'm', units)];
    return [{ code: 'check-door-off-the-wall', path: here, value, limits, names }];
  });
  const [first, second] = [widthOf(one), widthOf(other)];
  if (issues.length > 0 || Math.abs(first - second) <= DOOR_OFF_WALL + 1e-9) return issues;
  return [
    {
      code: 'check-door-widths',
      path,
      value,
      limits: [sized(0, 'm', units), sized(DOOR_OFF_WALL, 'm', units)],
      names: {
        area: called(one.area),
        other: called(other.area),
        first: sized(first, 'm', units),
        second: sized(second, 'm', units),
      },
    },
  ];
}

/** Doors that join areas: each for itself, then whether the rooms fit together by them. */
export function doorIssues(job: Job): readonly Issue[] {
  const doors = job.doors ?? [];
  if (doors.length === 0) return [];
  const rooms = roomShapes(job.areas);
  const rings = new Map(rooms.map(({ id, outline }) => [id, outline]));
  const single = doors.flatMap((door, i) => oneDoor(job, door, ['doors', i], rings));
  if (single.length > 0) return single;
  const { units } = job.reader;
  const called = (id: string): string => job.areas.find((area) => area.id === id)?.name ?? id;
  const laid = layOut(rooms, doorShapes(doors));
  const placeOf = (id: string): number => doors.findIndex((door) => door.id === id);
  const nameOf = (id: string): string => doors[placeOf(id)]?.name ?? id;
  const loops = laid.doors.flatMap(({ door, gap }): readonly Issue[] => {
    if (gap <= LOOP_SLACK) return [];
    const limits = [sized(0, 'm', units), sized(LOOP_SLACK, 'm', units)];
    const names = { distance: sized(gap, 'm', units) };
    return [{ code: 'check-doors-disagree', path: ['doors', placeOf(door)], value: nameOf(door), limits, names }];
  });
  const overlaps = laid.overlaps.map(({ areas: [area, other], area: shared }): Issue => {
    const last = laid.doors.findLast(({ areas }) => areas.includes(other)) ?? laid.doors[0];
    const names = { area: called(area), other: called(other), door: last ? nameOf(last.door) : '' };
    const path: Path = ['doors', last ? placeOf(last.door) : 0];
    return { code: 'check-rooms-overlap', path, value: sized(shared, 'm²', units), names };
  });
  const open = new Set(joinRooms(laid).open);
  const crowded = laid.doors.flatMap(({ door, gap, areas: [area, other] }): readonly Issue[] => {
    if (open.has(door) || gap > LOOP_SLACK) return [];
    const names = { area: called(area), other: called(other) };
    return [{ code: 'check-doors-overlap', path: ['doors', placeOf(door)], value: nameOf(door), names }];
  });
  return [...loops, ...crowded, ...overlaps];
}
