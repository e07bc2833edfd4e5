import { useState } from 'react';
import type { FloorFrame } from '../floor/geometry.ts';
import { useJob } from '../job/job-context.tsx';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { moveDoor, movedDoor } from './doors.ts';
import { inRoom, onFloor, type Placed } from './joined.ts';
import { placeUnder } from './place-under.ts';

interface HandlesProps {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly units: Units;
  readonly placed: Placed;
}

/** Ways out with a handle to drag along the walls. Whoever has no pointer moves them beside the floor. */
export function DoorHandles({ area, frame, units, placed }: HandlesProps) {
  const { change } = useJob();
  const [dragged, setDragged] = useState<{ readonly id: string; readonly to: Dot } | null>(null);
  return area.exits
    .filter(({ shut }) => !shut)
    .map(({ id, from, to }) => {
      const held = dragged?.id === id ? dragged : null;
      const ends = (held && movedDoor(area, { from, to }, held.to)) ?? [from, to];
      const [a, b] = [frame.at(onFloor(placed, ends[0])), frame.at(onFloor(placed, ends[1]))];
      const middle: Dot = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      return (
        <g key={id}>
          {held ? <path d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} stroke="var(--chalk)" strokeWidth="7" /> : null}
          <rect
            className="door-handle"
            x={middle[0] - 9}
            y={middle[1] - 9}
            width="18"
            height="18"
            fill="var(--chalk)"
            stroke="var(--sheet)"
            strokeWidth="2"
            onPointerDown={(event) => {
              event.preventDefault();
              event.currentTarget.setPointerCapture(event.pointerId);
              setDragged({ id, to: inRoom(placed, placeUnder(event, frame)) });
            }}
            onPointerMove={(event) => {
              if (held) setDragged({ id, to: inRoom(placed, placeUnder(event, frame)) });
            }}
            onPointerUp={(event) => {
              if (!held) return;
              const at = inRoom(placed, placeUnder(event, frame));
              setDragged(null);
              change((draft) => moveDoor(draft, area, id, at, units));
            }}
            onPointerCancel={() => setDragged(null)}
          />
        </g>
      );
    });
}
