import type { Published } from '../plan.ts';
import { placedPoint } from '../science/shape/index.ts';
import type { CoatSpread } from '../steps/results.ts';
import { areasOf, drawnArea, name, type PaperContext, say } from './context.ts';
import type { Block, FloorDrawing, FloorMark } from './paper.ts';
import { pourMarks, spreadsOf } from './pours.ts';

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

type Joined = NonNullable<Published<CoatSpread>['joined']>;

/** A mark of a room where the room lies on the floor it is spread with. */
function moved(mark: FloorMark, put: (p: Pair) => Pair): FloorMark {
  if (mark.kind === 'exit' || mark.kind === 'arrow') return { ...mark, from: put(mark.from), to: put(mark.to) };
  if (mark.kind === 'spot' || mark.kind === 'reading') return { ...mark, at: put(mark.at) };
  if (mark.kind === 'pour') return { ...mark, at: put(mark.at), outlines: mark.outlines.map((ring) => ring.map(put)) };
  if (mark.kind === 'sun') return { ...mark, outline: mark.outline.map(put) };
  return { ...mark, along: mark.along.map(put) };
}

/** The name of the exit a mark was made of. */
function exitName(ctx: PaperContext, area: string, mark: Extract<FloorMark, { kind: 'exit' }>): string {
  const exit = drawnArea(ctx, area)?.exits?.find(({ from }) => pair(from).join() === mark.from.join());
  return exit?.name ?? exit?.id ?? '';
}

/** Rooms that doors join, with the pours that run through them, as one drawing. */
function joinedDrawing(ctx: PaperContext, coat: Published<CoatSpread>, joined: Joined): FloorDrawing {
  const ways = new Set(joined.exits.map((exit) => exit.name));
  const rooms = joined.rooms.flatMap(({ area, placed }) =>
    marksOf(ctx, area)
      // an exit drawn where a doorway leads on into the next room is that doorway
      .filter((mark) => mark.kind !== 'exit' || mark.shut || ways.has(exitName(ctx, area, mark)))
      .map((mark) => moved(mark, (p) => placedPoint(placed, p))),
  );
  return {
    area: coat.areas.join('+'),
    name: joined.rooms.map(({ area }) => drawnArea(ctx, area)?.name ?? area).join(', '),
    outline: joined.outline,
    holes: joined.holes,
    net: joined.net,
    marks: [
      ...pourMarks([coat]),
      ...rooms.flatMap(forCrew),
      ...joined.doorways.map(
        ({ door, along }): FloorMark => ({ kind: 'joint', along, label: say('paper-doorway', { door }) }),
      ),
    ],
    dimensions: true,
  };
}

/** Drawings of the areas of the option; for the crew with the pours of a coat, where they are planned. */
export function floors(ctx: PaperContext, for_: 'customer' | 'crew', layer?: string): readonly FloorDrawing[] {
  const coats = for_ === 'crew' && layer ? spreadsOf(ctx, layer) : [];
  const joined = coats.flatMap((coat) => (coat.joined ? [joinedDrawing(ctx, coat, coat.joined)] : []));
  const drawn = new Set(coats.flatMap((coat) => (coat.joined ? coat.areas : [])));
  const single = areasOf(ctx)
    .filter(({ id }) => !drawn.has(id))
    .map((area) => ({
      area: area.id,
      name: area.name,
      outline: area.outline as readonly Pair[],
      holes: area.holes as readonly (readonly Pair[])[],
      net: area.net,
      marks:
        for_ === 'customer'
          ? marksOf(ctx, area.id)
          : [
              ...pourMarks(coats.filter(({ areas }) => areas.includes(area.id))),
              ...marksOf(ctx, area.id).flatMap(forCrew),
            ],
      dimensions: true,
    }));
  return [...joined, ...single];
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
