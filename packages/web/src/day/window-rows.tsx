import { words } from '../words.ts';
import type { CoatWindows, Window } from './day-hours.ts';
import type { DayFrame, DayRow } from './frame.ts';
import { fitting, rowName, shownPart } from './row-parts.tsx';
import { clock } from './scale.ts';

/** When each coat may be laid: open, with care or shut, and why. */

const ROW = 21;
const LOW = 18;
const SMALL = 11;

const LOOK = {
  go: { fill: 'var(--go-soft)', hatch: null, edge: 2 },
  caution: { fill: 'var(--caution-soft)', hatch: 'url(#some)', edge: 1 },
  stop: { fill: 'var(--sheet)', hatch: 'url(#shut)', edge: 0.6 },
  'not known': { fill: 'var(--sheet)', hatch: null, edge: 0.6 },
} as const;

export const windowText = ({ word, why }: Window): string =>
  why ? `${words.day.window[word]}: ${why}` : words.day.window[word];

function Stretch({
  window,
  frame,
  top,
  height,
}: {
  readonly window: Window;
  readonly frame: DayFrame;
  readonly top: number;
  readonly height: number;
}) {
  const part = shownPart(frame, window.from, window.until);
  if (!part) return null;
  const { fill, hatch, edge } = LOOK[window.word];
  const { x, width } = part;
  const text = fitting(windowText(window), width - 10);
  return (
    <g>
      <title>
        {`${clock(window.from, frame.data.offset)}–${clock(window.until, frame.data.offset)} ${windowText(window)}`}
      </title>
      <rect x={x} y={top} width={width} height={height} fill={fill} />
      {hatch ? <rect x={x} y={top} width={width} height={height} fill={hatch} opacity=".55" /> : null}
      <rect
        x={x}
        y={top}
        width={width}
        height={height}
        fill="none"
        stroke={window.word === 'go' ? 'var(--go)' : 'var(--stroke)'}
        strokeWidth={frame.small ? Math.min(edge, 1.4) : edge}
      />
      {frame.small || text === '' ? null : (
        <text x={x + 5} y={top + height / 2 + 4} className={`n ${hatch ? 'halo-s' : ''}`}>
          {text}
        </text>
      )}
    </g>
  );
}

const one = (frame: DayFrame): number => (frame.small ? SMALL : frame.dense ? LOW : ROW);
const coatsOf = ({ data }: DayFrame): readonly CoatWindows[] => data.hours?.coats ?? [];

export const windowRows: DayRow = {
  key: 'windows',
  height: (frame) => coatsOf(frame).length * one(frame) + (coatsOf(frame).length > 0 ? 4 : 0),
  draw(frame, top) {
    const tall = one(frame);
    return (
      <>
        {coatsOf(frame).map(({ layer, name, windows }, i) => {
          const y = top + 2 + i * tall;
          return (
            <g key={layer}>
              {rowName(frame, name, y + (frame.dense ? 12 : 14))}
              {windows.map((window) => (
                <Stretch key={window.from} window={window} frame={frame} top={y} height={tall - 3} />
              ))}
            </g>
          );
        })}
      </>
    );
  },
};
