import { momentText } from '../when.ts';
import { words } from '../words.ts';
import { crewRows } from './crew-rows.tsx';
import type { Reading } from './day-data.ts';
import { floorRow } from './floor-row.tsx';
import { ForecastCurves } from './forecast-curves.tsx';
import type { DayFrame, DayRow } from './frame.ts';
import { clock } from './scale.ts';
import { windowRows } from './window-rows.tsx';

/** The rows of the ribbon from the top. Another row is one more entry here. */

const named = (frame: DayFrame, name: string, y: number) =>
  frame.small ? null : (
    <text x={frame.gutter - 8} y={y} textAnchor="end" className="n">
      {name}
    </text>
  );

interface Curve {
  readonly key: 'slab' | 'air' | 'dew';
  readonly colour: string;
  readonly dashes?: string;
}

const CURVES: readonly Curve[] = [
  { key: 'air', colour: 'var(--quiet)', dashes: '1.6 4' },
  { key: 'dew', colour: 'var(--dew)' },
  { key: 'slab', colour: 'var(--warm)' },
];

type Point = readonly [x: number, y: number];

function CurveOf({
  curve,
  points,
  small,
}: {
  readonly curve: Curve;
  readonly points: readonly Point[];
  readonly small: boolean;
}) {
  const { key, colour, dashes } = curve;
  const path = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
  const last = points.at(-1);
  return (
    <>
      <path
        d={path}
        fill="none"
        stroke={colour}
        strokeWidth={key === 'air' ? 1.2 : 1.6}
        {...(dashes ? { strokeDasharray: dashes } : {})}
      />
      {key === 'air'
        ? null
        : points.map(([x, y]) => <circle key={`${x}`} cx={x} cy={y} r={small ? 2 : 3.4} fill={colour} />)}
      {last && !small ? (
        <text x={last[0] + 8} y={last[1] + 4} className={`nb curve-${key}`}>
          {words.day[key]}
        </text>
      ) : null}
    </>
  );
}

/** Slab, dew point and air as they were read: dots are readings, lines only join them. */
const curves: DayRow = {
  key: 'curves',
  grows: true,
  height: () => 90,
  draw(frame, top, height) {
    const { axis, scale, small, data } = frame;
    const low = axis[0]?.value ?? 0;
    const high = axis.at(-1)?.value ?? 1;
    const pad = small ? 6 : 14;
    const y = (value: number): number =>
      top + pad + (1 - (value - low) / Math.max(high - low, 1e-6)) * Math.max(height - 2 * pad, 1);
    const inView = data.readings.filter(({ at }) => at >= scale.start && at <= scale.end);
    const points = (key: Curve['key']): readonly Point[] =>
      inView.flatMap((reading: Reading) => {
        const value = reading[key];
        return value === undefined ? [] : [[scale.x(reading.at), y(value)] as const];
      });
    return (
      <>
        {small
          ? null
          : axis.map(({ value, text }) => (
              <g key={text}>
                <path d={`M${scale.left} ${y(value)}H${scale.right}`} stroke="var(--rule)" strokeWidth=".6" />
                <text x={scale.left - 8} y={y(value) + 4} textAnchor="end" className="nq">
                  {text}
                </text>
              </g>
            ))}
        {inView.length === 0 && !small && !data.hours ? (
          <text x={(scale.left + scale.right) / 2} y={top + height / 2} textAnchor="middle" className="nq">
            {words.day.outline}
          </text>
        ) : null}
        {data.hours ? (
          <ForecastCurves frame={frame} hours={data.hours} y={y}>
            {small
              ? null
              : points('slab').map(([x, at]) => (
                  <path key={x} d={`M${x - 5} ${at}h10M${x} ${at - 5}v10`} stroke="var(--chalk)" strokeWidth="2" />
                ))}
          </ForecastCurves>
        ) : (
          CURVES.map((curve) => <CurveOf key={curve.key} curve={curve} points={points(curve.key)} small={small} />)
        )}
      </>
    );
  },
};

/** Hours in which the sun lies on the floor. */
const sun: DayRow = {
  key: 'sun',
  height: ({ data, small }) => (data.sun.length > 0 ? (small ? (data.hours ? 0 : 10) : 20) : 0),
  draw(frame, top, height) {
    const { scale, data, small } = frame;
    return (
      <>
        {named(frame, words.day.sun, top + height / 2 + 4)}
        {data.sun.map(({ id, from, until }) => {
          const [x, end] = [Math.max(scale.x(from), scale.left), Math.min(scale.x(until), scale.right)];
          if (end <= x) return null;
          return (
            <g key={id}>
              <rect
                x={x}
                y={top + 2}
                width={end - x}
                height={height - 4}
                fill="url(#sun)"
                stroke="var(--warm)"
                strokeWidth=".8"
              />
              {small || end - x < 90 ? null : (
                <text x={x + 6} y={top + height / 2 + 4} className="n halo-s">
                  {`${clock(from, data.offset)}–${clock(until, data.offset)}`}
                </text>
              )}
            </g>
          );
        })}
      </>
    );
  },
};

const LINE = 20;

/** When the floor is wanted again: open poles, because the plan does not promise them yet. One line for each use. */
const wanted: DayRow = {
  key: 'wanted',
  // Where the plan knows when it gives the floor back, the wish stands at that pole.
  height: ({ data, small }) => (small || data.hours ? 0 : data.wanted.length * LINE),
  draw(frame, top) {
    const { scale, data } = frame;
    return (
      <>
        {named(frame, words.day.floor, top + 14)}
        {data.wanted.map(({ what, at, instant }, i) => {
          const inside = at <= scale.end;
          const x = inside ? scale.x(at) : scale.right;
          const y = top + i * LINE;
          const text = inside
            ? `${words.day[what]} ${clock(at, data.offset)}`
            : `${words.day[what]} ${momentText(instant)}`;
          return (
            <g key={what}>
              {inside ? (
                <path
                  d={`M${x} ${y + 2}v${LINE - 3}M${x} ${y + 3}h-7`}
                  stroke="var(--ink)"
                  strokeWidth="2"
                  fill="none"
                />
              ) : (
                <path d={`M${x - 12} ${y + 10}h10m-5-4l5 4-5 4`} stroke="var(--ink)" strokeWidth="1.6" fill="none" />
              )}
              <text x={x - 16} y={y + 14} textAnchor="end" className="n halo-s">
                {text}
              </text>
            </g>
          );
        })}
      </>
    );
  },
};

export const DAY_ROWS: readonly DayRow[] = [curves, sun, windowRows, crewRows, floorRow, wanted];
