import { areasOf, drawnArea, name, type PaperContext, say } from './context.ts';
import type { Block, FloorDrawing, FloorMark } from './paper.ts';
import { pourMarks } from './pours.ts';

type Pair = readonly [number, number];
const pair = ([x, y]: readonly [{ readonly value: number }, { readonly value: number }]): Pair => [x.value, y.value];

/** What a reader needs to find on the floor: joints, cracks, doors, spots, places of readings, sun. */
function marksOf(ctx: PaperContext, areaId: string): readonly FloorMark[] {
  const area = drawnArea(ctx, areaId);
  const measured = areasOf(ctx).find(({ id }) => id === areaId);
  if (!area || !measured) return [];
  const joints = (area.joints ?? []).map(
    (joint): FloorMark => ({
      kind: 'joint',
      along: joint.along.map(pair),
      label: say('paper-joint-line', { joint: joint.id, kind: `@paper-joint-${joint.kind}` }),
    }),
  );
  const cracks = (area.cracks ?? []).map(
    (crack): FloorMark => ({
      kind: 'crack',
      along: crack.along.map(pair),
      label: say('paper-crack', { crack: crack.id }),
    }),
  );
  const exits = (area.exits ?? []).map(
    (exit): FloorMark => ({
      kind: 'exit',
      from: pair(exit.from),
      to: pair(exit.to),
      shut: exit.shut ?? false,
      label: say(exit.shut ? 'paper-exit-shut' : 'paper-exit', { exit: exit.name ?? exit.id }),
    }),
  );
  const spots = (area.spots ?? []).map(
    (spot): FloorMark => ({
      kind: 'spot',
      at: pair(spot.at),
      // Drawn as a disc of the area that was measured.
      radius: Math.sqrt(spot.area.value / Math.PI),
      what: spot.kind,
      label: say(`paper-spot-${spot.kind.replaceAll(' ', '-')}`),
    }),
  );
  const points = (area.points ?? []).map(
    (point): FloorMark => ({
      kind: 'reading',
      at: pair(point.at),
      label: name(point.name ? `${point.id}: ${point.name}` : point.id),
    }),
  );
  const sun = (area.sun ?? []).map(
    (patch): FloorMark => ({
      kind: 'sun',
      outline: patch.outline.map(pair),
      label: say('paper-sun'),
    }),
  );
  return [...joints, ...cracks, ...exits, ...spots, ...points, ...sun];
}

/** The crew finds joints and cracks by sight: on its drawing only doors and sun carry words, test points are left out. */
function forCrew(mark: FloorMark): readonly FloorMark[] {
  if (mark.kind === 'reading') return [];
  if (mark.kind === 'exit' || mark.kind === 'sun') return [mark];
  const { label: _, ...bare } = mark;
  return [bare];
}

/** Drawings of the areas of the option; for the crew with the pours of a coat, where they are planned. */
export function floors(ctx: PaperContext, for_: 'customer' | 'crew', layer?: string): readonly FloorDrawing[] {
  return areasOf(ctx).map((area) => ({
    area: area.id,
    name: area.name,
    outline: area.outline as readonly Pair[],
    holes: area.holes as readonly (readonly Pair[])[],
    net: area.net,
    marks:
      for_ === 'customer'
        ? marksOf(ctx, area.id)
        : [...(layer ? pourMarks(ctx, layer, area.id) : []), ...marksOf(ctx, area.id).flatMap(forCrew)],
    dimensions: true,
  }));
}

/** All drawings; the words that belong beside the first one stand there. */
export const floorBlocks = (
  ctx: PaperContext,
  for_: 'customer' | 'crew',
  beside: readonly Block[] = [],
  layer?: string,
): readonly Block[] =>
  floors(ctx, for_, layer).map((drawing, i) => ({
    kind: 'floor',
    drawing,
    ...(i === 0 && beside.length > 0 ? { beside } : {}),
  }));
