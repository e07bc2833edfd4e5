import type { FloorFrame } from '../floor/geometry.ts';
import type { StepView } from '../steps/step-view.tsx';
import type { Coat } from './coats.ts';
import { DoorHandles } from './door-handles.tsx';
import { placedIn } from './joined.ts';
import { TapeHandles } from './tape-handles.tsx';

interface HandlesProps {
  readonly view: StepView;
  readonly coat: Coat | null;
  readonly frame: FloorFrame;
}

/** Tape lines and ways out of every room on the drawing, to be dragged. */
export function Handles({ view, coat, frame }: HandlesProps) {
  const { area, planned } = view;
  const ids = coat?.joined ? coat.areas : area ? [area.id] : [];
  return planned.areas
    .filter(({ id }) => ids.includes(id))
    .map((room) => {
      const props = { area: room, frame, units: planned.units, placed: placedIn(coat, room.id) };
      return (
        <g key={room.id}>
          {frame.small ? null : <DoorHandles {...props} />}
          <TapeHandles {...props} />
        </g>
      );
    });
}
