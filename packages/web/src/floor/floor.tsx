import type { ReactNode } from 'react';
import { useSize } from '../use-size.ts';
import { words } from '../words.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { barStep, extentOf, type FloorFrame, frameFor, pixels, pointsText, spreadLabels } from './geometry.ts';

/** A note in the column beside the floor, with a leader to what it speaks of. */
export interface FloorLabel {
  readonly key: string;
  readonly at: Dot;
  readonly text: string;
  readonly note?: string;
  readonly warm?: boolean;
}

/** What a step draws on the floor, and what it says beside it. At most five labels stand beside a floor. */
export interface FloorLayer {
  readonly title: string;
  readonly note?: string;
  readonly labels?: readonly FloorLabel[];
  /** Drawn over the slab, under joints and cracks. */
  readonly under?: (frame: FloorFrame) => ReactNode;
  /** Drawn over everything but the labels. */
  readonly over?: (frame: FloorFrame) => ReactNode;
  /** Left out where the drawing of another matter needs the room. */
  readonly bare?: boolean;
}

const LABEL_COLUMN = 172;
const LABEL_GAP = 38;
const MOST_LABELS = 5;
const WALL = 6;

interface FloorProps {
  readonly area: AreaDrawing | null;
  readonly layer: FloorLayer | null;
  readonly units: Units;
  /** The small drawing of the strip: no labels, no dimensions. */
  readonly small?: boolean;
}

/** The floor to scale, drawn at the pixel size it is shown in. */
export function Floor(props: FloorProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className="drawing" ref={ref}>
      {size && size.width > 20 && size.height > 20 ? <Drawing {...props} {...size} /> : null}
    </div>
  );
}

type DrawingProps = FloorProps & { readonly width: number; readonly height: number };

function Drawing({ area, layer, units, small = false, width, height }: DrawingProps) {
  const extent = area ? extentOf(area.outline) : null;
  if (!area || !extent) return <EmptyFloor width={width} height={height} small={small} />;
  const labels = small ? [] : (layer?.labels ?? []).slice(0, MOST_LABELS);
  // A narrow sheet has no room for a column: labels go under the drawing.
  const beside = labels.length > 0 && width >= 460;
  const below = labels.length > 0 && !beside ? labels.length * LABEL_GAP + 12 : 0;
  const room = small
    ? { left: 12, top: 12, right: 12, bottom: 12 }
    : { left: 72, top: beside ? 58 : 92, right: beside ? LABEL_COLUMN + 40 : 40, bottom: 58 + below };
  const frame = frameFor(extent, width, height, room);
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.floor.label(area.name)}
    >
      <Slab area={area} frame={frame} small={small} />
      <g clipPath={undefined}>{layer?.under?.(frame)}</g>
      {layer?.bare ? null : <Marks area={area} frame={frame} small={small} />}
      {layer?.over?.(frame)}
      {small ? null : (
        <>
          <Dimensions area={area} frame={frame} />
          <ScaleBar frame={frame} units={units} left={beside ? width - LABEL_COLUMN : null} y={height - 26} />
          <Title layer={layer} x={beside ? width - LABEL_COLUMN : 16} />
          {beside ? <Beside labels={labels} frame={frame} /> : <Below labels={labels} frame={frame} />}
        </>
      )}
    </svg>
  );
}

function Slab({
  area,
  frame,
  small,
}: {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly small: boolean;
}) {
  const outline = pointsText(frame, area.outline);
  const wall = small ? 3 : WALL;
  return (
    <>
      <polygon points={outline} fill="var(--ink)" stroke="var(--ink)" strokeWidth={wall * 2} strokeLinejoin="miter" />
      <polygon points={outline} fill="var(--slab)" />
      {area.holes.map((hole) => {
        const points = pointsText(frame, hole);
        return <polygon key={points} points={points} fill="var(--ink)" stroke="var(--ink)" strokeWidth="1" />;
      })}
      {area.exits.map(({ id, from, to }) => (
        <Door key={id} from={frame.at(from)} to={frame.at(to)} outline={area.outline.map(frame.at)} wall={wall} />
      ))}
    </>
  );
}

