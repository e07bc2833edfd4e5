import type { AreaDrawing, Units } from '../worker/api.ts';
import { barStep, type FloorFrame, FOOT } from './geometry.ts';

/** Overall width and depth with slashes, as a drawing has them. */
export function Dimensions({ area, frame }: { readonly area: AreaDrawing; readonly frame: FloorFrame }) {
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

interface BarProps {
  readonly frame: FloorFrame;
  readonly units: Units;
  readonly left: number | null;
  readonly y: number;
}

/** Two fields of a round length. */
export function ScaleBar({ frame, units, left, y }: BarProps) {
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
