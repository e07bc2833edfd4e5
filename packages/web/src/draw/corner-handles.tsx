import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { FloorFrame } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';
import type { Draw } from './draw-context.tsx';
import { lengthText } from './lengths.ts';
import { words } from './words.ts';

interface HandlesProps {
  readonly draw: Draw;
  readonly frame: FloorFrame;
  readonly place: (event: { readonly clientX: number; readonly clientY: number }) => Dot;
  readonly near: number;
}

/** The corners of the outline: dragged, moved by arrow keys by the step, or typed in the table beside. */
export function CornerHandles({ draw, frame, place, near }: HandlesProps) {
  const typed = draw.drawing.outline.length > 0 && Array.isArray((draw.area as { outline?: unknown }).outline);
  if (!typed || draw.tool !== 'corner') return null;
  return draw.outline.map((dot, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: corners are told apart only by their order
    <Handle key={index} index={index} dot={dot} draw={draw} frame={frame} place={place} near={near} />
  ));
}

/** Pixels a press may wander before it is a drag. */
const STILL = 4;

function Handle({
  index,
  dot,
  draw,
  frame,
  place,
  near,
}: HandlesProps & { readonly index: number; readonly dot: Dot }) {
  const [x, y] = frame.at(dot);
  const drag = useRef<{ readonly x: number; readonly y: number; readonly field: string; moved: boolean } | null>(null);
  const chosen = draw.corner === index;
  const down = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    drag.current = { x: event.clientX, y: event.clientY, field: `drag-${event.timeStamp}`, moved: false };
    draw.chooseCorner(index);
  };
  const move = (event: PointerEvent<SVGGElement>): void => {
    const held = drag.current;
    if (!held) return;
    if (!held.moved && Math.hypot(event.clientX - held.x, event.clientY - held.y) < STILL) return;
    held.moved = true;
    draw.dropCorner(index, place(event), near, held.field);
  };
  const keys = (event: KeyboardEvent<SVGGElement>): void => {
    const by = draw.stepSize * (event.shiftKey ? 10 : 1);
    const moves: Readonly<Record<string, Dot>> = {
      ArrowRight: [by, 0],
      ArrowLeft: [-by, 0],
      ArrowUp: [0, by],
      ArrowDown: [0, -by],
    };
    const step = moves[event.key];
    if (step) draw.moveCorner(index, [dot[0] + step[0], dot[1] + step[1]], `keys-${draw.room}-${index}`);
    else if (event.key === 'Enter') draw.addCorner(index);
    else if (event.key === 'Delete') draw.removeCorner(index);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a corner of a drawing has no element of its own
    <g
      className="handle"
      tabIndex={0}
      role="button"
      aria-pressed={chosen}
      aria-label={words.corner(index + 1, lengthText(dot[0], draw.units), lengthText(dot[1], draw.units))}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={() => {
        drag.current = null;
      }}
      onPointerCancel={() => {
        drag.current = null;
      }}
      onFocus={() => draw.chooseCorner(index)}
      onKeyDown={keys}
    >
      <circle cx={x} cy={y} r="22" fill="transparent" />
      <circle
        cx={x}
        cy={y}
        r={chosen ? 9 : 6}
        fill={chosen ? 'var(--chalk)' : 'var(--sheet)'}
        stroke="var(--chalk)"
        strokeWidth="2.5"
      />
      <text x={x} y={y - 12} textAnchor="middle" className="nb chalk halo-s">
        {index + 1}
      </text>
    </g>
  );
}