/** A gap in the wall with its threshold. The wall lies outside the outline, so the gap goes to the outer side. */
function Door({
  from,
  to,
  outline,
  wall,
}: {
  readonly from: Dot;
  readonly to: Dot;
  readonly outline: readonly Dot[];
  readonly wall: number;
}) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  if (length < 1) return null;
  const normal: Dot = [dy / length, -dx / length];
  const middle: Dot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const out = inside([middle[0] + normal[0] * 2, middle[1] + normal[1] * 2], outline) ? -1 : 1;
  const [ox, oy] = [normal[0] * out, normal[1] * out];
  const deep = wall + 1;
  const line = (by: number): string =>
    `M${pixels(from[0] + ox * by)} ${pixels(from[1] + oy * by)}L${pixels(to[0] + ox * by)} ${pixels(to[1] + oy * by)}`;
  return (
    <>
      <path
        d={`${line(0)}L${pixels(to[0] + ox * deep)} ${pixels(to[1] + oy * deep)}L${pixels(from[0] + ox * deep)} ${pixels(from[1] + oy * deep)}Z`}
        fill="var(--sheet)"
      />
      <path d={`${line(0)}${line(wall)}`} stroke="var(--ink)" strokeWidth="1" fill="none" />
    </>
  );
}

function inside([x, y]: Dot, outline: readonly Dot[]): boolean {
  let odd = false;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length] as Dot;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  });
  return odd;
}

function Marks({
  area,
  frame,
  small,
}: {
  readonly area: AreaDrawing;
  readonly frame: FloorFrame;
  readonly small: boolean;
}) {
  return (
    <>
      {area.joints.map(({ id, along, kind }) => (
        <polyline
          key={id}
          points={pointsText(frame, along)}
          fill="none"
          stroke="var(--stroke)"
          strokeWidth={small ? 1 : 1.4}
          strokeDasharray={kind === 'isolation' ? '3 3' : '11 3 2 3'}
        />
      ))}
      {area.spots.map(({ id, at, area: size }) => {
        const [x, y] = frame.at(at);
        const radius = Math.max(Math.sqrt(size / Math.PI) * frame.scale, small ? 2 : 5);
        return <circle key={id} cx={x} cy={y} r={radius} fill="url(#oil)" stroke="var(--ink)" strokeWidth=".8" />;
      })}
      {area.cracks.map(({ id, along }) => (
        <polyline
          key={id}
          points={pointsText(frame, along)}
          fill="none"
          stroke="var(--ink)"
          strokeWidth={small ? 1.4 : 2.2}
          strokeLinejoin="round"
        />
      ))}
    </>
  );
}

function Dimensions({ area, frame }: { readonly area: AreaDrawing; readonly frame: FloorFrame }) {
  const y = frame.top - 30;
  const x = frame.left - 38;
  const middle = (frame.left + frame.right) / 2;
  const half = area.width.length * 3.6 + 5;
  const centre = (frame.top + frame.bottom) / 2;
  const tall = area.depth.length * 3.6 + 5;
  const slash = (sx: number, sy: number): string => `M${sx - 4} ${sy + 4}l8-8`;
  return (
    <g stroke="var(--quiet)" fill="none">
      <path
        d={`M${frame.left} ${y}H${middle - half}M${middle + half} ${y}H${frame.right}${slash(frame.left, y)}${slash(frame.right, y)}`}
      />
      <path d={`M${frame.left} ${y - 6}v12M${frame.right} ${y - 6}v12`} />
      <path
        d={`M${x} ${frame.top}V${centre - tall}M${x} ${centre + tall}V${frame.bottom}${slash(x, frame.top)}${slash(x, frame.bottom)}`}
      />
      <path d={`M${x - 6} ${frame.top}h12M${x - 6} ${frame.bottom}h12`} />
      <text x={middle} y={y + 4} textAnchor="middle" className="nq" stroke="none">
        {area.width}
      </text>
      <text transform={`translate(${x + 4},${centre}) rotate(-90)`} textAnchor="middle" className="nq" stroke="none">
        {area.depth}
      </text>
    </g>
  );
}

const FOOT = 0.3048;

interface BarProps {
  readonly frame: FloorFrame;
  readonly units: Units;
  readonly left: number | null;
  readonly y: number;
}

