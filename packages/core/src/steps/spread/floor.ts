import type { Area } from '../../drawing.ts';
import type { Said } from '../../kernel/said.ts';
import type * as planner from '../../spread/index.ts';
import type { OptionContext } from '../context.ts';
import { coatedAreas } from '../quantities/coated-areas.ts';
import type { AreaMeasure, SurveyPlan } from '../results.ts';

type Point = planner.Point;

/** Floor that hangs together: one area, or several that doors join. */
export interface FloorPart {
  readonly areas: readonly AreaMeasure[];
  readonly outline: planner.Ring;
  readonly holes: readonly planner.Ring[];
  readonly walls: readonly (readonly [Point, Point])[];
  readonly exits: readonly (planner.Exit & { readonly name: string })[];
  readonly stopLines: readonly (planner.StopLine & { readonly name: string })[];
  readonly notes: readonly Said[];
}

type Pair = readonly [{ readonly value: number }, { readonly value: number }];
const pair = ([x, y]: Pair): Point => [x.value, y.value];

/** Joints of the drawing, and the tape lines somebody chose for this option. */
function stopLinesOf({ option }: OptionContext, area: Area): FloorPart['stopLines'] {
  const joints = (area.joints ?? []).flatMap(({ id, along }) =>
    along.slice(1).map((to, i) => ({ a: pair(along[i] as Pair), b: pair(to), kind: 'joint' as const, name: id })),
  );
  const tapes = (option.stopLines ?? [])
    .filter((line) => line.area === area.id)
    .map(({ id, from, to }) => ({ a: pair(from), b: pair(to), kind: 'tape' as const, name: id }));
  return [...joints, ...tapes];
}

const exitsOf = (area: Area): FloorPart['exits'] =>
  (area.exits ?? [])
    .filter(({ shut }) => !shut)
    .map(({ id, name, from, to, outside }) => ({
      a: pair(from),
      b: pair(to),
      outside: outside === true,
      name: name ?? id,
    }));

/** From here on, on both sides of a door, lanes come towards it from two sides: an assumption, about three lanes. */
const BESIDE_DOOR_M = 1.5;
/** A hole as large as two lanes parts them; a column is gone round. */
const PARTS_LANES_M = 1;

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** A door with much wall on both sides: nobody walks out along a side wall. */
function inMidWall(outline: planner.Ring, { a, b }: planner.Exit): boolean {
  return outline.some((from, i) => {
    const to = outline[(i + 1) % outline.length] as Point;
    const length = distance(from, to);
    const on = (p: Point): boolean => Math.abs(distance(from, p) + distance(p, to) - length) < 0.02;
    if (!on(a) || !on(b)) return false;
    const near = Math.min(distance(from, a), distance(from, b));
    const far = Math.min(distance(to, a), distance(to, b));
    return near >= BESIDE_DOOR_M && far >= BESIDE_DOOR_M;
  });
}

function notesOn(area: Area, measure: AreaMeasure, exits: FloorPart['exits']): readonly Said[] {
  const [widest] = [...exits].sort((p, q) => distance(q.a, q.b) - distance(p.a, p.b));
  const middle = widest && inMidWall(measure.outline, widest);
  const large = (area.holes ?? []).filter((_, i) => {
    const ring = measure.holes[i] ?? [];
    const span = (axis: 0 | 1): number => Math.max(...ring.map((p) => p[axis])) - Math.min(...ring.map((p) => p[axis]));
    return ring.length > 0 && Math.min(span(0), span(1)) >= PARTS_LANES_M;
  });
  return [
    ...(middle ? [{ code: 'spread-door-in-mid-wall', names: { door: widest.name } }] : []),
    ...large.map(({ id, name }) => ({ code: 'spread-hole-parts-lanes', names: { hole: name ?? id } })),
  ];
}

function partOf(ctx: OptionContext, area: Area, measure: AreaMeasure): FloorPart {
  const exits = exitsOf(area);
  return {
    areas: [measure],
    outline: measure.outline,
    holes: measure.holes,
    walls: (area.walls ?? []).map(({ from, to }) => [pair(from), pair(to)] as const),
    exits,
    stopLines: stopLinesOf(ctx, area),
    notes: notesOn(area, measure, exits),
  };
}

/** The floor of an option as parts that are spread one after the other. */
export function floorParts(ctx: OptionContext, surveyed: SurveyPlan): readonly FloorPart[] {
  return coatedAreas(ctx, surveyed).flatMap(({ measure }) => {
    const area = ctx.job.areas.find(({ id }) => id === measure.id);
    return area ? [partOf(ctx, area, measure)] : [];
  });
}
