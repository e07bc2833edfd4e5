import type { FloorFrame } from '../floor/geometry.ts';
import { alongLabel } from './along-label.ts';
import type { Draw } from './draw-context.tsx';
import { lengthText } from './lengths.ts';
import { cornersOf, isSide, linesOf } from './tape.ts';
import { offText } from './tape-panel.tsx';
import { words } from './words.ts';

/** Sides and diagonals on the floor, each with how far the solved room is off its reading. */
export function TapeLines({ draw, frame }: { readonly draw: Draw; readonly frame: FloorFrame }) {
  const corners = cornersOf(draw.area);
  const { solved } = draw;
  if (solved.is !== 'room') return null;
  const ring = draw.outline.map(frame.at);
  const most = Math.max(...[...solved.residuals.values()].map(Math.abs), 0);
  return (
    <>
      {linesOf(draw.area).map((line) => {
        const [a, b] = [draw.outline[line.from], draw.outline[line.to]];
        const off = solved.residuals.get(line.index);
        if (!a || !b || line.length === null || off === undefined) return null;
        const side = isSide(line, corners.length);
        const [from, to] = [frame.at(a), frame.at(b)];
        const { x, y, turn } = alongLabel(from, to, side ? ring : [], side ? 16 : 9, side ? 0.5 : 0.3);
        const worst = most > 0.0005 && Math.abs(off) === most;
        return (
          <g key={line.index}>
            {side ? null : (
              <path
                d={`M${from[0]} ${from[1]}L${to[0]} ${to[1]}`}
                stroke="var(--stroke)"
                strokeDasharray="6 4"
                fill="none"
              />
            )}
            <text
              transform={`translate(${x},${y}) rotate(${turn})`}
              dy="4"
              textAnchor="middle"
              className={worst ? 'nb halo' : 'n halo'}
            >
              {`${lengthText(line.length, draw.units)}, ${words.residual(offText(off, draw.units))}`}
            </text>
          </g>
        );
      })}
      {draw.outline.map((dot, i) => {
        const [x, y] = frame.at(dot);
        return (
          <g key={corners[i]}>
            <circle cx={x} cy={y} r="5" fill="var(--sheet)" stroke="var(--ink)" strokeWidth="2" />
            <text x={x} y={y - 10} textAnchor="middle" className="nb halo-s">
              {corners[i]}
            </text>
          </g>
        );
      })}
    </>
  );
}