function ScaleBar({ frame, units, left, y }: BarProps) {
  const imperial = units === 'imperial';
  const step = barStep(frame.scale, 76, imperial);
  const field = step * frame.scale;
  // Without a column of labels it stands in the lower right corner, its last number inside the sheet.
  const x = left ?? frame.width - field * 2 - 28;
  const shown = (length: number): string => `${Number((imperial ? length / FOOT : length).toPrecision(3))}`;
  return (
    <g>
      <path
        d={`M${x} ${y}h${field * 2}M${x + 0.5} ${y - 4}v8M${x + field} ${y - 3}v6M${x + field * 2} ${y - 4}v8`}
        stroke="var(--quiet)"
        fill="none"
      />
      <path d={`M${x} ${y}h${field}`} stroke="var(--quiet)" strokeWidth="4" />
      <text x={x} y={y - 8} className="nq">
        0
      </text>
      <text x={x + field} y={y - 8} textAnchor="middle" className="nq">
        {shown(step)}
      </text>
      <text x={x + field * 2} y={y - 8} textAnchor="middle" className="nq">
        {`${shown(step * 2)} ${imperial ? 'ft' : 'm'}`}
      </text>
    </g>
  );
}

function Title({ layer, x }: { readonly layer: FloorLayer | null; readonly x: number }) {
  if (!layer) return null;
  return (
    <>
      <text x={x} y="24" className="floor-title">
        {layer.title}
      </text>
      {layer.note ? (
        <text x={x} y="41" className="nq">
          {layer.note}
        </text>
      ) : null}
    </>
  );
}

function Beside({ labels, frame }: { readonly labels: readonly FloorLabel[]; readonly frame: FloorFrame }) {
  const x = frame.width - LABEL_COLUMN;
  const anchors = labels.map(({ at }) => frame.at(at));
  const places = spreadLabels(
    anchors.map(([, y]) => y),
    LABEL_GAP,
    72,
    frame.height - 74,
  );
  return (
    <>
      {labels.map((label, i) => {
        const [ax, ay] = anchors[i] as Dot;
        const y = places[i] as number;
        return (
          <g key={label.key}>
            <path
              d={`M${pixels(ax)} ${pixels(ay)}L${x - 24} ${pixels(y)}H${x - 8}`}
              stroke="var(--quiet)"
              fill="none"
            />
            <circle cx={ax} cy={ay} r="2.2" fill="var(--ink)" />
            <text x={x} y={y + 4} className={label.warm ? 'nb heat' : 'n'}>
              {label.text}
            </text>
            {label.note ? (
              <text x={x} y={y + 19} className="nq">
                {label.note}
              </text>
            ) : null}
          </g>
        );
      })}
    </>
  );
}

/** On a narrow sheet: letters on the floor, what they stand for under it. */
function Below({ labels, frame }: { readonly labels: readonly FloorLabel[]; readonly frame: FloorFrame }) {
  const top = frame.height - labels.length * LABEL_GAP - 40;
  return (
    <>
      {labels.map((label, i) => {
        const [ax, ay] = frame.at(label.at);
        const letter = String.fromCharCode(97 + i);
        const y = top + i * LABEL_GAP;
        return (
          <g key={label.key}>
            <text x={ax + 5} y={ay - 5} className="nb halo">
              {letter}
            </text>
            <circle cx={ax} cy={ay} r="2.6" fill="var(--ink)" />
            <text x="16" y={y} className={label.warm ? 'nb heat' : 'n'}>
              {`${letter}  ${label.text}`}
            </text>
            {label.note ? (
              <text x="16" y={y + 15} className="nq">
                {label.note}
              </text>
            ) : null}
          </g>
        );
      })}
    </>
  );
}

/** The first corner of a floor nobody entered yet. */
function EmptyFloor({
  width,
  height,
  small,
}: {
  readonly width: number;
  readonly height: number;
  readonly small: boolean;
}) {
  const side = Math.min(width, height) * 0.4;
  const [x, y] = [width / 2 - side / 2, height / 2 + side / 2];
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={words.floor.empty}>
      <path d={`M${x} ${y - side}V${y}H${x + side}`} stroke="var(--ink)" strokeWidth={small ? 3 : WALL} fill="none" />
      <path d={`M${x + side} ${y}V${y - side}H${x}`} stroke="var(--stroke)" strokeDasharray="2 6" fill="none" />
      <circle cx={x} cy={y} r={small ? 4 : 7} fill="var(--chalk)" />
      {small ? null : (
        <text x={width / 2} y={y + 36} textAnchor="middle" className="floor-title">
          {words.floor.empty}
        </text>
      )}
    </svg>
  );
}
