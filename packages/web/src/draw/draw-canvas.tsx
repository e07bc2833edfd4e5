import { type KeyboardEvent, type MouseEvent, useEffect, useId, useRef, useState } from 'react';
import { Marks, Slab } from '../floor/floor.tsx';
import { type Extent, type FloorFrame, pointsText } from '../floor/geometry.ts';
import { useSize } from '../use-size.ts';
import type { Dot } from '../worker/api.ts';
import { CornerHandles } from './corner-handles.tsx';
import { type Draw, useDraw } from './draw-context.tsx';
import { DrawTools } from './draw-tools.tsx';
import { FOOT, lengthText } from './lengths.ts';
import { useTracing } from './photo-context.tsx';
import { TapeLines } from './tape-lines.tsx';
import { placesOf } from './tools.ts';
import { Underlay } from './underlay.tsx';
import { dotAt, holds, roomAround, scaledExtent, viewFrame } from './view.ts';
import { WallLengths } from './wall-lengths.tsx';
import { words } from './words.ts';

const EMPTY = { imperial: [30 * FOOT, 24 * FOOT], metric: [9, 7] } as const;
/** Reach of the help lines, in pixels of the screen. */
export const NEAR = 9;

/** The floor to draw on: presses put down what is chosen, corners move by hand or by arrow keys. */
export function DrawCanvas() {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <section className="floor draws" aria-label={words.label}>
      <DrawTools />
      <div className="drawing" ref={ref}>
        {size && size.width > 40 && size.height > 40 ? <Sheet {...size} /> : null}
      </div>
    </section>
  );
}

function allDots({ drawing, pending }: Draw): readonly Dot[] {
  return [
    ...drawing.outline,
    ...drawing.holes.flat(),
    ...drawing.joints.flatMap(({ along }) => along),
    ...drawing.cracks.flatMap(({ along }) => along),
    ...drawing.points.map(({ at }) => at),
    ...drawing.spots.map(({ at }) => at),
    ...pending,
  ];
}

function Sheet({ width, height }: { readonly width: number; readonly height: number }) {
  const draw = useDraw();
  const traced = useTracing().map !== null;
  const dots = allDots(draw);
  const [extent, setExtent] = useState<Extent>(() => roomAround(dots, EMPTY[draw.units]));
  // The view stays put while a hand draws, and follows only what would leave it.
  const [held, hold] = useState(false);
  const shown =
    held || holds(extent, dots) ? extent : roomAround([...dots, extent.least, extent.most], EMPTY[draw.units]);
  const room = useRef(draw.room);
  useEffect(() => {
    if (shown !== extent) setExtent(shown);
  }, [shown, extent]);
  useEffect(() => {
    if (room.current === draw.room) return;
    room.current = draw.room;
    hold(false);
    setExtent(roomAround(dots, EMPTY[draw.units]));
  });
  const frame = viewFrame(shown, width, height - 44);
  const [cross, setCross] = useState<Dot | null>(null);
  const help = useId();
  const svg = useRef<SVGSVGElement>(null);
  const place = (event: { readonly clientX: number; readonly clientY: number }): Dot => {
    const box = svg.current?.getBoundingClientRect();
    return dotAt(frame, shown, [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)]);
  };
  const near = NEAR / frame.scale;
  const keys = (event: KeyboardEvent<SVGSVGElement>): void => {
    if (event.target !== event.currentTarget) return;
    const by = draw.stepSize * (event.shiftKey ? 10 : 1);
    const from = cross ?? draw.outline.at(-1) ?? [0, 0];
    const moves: Readonly<Record<string, Dot>> = {
      ArrowRight: [by, 0],
      ArrowLeft: [-by, 0],
      ArrowUp: [0, by],
      ArrowDown: [0, -by],
    };
    const move = moves[event.key];
    if (move) setCross([from[0] + move[0], from[1] + move[1]]);
    else if (event.key === 'Enter' && !(draw.tool !== 'corner' && event.ctrlKey)) draw.press(from, near / 4);
    else if (event.key === 'Enter') draw.finish();
    else if (event.key === 'Backspace') draw.takeBack();
    else if (event.key === 'Escape') draw.letGo();
    else return;
    event.preventDefault();
  };
  const press = (event: MouseEvent<SVGSVGElement>): void => {
    if ((event.target as Element).closest('.handle')) return;
    draw.press(place(event), near);
  };
  return (
    <>
      <Underlay frame={frame} extent={shown} />
      <svg
        ref={svg}
        width={width}
        height={height - 44}
        viewBox={`0 0 ${width} ${height - 44}`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the floor is drawn on with arrow keys
        tabIndex={0}
        role="application"
        aria-label={words.label}
        aria-describedby={help}
        onKeyDown={keys}
        onClick={press}
        onBlur={() => setCross(null)}
      >
        <Grid frame={frame} extent={shown} step={draw.stepSize} />
        {draw.outline.length > 2 ? (
          <>
            <g opacity={traced ? 0.55 : 1}>
              <Slab area={draw.drawing} frame={frame} small={false} />
            </g>
            <Marks area={draw.drawing} frame={frame} small={false} />
          </>
        ) : (
          <polyline points={pointsText(frame, draw.outline)} fill="none" stroke="var(--ink)" strokeWidth="6" />
        )}
        <Points draw={draw} frame={frame} />
        {draw.solved.is === 'none' ? (
          <WallLengths draw={draw} frame={frame} />
        ) : (
          <TapeLines draw={draw} frame={frame} />
        )}
        <Pending draw={draw} frame={frame} />
        <CornerHandles draw={draw} frame={frame} place={place} near={near} />
        {cross ? <Cross at={frame.at(cross)} /> : null}
        {draw.outline.length === 0 && draw.solved.is === 'none' && !cross ? (
          <text x={width / 2} y={(height - 44) / 2} textAnchor="middle" className="n halo-s">
            {words.hint}
          </text>
        ) : null}
      </svg>
      <p className="unseen" id={help}>
        {words.help}
      </p>
      <p className="unseen" role="status">
        {cross ? words.cross(lengthText(cross[0], draw.units), lengthText(cross[1], draw.units)) : ''}
      </p>
      <div className="views">
        <button type="button" onClick={() => setExtent(scaledExtent(shown, 1.4))}>
          {words.view.more}
        </button>
        <button
          type="button"
          onClick={() => {
            hold(true);
            setExtent(scaledExtent(shown, 1 / 1.6, draw.corner === null ? undefined : draw.outline[draw.corner]));
          }}
        >
          {words.view.less}
        </button>
        <button
          type="button"
          onClick={() => {
            hold(false);
            setExtent(roomAround(dots, EMPTY[draw.units]));
          }}
        >
          {words.view.fit}
        </button>
      </div>
    </>
  );
}

