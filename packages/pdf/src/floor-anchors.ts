import type { FloorMark } from '@slabwright/core';
import type { Point, Ring } from './commands.ts';
import { type FloorFrame, outwards } from './floor-plan.ts';
import { POUR_DISC } from './floor-pours.ts';
import { along, onFloor, overlap, type Rectangle, sidesOf, touches } from './geometry.ts';
import { WALL } from './look.ts';

const SHARES = [0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95];

/** Points of a mark where a leader could begin. */
function candidates(mark: FloorMark, frame: FloorFrame): readonly Point[] {
  if (mark.kind === 'reading') return [frame.at(mark.at)];
  if (mark.kind === 'spot' || mark.kind === 'pour') return [frame.at(mark.at)];
  if (mark.kind === 'arrow') return [frame.at(mark.to)];
  if (mark.kind === 'sun') {
    const corners = mark.outline.map(frame.at);
    const count = corners.length || 1;
    const sum = corners.reduce(([x, y], [cx, cy]): Point => [x + cx / count, y + cy / count], [0, 0] as Point);
    return [sum];
  }
  if (mark.kind === 'exit') {
    const from = frame.at(mark.from);
    const to = frame.at(mark.to);
    const [nx, ny] = outwards(from, to, frame.rings);
    // A leader from a door in a level wall would run inside the wall: it begins just outside.
    const by = WALL + (Math.abs(ny) > 0.7 ? 5 : 0);
    const shares = Math.abs(ny) > 0.7 ? [0.9] : [0.5, 0.3, 0.7];
    return shares.map((share): Point => {
      const [x, y] = along([from, to], share);
      return [x + nx * by, y + ny * by];
    });
  }
  const points = mark.along.map(frame.at);
  return SHARES.map((share) => along(points, share));
}

/** One anchor for each mark, as far apart in height as the marks allow and rather near the labels. */
export function anchorsOf(marks: readonly FloorMark[], frame: FloorFrame, apart: number): readonly Point[] {
  const chosen: Point[] = [];
  for (const mark of marks) {
    let best: Point | undefined;
    let score = Number.NEGATIVE_INFINITY;
    for (const point of candidates(mark, frame)) {
      const distance = Math.min(apart, ...chosen.map(([, y]) => Math.abs(y - point[1])));
      const near = (point[0] - frame.left) / Math.max(frame.width, 1);
      const value = distance / apart + 0.5 * near;
      if (value > score) {
        best = point;
        score = value;
      }
    }
    chosen.push(best ?? [frame.left, frame.top]);
  }
  return chosen;
}

/** Everything on the floor that a text must not lie on. */
function obstacles(
  marks: readonly FloorMark[],
  frame: FloorFrame,
): {
  readonly segments: readonly (readonly [Point, Point])[];
  readonly areas: readonly Rectangle[];
} {
  const segments: (readonly [Point, Point])[] = frame.rings.flatMap((ring: Ring) => [...sidesOf(ring)]);
  const areas: Rectangle[] = [];
  for (const mark of marks) {
    if (mark.kind === 'joint' || mark.kind === 'crack' || mark.kind === 'stop line' || mark.kind === 'bail-out') {
      const points = mark.along.map(frame.at);
      points.slice(1).forEach((point, index) => {
        segments.push([points[index] ?? point, point]);
      });
    } else if (mark.kind === 'spot') {
      const [x, y] = frame.at(mark.at);
      const radius = Math.max(3, mark.radius * frame.scale) + 1;
      areas.push({ left: x - radius, right: x + radius, top: y - radius, bottom: y + radius });
    } else if (mark.kind === 'arrow') {
      segments.push([frame.at(mark.from), frame.at(mark.to)]);
    } else if (mark.kind === 'pour') {
      const [x, y] = frame.at(mark.at);
      areas.push({ left: x - POUR_DISC, right: x + POUR_DISC, top: y - POUR_DISC, bottom: y + POUR_DISC });
    } else if (mark.kind === 'reading') {
      const [x, y] = frame.at(mark.at);
      areas.push({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 });
    }
  }
  return { segments, areas };
}

const grown = ({ left, right, top, bottom }: Rectangle, by: number): Rectangle => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
});

const STEPS = 24;

/** A place on the bare floor for a text of this size, nearest the middle; nothing when no place is free. */
export function freePlace(
  size: { readonly width: number; readonly height: number },
  marks: readonly FloorMark[],
  frame: FloorFrame,
  leaders: readonly (readonly Point[])[],
  taken: readonly Rectangle[] = [],
): Rectangle | undefined {
  const { segments, areas } = obstacles(marks, frame);
  const lines = [
    ...segments,
    ...leaders.flatMap((leader) => leader.slice(1).map((point, index) => [leader[index] ?? point, point] as const)),
  ];
  const middle: Point = [frame.left + frame.width / 2, frame.top + frame.height / 2];
  let best: Rectangle | undefined;
  let nearest = Number.POSITIVE_INFINITY;
  for (let row = 0; row <= STEPS; row += 1) {
    for (let column = 0; column <= STEPS; column += 1) {
      const left = frame.left + ((frame.width - size.width) * column) / STEPS;
      const top = frame.top + ((frame.height - size.height) * row) / STEPS;
      const here = { left, top, right: left + size.width, bottom: top + size.height };
      const distance = Math.hypot(left + size.width / 2 - middle[0], top + size.height / 2 - middle[1]);
      if (distance >= nearest) continue;
      const clear = grown(here, 4);
      if (!onFloor([left, top], frame.rings) || !onFloor([here.right, here.bottom], frame.rings)) continue;
      if (lines.some(([from, to]) => touches(from, to, clear))) continue;
      if ([...areas, ...taken].some((area) => overlap(area, clear))) continue;
      best = here;
      nearest = distance;
    }
  }
  return best;
}
