import { memo } from 'react';
import { useSize } from '../use-size.ts';
import { dayText } from '../when.ts';
import { words } from '../words.ts';
import type { AxisTick } from '../worker/api.ts';
import { same } from '../worker/changes.ts';
import type { DayData } from './day-data.ts';
import { Poles } from './floor-row.tsx';
import type { DayFrame, DayRow } from './frame.ts';
import { DAY_ROWS } from './rows.tsx';
import { clock, dateAt, dayScale, ticks } from './scale.ts';
import { StartFlags } from './start-flags.tsx';

const HANDLES = 30;
const AXIS = 20;
/** Narrower than this the ribbon pans inside its own frame. */
const LEAST_WIDTH = 640;
/** With hands and windows in words it needs more. */
const LEAST_WITH_HOURS = 960;
/** Room behind the break mark. */
const TAIL = 216;
const BREAK = 30;
/** Curves lower than this say nothing, and the names of the rows would stand under the start to type. */
const LEAST_CURVES = 128;
const LEAST_DENSE = 112;

const tickText = (time: number, offset: number): string => {
  const hour = clock(time, offset);
  return hour === '00:00' ? dayText(dateAt(time, offset)) : hour.slice(0, 2);
};

interface DayProps {
  readonly data: DayData;
  readonly axis: readonly AxisTick[];
  readonly small?: boolean;
  readonly gutter: number;
  readonly onMove?: (layer: string, at: number) => void;
}

/** The day as a ribbon of hours, drawn at the pixel size it is shown in. */
export function Day(props: DayProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className={props.small ? 'drawing' : 'drawing pans'} ref={ref}>
      {size && size.width > 20 && size.height > 20 ? (
        <Ribbon
          {...props}
          width={props.small ? size.width : Math.max(size.width, props.data.hours ? LEAST_WITH_HOURS : LEAST_WIDTH)}
          height={size.height}
        />
      ) : null}
    </div>
  );
}

function Ribbon({
  data,
  axis,
  small = false,
  gutter,
  onMove,
  width,
  height: room,
}: DayProps & { readonly width: number; readonly height: number }) {
  const left = small ? 10 : gutter;
  const behind = !small && data.tail !== undefined;
  const right = small ? 10 : behind ? TAIL + BREAK : data.hours ? 24 : 76;
  const scale = dayScale(data.start, data.end, left, width - right);
  const tail = behind ? dayScale(data.end, data.tail ?? data.end, width - TAIL, width - 14) : null;
  const top = small ? 20 : HANDLES;
  const roomy: DayFrame = { scale, tail, data, axis, gutter: left, width, small, dense: false };
  const rowsIn = (frame: DayFrame) =>
    DAY_ROWS.map((row) => ({ row, height: row.height(frame) })).filter(({ height: own }) => own > 0);
  const sum = (all: ReturnType<typeof rowsIn>): number =>
    all.filter(({ row }) => !row.grows).reduce((total, { height: own }) => total + own, 0);
  const dense = !small && sum(rowsIn(roomy)) + LEAST_CURVES + top + AXIS > room + 4;
  const frame: DayFrame = { ...roomy, dense };
  const rows = rowsIn(frame);
  const fixed = sum(rows);
  const grow = Math.max(room - AXIS - top - fixed, small ? 24 : dense ? LEAST_DENSE : LEAST_CURVES);
  const height = top + fixed + grow + AXIS;
  let y = top;
  const placed = rows.map(({ row, height: own }): Placed => {
    const tall = row.grows ? grow : own;
    const place = { row, top: y, height: tall };
    y += tall;
    return place;
  });
  const label = words.day.label(clock(data.start, data.offset), clock(data.end, data.offset));
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role={small ? 'img' : 'group'}
      aria-label={label}
    >
      <Rows frame={frame} placed={placed} top={top} height={height} />
      <StartFlags frame={frame} bottom={height - AXIS} {...(onMove ? { onMove } : {})} />
    </svg>
  );
}

interface Placed {
  readonly row: DayRow;
  readonly top: number;
  readonly height: number;
}

interface RowsProps {
  readonly frame: DayFrame;
  readonly placed: readonly Placed[];
  readonly top: number;
  readonly height: number;
}

const spans = ({ scale, tail, gutter, width, small, dense }: DayFrame): readonly unknown[] => [
  [scale.start, scale.end, scale.left, scale.right],
  tail ? [tail.start, tail.end, tail.left, tail.right] : null,
  [gutter, width, small, dense],
];

/** Everything but the flags: a hand that moves a flag moves nothing else until the plan has followed. */
function sameRows(before: RowsProps, after: RowsProps): boolean {
  const [one, other] = [before.frame, after.frame];
  const { starts: _, hours: hoursBefore, ...dataBefore } = one.data;
  const { starts: __, hours: hoursAfter, ...dataAfter } = other.data;
  return (
    hoursBefore === hoursAfter &&
    before.height === after.height &&
    same(one.axis, other.axis) &&
    same(spans(one), spans(other)) &&
    same(dataBefore, dataAfter)
  );
}

/** Days behind the break mark that are named: each as far from the one before as its word is long. */
const LEAST_APART = 46;

function apart(times: readonly number[], x: (time: number) => number): readonly number[] {
  const named: number[] = [];
  for (const time of times) {
    const before = named.at(-1);
    if (before === undefined || x(time) - x(before) >= LEAST_APART) named.push(time);
  }
  return named;
}

const Rows = memo(function Rows({ frame, placed, top, height }: RowsProps) {
  const { scale, tail, data, small, width } = frame;
  const bottom = height - AXIS;
  const foot = placed.find(({ row }) => row.key === 'floor');
  return (
    <>
      {ticks(scale, data.offset, small ? 52 : 64).map((time) => (
        <g key={time}>
          <path
            d={`M${scale.x(time)} ${top - 2}V${bottom}`}
            stroke="var(--rule)"
            strokeWidth={clock(time, data.offset) === '00:00' ? 1.4 : 0.7}
          />
          <text x={scale.x(time)} y={height - 5} textAnchor="middle" className="nq">
            {tickText(time, data.offset)}
          </text>
        </g>
      ))}
      {placed.map(({ row, top: at, height: tall }) => (
        <g key={row.key}>{row.draw(frame, at, tall)}</g>
      ))}
      {tail
        ? apart(
            ticks(tail, data.offset, 400).filter((time) => tail.x(time) < width - 20),
            (time) => tail.x(time),
          ).map((time) => (
            <text key={time} x={tail.x(time)} y={height - 5} textAnchor="middle" className="nq">
              {dayText(dateAt(time, data.offset)).slice(0, 6)}
            </text>
          ))
        : null}
      {small || !foot ? null : <Poles frame={frame} foot={foot.top} />}
    </>
  );
}, sameRows);
