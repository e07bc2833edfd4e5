import type { FloorFrame } from '../floor/geometry.ts';
import { pixels, pointsText } from '../floor/geometry.ts';
import type { Dot } from '../worker/api.ts';
import type { Coat } from './coats.ts';
import { coatKey } from './coats.ts';
import { CLOSES_PX, draw, numbered, useDrawing, withCorner } from './drawn-store.ts';
import { placeUnder } from './place-under.ts';

/** Pours drawn by hand over the floor: each tap is a corner, a tap on the first one closes the pour. */
export function DrawnPours({ coat, frame }: { readonly coat: Coat; readonly frame: FloorFrame }) {
  const drawing = useDrawing();
  if (drawing.coat !== coatKey(coat) || frame.small) return null;
  const { pours, open, judged } = drawing;
  return (
    <g>
      <rect
        className="draw-sheet"
        width={frame.width}
        height={frame.height}
        fill="var(--sheet)"
        fillOpacity="0.55"
        onPointerDown={(event) => {
          event.preventDefault();
          const at = placeUnder(event, frame);
          draw((before) => withCorner(before, at, CLOSES_PX / frame.scale));
        }}
      />
      <g pointerEvents="none">
        {numbered(pours).map(({ key, one, at }) => (
          <Drawn key={key} ring={one} number={at + 1} frame={frame} />
        ))}
        {open.length > 0 ? (
          <polyline points={pointsText(frame, open)} fill="none" stroke="var(--chalk)" strokeWidth="3" />
        ) : null}
        {numbered(open).map(({ key, one, at }) => {
          const [x, y] = frame.at(one);
          return <circle key={key} cx={x} cy={y} r={at === 0 ? 9 : 4} fill="var(--chalk)" />;
        })}
        {(judged?.breaks ?? []).map(({ at, text }) => (at ? <Broken key={text} at={frame.at(at)} /> : null))}
      </g>
    </g>
  );
}

function Drawn({
  ring,
  number,
  frame,
}: {
  readonly ring: readonly Dot[];
  readonly number: number;
  readonly frame: FloorFrame;
}) {
  const middle: Dot = [
    ring.reduce((sum, [x]) => sum + x, 0) / ring.length,
    ring.reduce((sum, [, y]) => sum + y, 0) / ring.length,
  ];
  const [x, y] = frame.at(middle);
  return (
    <>
      <polygon
        points={pointsText(frame, ring)}
        fill={number % 2 === 0 ? 'var(--slab-deep)' : 'var(--slab)'}
        fillOpacity="0.75"
        stroke="var(--chalk)"
        strokeWidth="2.5"
        strokeDasharray="9 4"
      />
      <text
        x={x}
        y={y + 8}
        textAnchor="middle"
        className={number % 2 === 0 ? 'halo-deep' : 'halo'}
        fontSize="24"
        fontWeight="700"
      >
        {number}
      </text>
    </>
  );
}

/** Where a drawn pour breaks a limit. */
function Broken({ at: [x, y] }: { readonly at: Dot }) {
  const arm = 9;
  const line = (dx: number, dy: number): string =>
    `M${pixels(x - dx)} ${pixels(y - dy)}L${pixels(x + dx)} ${pixels(y + dy)}`;
  return <path d={`${line(arm, arm)}${line(arm, -arm)}`} stroke="var(--stop)" strokeWidth="4" />;
}
