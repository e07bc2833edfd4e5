import type { Dot } from '../worker/api.ts';

/** Outlines out of a DXF drawing: closed polylines and rings of lines and arcs, in metres. */

/** The few parts of a parsed drawing that are looked at. */
export interface DxfDrawing {
  readonly header?: Readonly<Record<string, unknown>>;
  readonly entities?: readonly DxfEntity[];
}

interface DxfVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

export interface DxfEntity {
  readonly type: string;
  readonly layer?: string;
  readonly vertices?: readonly DxfVertex[];
  readonly shape?: boolean;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
}

/** Metres to one drawing unit by the number that stands in $INSUNITS. */
export const DXF_UNITS: Readonly<Record<number, { readonly name: string; readonly metres: number }>> = {
  1: { name: 'inches', metres: 0.0254 },
  2: { name: 'feet', metres: 0.3048 },
  4: { name: 'millimetres', metres: 0.001 },
  5: { name: 'centimetres', metres: 0.01 },
  6: { name: 'metres', metres: 1 },
};

export interface DxfOutline {
  readonly layer: string;
  /** In drawing units, without the first corner again at the end. */
  readonly ring: readonly Dot[];
}

export interface DxfRead {
  readonly outlines: readonly DxfOutline[];
  /** Key of DXF_UNITS, or null when the drawing does not say and a person must. */
  readonly unit: number | null;
  /** What was left out, by kind. */
  readonly leftOut: Readonly<Record<string, number>>;
}

/** Chord of an arc is left at most this share of its radius: 1 in 400. */
const FLATNESS = 1 / 400;

/** Points along an arc from one point to another, without the first. A bulge is the tangent of a quarter of the angle. */
export function bulgePoints(from: Dot, to: Dot, bulge: number): readonly Dot[] {
  const angle = 4 * Math.atan(bulge);
  const chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (bulge === 0 || chord === 0) return [to];
  const radius = chord / 2 / Math.sin(angle / 2);
  const apothem = radius * Math.cos(angle / 2);
  const [ux, uy] = [(to[0] - from[0]) / chord, (to[1] - from[1]) / chord];
  const centre: Dot = [(from[0] + to[0]) / 2 - uy * apothem, (from[1] + to[1]) / 2 + ux * apothem];
  return arcPoints(centre, Math.abs(radius), Math.atan2(from[1] - centre[1], from[0] - centre[0]), angle, to);
}

function arcPoints(centre: Dot, radius: number, start: number, angle: number, last?: Dot): readonly Dot[] {
  const most = 2 * Math.acos(1 - FLATNESS);
  const steps = Math.max(1, Math.ceil(Math.abs(angle) / most));
  return Array.from({ length: steps }, (_, i): Dot => {
    if (i === steps - 1 && last) return last;
    const at = start + (angle * (i + 1)) / steps;
    return [centre[0] + radius * Math.cos(at), centre[1] + radius * Math.sin(at)];
  });
}

const same = (a: Dot, b: Dot, near: number): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= near;

function pathOf({ type, vertices, shape, center, radius, startAngle, endAngle }: DxfEntity): readonly Dot[] {
  if (type === 'CIRCLE' && center && radius) {
    return [[center.x + radius, center.y], ...arcPoints([center.x, center.y], radius, 0, 2 * Math.PI)];
  }
  if (type === 'ARC' && center && radius && startAngle !== undefined && endAngle !== undefined) {
    const angle = (endAngle - startAngle + 4 * Math.PI) % (2 * Math.PI) || 2 * Math.PI;
    const start: Dot = [center.x + radius * Math.cos(startAngle), center.y + radius * Math.sin(startAngle)];
    return [start, ...arcPoints([center.x, center.y], radius, startAngle, angle)];
  }
  const [first] = vertices ?? [];
  if (!vertices || !first) return [];
  const pairs = shape ? vertices.length : vertices.length - 1;
  const path: Dot[] = [[first.x, first.y]];
  for (let i = 0; i < pairs; i++) {
    const [a, b] = [vertices[i] as DxfVertex, vertices[(i + 1) % vertices.length] as DxfVertex];
    path.push(...bulgePoints([a.x, a.y], [b.x, b.y], a.bulge ?? 0));
  }
  return path;
}

/** Joins open pieces of one layer end to end into rings. */
function joined(pieces: readonly (readonly Dot[])[], near: number): readonly (readonly Dot[])[] {
  const closed = (path: readonly Dot[]): boolean => path.length > 3 && same(path[0] as Dot, path.at(-1) as Dot, near);
  const rings: (readonly Dot[])[] = pieces.filter(closed).map((path) => path.slice(0, -1));
  const left = pieces.filter((path) => !closed(path));
  while (left.length > 0) {
    let path = [...(left.shift() as readonly Dot[])];
    for (let i = 0; i < left.length; ) {
      const end = path.at(-1) as Dot;
      const piece = left[i] as readonly Dot[];
      const forwards = same(piece[0] as Dot, end, near);
      if (!forwards && !same(piece.at(-1) as Dot, end, near)) {
        i += 1;
        continue;
      }
      path = [...path, ...(forwards ? piece : [...piece].reverse()).slice(1)];
      left.splice(i, 1);
      i = 0;
    }
    if (closed(path)) rings.push(path.slice(0, -1));
  }
  return rings;
}

const DRAWN = new Set(['LINE', 'LWPOLYLINE', 'POLYLINE', 'ARC', 'CIRCLE']);

const areaOf = (ring: readonly Dot[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length] as Dot;
      return sum + (x * ny - nx * y) / 2;
    }, 0),
  );

/** Closed outlines of a drawing, the largest first. Blocks are not opened; they are counted among what was left out. */
export function outlinesOf({ header, entities }: DxfDrawing): DxfRead {
  const leftOut: Record<string, number> = {};
  const layers = new Map<string, (readonly Dot[])[]>();
  for (const entity of entities ?? []) {
    const path = DRAWN.has(entity.type) ? pathOf(entity) : [];
    if (path.length < 2) {
      leftOut[entity.type] = (leftOut[entity.type] ?? 0) + 1;
      continue;
    }
    const layer = entity.layer ?? '0';
    layers.set(layer, [...(layers.get(layer) ?? []), path]);
  }
  const all = [...layers.values()].flat(2);
  const size = Math.max(...all.flatMap(([x, y]) => [Math.abs(x), Math.abs(y)]), 0);
  const near = size * 1e-6;
  const outlines = [...layers].flatMap(([layer, pieces]) =>
    joined(pieces, near).map((ring): DxfOutline => ({ layer, ring })),
  );
  outlines.sort((a, b) => areaOf(b.ring) - areaOf(a.ring));
  const said = Number(header?.$INSUNITS);
  return { outlines, unit: DXF_UNITS[said] ? said : null, leftOut };
}

/** An outline in metres, its lowest left corner at the origin, as a tape would count. */
export function inMetres(ring: readonly Dot[], metresPerUnit: number): readonly Dot[] {
  const [left, low] = [Math.min(...ring.map(([x]) => x)), Math.min(...ring.map(([, y]) => y))];
  return ring.map(([x, y]) => [(x - left) * metresPerUnit, (y - low) * metresPerUnit]);
}

export const dxfArea = areaOf;
