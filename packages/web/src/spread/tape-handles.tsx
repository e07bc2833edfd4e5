import { type PointerEvent, useState } from 'react';
import { typedDot } from '../draw/lengths.ts';
import type { FloorFrame } from '../floor/geometry.ts';
import { useJob } from '../job/job-context.tsx';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { inRoom, onFloor, type Placed } from './joined.ts';
import { placeUnder } from './place-under.ts';
import { moveTape, type TapeEnd, tapesOf, within } from './tapes.ts';

interface HandlesProps {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly units: Units;
  /** Where the room lies on the floor that is drawn. */
  readonly placed: Placed;
}

interface Dragged {
  readonly index: number;
  readonly end: TapeEnd;
  readonly at: Dot;
}

/** Tape lines over the floor, their ends to be dragged. Whoever has no pointer types the same places beside the floor. */
export function TapeHandles({ area, frame, units, placed }: HandlesProps) {
  const { file, change, optionId } = useJob();
  const [dragged, setDragged] = useState<Dragged | null>(null);
  const placeOf = (event: PointerEvent<SVGElement>): Dot => {
    return within(area, inRoom(placed, placeUnder(event, frame)));
  };
  return tapesOf(file, optionId, area.id).map(({ index, id, from, to }) => {
    if (!from || !to) return null;
    const shown = (end: TapeEnd, at: Dot): Dot => (dragged?.index === index && dragged.end === end ? dragged.at : at);
    const ends = [
      ['from', shown('from', from)],
      ['to', shown('to', to)],
    ] as const;
    const [a, b] = [frame.at(onFloor(placed, ends[0][1])), frame.at(onFloor(placed, ends[1][1]))];
    return (
      <g key={id}>
        <path d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} stroke="var(--ink)" strokeWidth="6" />
        <path d={`M${a[0]} ${a[1]}L${b[0]} ${b[1]}`} stroke="var(--sheet)" strokeWidth="2" strokeDasharray="6 5" />
        {ends.map(([end, place]) => {
          const [x, y] = frame.at(onFloor(placed, place));
          return (
            <circle
              key={end}
              className="tape-end"
              cx={x}
              cy={y}
              r="11"
              fill="var(--chalk)"
              stroke="var(--sheet)"
              strokeWidth="2"
              onPointerDown={(event) => {
                event.preventDefault();
                event.currentTarget.setPointerCapture(event.pointerId);
                setDragged({ index, end, at: place });
              }}
              onPointerMove={(event) => {
                if (dragged?.index === index && dragged.end === end) setDragged({ index, end, at: placeOf(event) });
              }}
              onPointerUp={(event) => {
                if (!dragged) return;
                const at = placeOf(event);
                setDragged(null);
                change((draft) => moveTape(draft, optionId, index, end, typedDot(at, units)));
              }}
              onPointerCancel={() => setDragged(null)}
            />
          );
        })}
      </g>
    );
  });
}
