import { memo } from 'react';
import type { Step } from '../steps/step.ts';
import type { StepView } from '../steps/step-view.tsx';
import { useSize } from '../use-size.ts';
import { words } from '../words.ts';
import type { AreaDrawing, Dot, RoomPlace, RoomsTogether } from '../worker/api.ts';
import { ScaleBar } from './dimensions.tsx';
import { extentOf, type FloorFrame, frameFor, pointsText } from './geometry.ts';
import { Below, Beside, LABEL_COLUMN, LABEL_GAP, Title } from './labels.tsx';
import type { FloorLabel, FloorLayer } from './layer.ts';
import { Marks } from './marks.tsx';
import { placedArea, placedDot, roomFrame } from './placed.ts';
import { Door, WALL } from './slab.tsx';

const MOST_LABELS = 5;

interface TogetherProps {
  readonly view: StepView;
  readonly step: Step;
  readonly together: RoomsTogether;
  readonly small?: boolean;
}

/** All rooms of a job as the building has them, each with what the step draws in it. */
export const FloorTogether = memo(function FloorTogether(props: TogetherProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="drawing" ref={ref}>
      {size && size.width > 20 && size.height > 20 ? <Drawing {...props} {...size} /> : null}
    </div>
  );
});

interface Room {
  readonly own: AreaDrawing;
  readonly placed: AreaDrawing;
  readonly place: RoomPlace;
  readonly layer: FloorLayer | null;
}

const roomOf = (view: StepView, step: Step, own: AreaDrawing, place: RoomPlace): Room => ({
  own,
  placed: placedArea(own, place),
  place,
  layer: step.floor?.({ ...view, area: own }) ?? null,
});

/**
 * The first label of every room, then the second of every room, until the column is full. A door between two rooms is
 * seen on the drawing.
 */
function labelsOf(rooms: readonly Room[], together: RoomsTogether): readonly FloorLabel[] {
  const found: FloorLabel[] = [];
  const between = new Set(together.doors.map(({ id }) => id));
  const most = Math.max(...rooms.map(({ layer }) => layer?.labels?.length ?? 0), 0);
  for (let i = 0; i < most; i++) {
    for (const { own, place, layer } of rooms) {
      const label = layer?.labels?.[i];
      if (!label || between.has(label.key)) continue;
      found.push({ ...label, key: `${own.id} ${label.key}`, at: placedDot(place, label.at) });
    }
  }
  return found.slice(0, MOST_LABELS);
}

function Drawing({
  view,
  step,
  together,
  small = false,
  width,
  height,
}: TogetherProps & { readonly width: number; readonly height: number }) {
  const { areas, units } = view.planned;
  const rooms = together.rooms.flatMap((place): Room[] => {
    const own = areas.find(({ id }) => id === place.area);
    return own ? [roomOf(view, step, own, place)] : [];
  });
  const extent = extentOf(rooms.flatMap(({ placed }) => placed.outline));
  if (!extent) return null;
  const labels = small ? [] : labelsOf(rooms, together);
  const beside = labels.length > 0 && width >= 460;
  const below = labels.length > 0 && !beside ? labels.length * LABEL_GAP + 12 : 0;
  const room = small
    ? { left: 10, top: 10, right: 10, bottom: 10 }
    : { left: 40, top: 64, right: beside ? LABEL_COLUMN + 40 : 40, bottom: 58 + below };
  const frame = { ...frameFor(extent, width, height, room), small };
  const wall = small ? 3 : WALL;
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.floor.together}>
      {rooms.map(({ placed }) => (
        <polygon
          key={placed.id}
          points={pointsText(frame, placed.outline)}
          fill="var(--ink)"
          stroke="var(--ink)"
          strokeWidth={wall * 2}
          strokeLinejoin="miter"
        />
      ))}
      {rooms.map(({ placed }) => (
        <polygon
          key={placed.id}
          points={pointsText(frame, placed.outline)}
          fill="var(--slab)"
          stroke="var(--ink)"
          strokeWidth="1"
        />
      ))}
      <Ways together={together} frame={frame} />
      {rooms.map(({ own, placed, place, layer }) => (
        <g key={own.id}>
          {placed.holes.map((hole) => (
            <polygon key={pointsText(frame, hole)} points={pointsText(frame, hole)} fill="var(--ink)" />
          ))}
          <Outside area={placed} together={together} frame={frame} wall={wall} />
          {layer?.under?.(roomFrame(frame, place, own.outline))}
          {layer?.bare ? null : <Marks area={placed} frame={frame} small={small} />}
          {layer?.over?.(roomFrame(frame, place, own.outline))}
        </g>
      ))}
      {small ? null : (
        <>
          {rooms.map(({ placed }) => (
            <Name key={placed.id} area={placed} frame={frame} />
          ))}
          <ScaleBar frame={frame} units={units} left={beside ? width - LABEL_COLUMN : null} y={height - 26} />
          <Title layer={rooms[0]?.layer ?? null} x={beside ? width - LABEL_COLUMN : 16} />
          {beside ? <Beside labels={labels} frame={frame} /> : <Below labels={labels} frame={frame} />}
        </>
      )}
    </svg>
  );
}

/** The floor in the doorways: from one room to the other, with a threshold; hatched where the door stays shut. */
function Ways({ together, frame }: { readonly together: RoomsTogether; readonly frame: FloorFrame }) {
  return together.doors.map(({ id, sides: [near, far], shut }) => {
    const ring = pointsText(frame, [near[0], near[1], far[0], far[1]]);
    const [a, b] = [frame.at(near[0]), frame.at(near[1])];
    const [c, d] = [frame.at(far[0]), frame.at(far[1])];
    return (
      <g key={id}>
        <polygon points={ring} fill="var(--slab)" stroke="var(--slab)" strokeWidth="2" />
        {shut ? (
          <polygon points={ring} fill="none" stroke="var(--ink)" strokeWidth="3" />
        ) : (
          <path
            d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}M${c[0]} ${c[1]}L${d[0]} ${d[1]}`}
            stroke="var(--stroke)"
            strokeDasharray="3 3"
          />
        )}
      </g>
    );
  });
}

/** Openings to the outside; those between rooms are drawn as ways. */
function Outside({
  area,
  together,
  frame,
  wall,
}: {
  readonly area: AreaDrawing;
  readonly together: RoomsTogether;
  readonly frame: FloorFrame;
  readonly wall: number;
}) {
  const between = new Set(together.doors.map(({ id }) => id));
  return area.exits
    .filter(({ id }) => !between.has(id))
    .map(({ id, from, to }) => (
      <Door key={id} from={frame.at(from)} to={frame.at(to)} outline={area.outline.map(frame.at)} wall={wall} />
    ));
}

function Name({ area, frame }: { readonly area: AreaDrawing; readonly frame: FloorFrame }) {
  const corners = area.outline.map(frame.at);
  const top = corners.reduce<Dot>(
    (best, corner) => (corner[0] + corner[1] < best[0] + best[1] ? corner : best),
    [Infinity, Infinity],
  );
  return (
    <text x={top[0] + 8} y={top[1] + 18} className="nb halo">
      {area.name}
    </text>
  );
}