/** A quiet grid in whole steps a person thinks in, so that a press is never blind. */
function Grid({ frame, extent, step }: { readonly frame: FloorFrame; readonly extent: Extent; readonly step: number }) {
  let field = step;
  while (field * frame.scale < 26) field *= field === step ? 2 : 5;
  const lines: string[] = [];
  const count = (axis: 0 | 1): readonly number[] => {
    const first = Math.ceil(extent.least[axis] / field);
    const last = Math.floor(extent.most[axis] / field);
    return Array.from({ length: Math.min(Math.max(last - first + 1, 0), 200) }, (_, i) => (first + i) * field);
  };
  for (const x of count(0)) lines.push(`M${frame.at([x, 0])[0]} 0V${frame.height}`);
  for (const y of count(1)) lines.push(`M0 ${frame.at([0, y])[1]}H${frame.width}`);
  return <path d={lines.join('')} stroke="var(--rule)" strokeWidth=".5" fill="none" />;
}

function Points({ draw, frame }: { readonly draw: Draw; readonly frame: FloorFrame }) {
  return draw.drawing.points.map(({ id, name, at }) => {
    const [x, y] = frame.at(at);
    return (
      <g key={id}>
        <path d={`M${x - 6} ${y}h12M${x} ${y - 6}v12`} stroke="var(--chalk)" strokeWidth="2" />
        <text x={x + 9} y={y + 5} className="nb chalk halo">
          {name}
        </text>
      </g>
    );
  });
}

function Pending({ draw, frame }: { readonly draw: Draw; readonly frame: FloorFrame }) {
  if (draw.pending.length === 0 || draw.tool === 'corner') return null;
  const dash = placesOf(draw.tool).open ? '' : '6 4';
  return (
    <>
      <polyline
        points={pointsText(frame, draw.pending)}
        fill="none"
        stroke="var(--chalk)"
        strokeWidth="3"
        strokeDasharray={dash}
      />
      {draw.pending.map((dot, i) => {
        const [x, y] = frame.at(dot);
        // biome-ignore lint/suspicious/noArrayIndexKey: places are told apart only by their order
        return <circle key={i} cx={x} cy={y} r="5" fill="var(--chalk)" />;
      })}
    </>
  );
}

function Cross({ at: [x, y] }: { readonly at: Dot }) {
  return <path d={`M${x - 14} ${y}h28M${x} ${y - 14}v28`} stroke="var(--chalk)" strokeWidth="2" fill="none" />;
}
