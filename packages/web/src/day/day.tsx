import { useSize } from '../use-size.ts';
import { dayText } from '../when.ts';
import { words } from '../words.ts';
import type { AxisTick } from '../worker/api.ts';
import type { DayData } from './day-data.ts';
import type { DayFrame } from './frame.ts';
import { DAY_ROWS } from './rows.tsx';
import { clock, dateAt, dayScale, ticks } from './scale.ts';
import { StartFlags } from './start-flags.tsx';

const HANDLES = 30;
const AXIS = 20;
/** Narrower than this the ribbon pans inside its own frame. */
const LEAST_WIDTH = 640;

const tickText = (time: number, offset: number): string => {
  const hour = clock(time, offset);
  return hour === '00:00' ? dayText(dateAt(time, offset)) : hour.slice(0, 2);
};

interface DayProps {
  readonly data: DayData;
  readonly axis: readonly AxisTick[];
  readonly small?: boolean;
  readonly gutter: number;
  readonly onMove?: (index: number, at: number) => void;
}

/** The day as a ribbon of hours, drawn at the pixel size it is shown in. */
export function Day(props: DayProps) {
  const [ref, size] = useSize<HTMLDivElement>();
  return (
    <div className={props.small ? 'drawing' : 'drawing pans'} ref={ref}>
      {size && size.width > 20 && size.height > 20 ? (
        <Ribbon {...props} width={props.small ? size.width : Math.max(size.width, LEAST_WIDTH)} height={size.height} />
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
  height,
}: DayProps & { readonly width: number; readonly height: number }) {
  const left = small ? 10 : gutter;
  const right = small ? 10 : 76;
  const scale = dayScale(data.start, data.end, left, width - right);
  const frame: DayFrame = { scale, data, axis, gutter: left, width, small };
  const top = small ? 20 : HANDLES;
  const bottom = height - AXIS;
  const rows = DAY_ROWS.map((row) => ({ row, height: row.height(frame) })).filter(({ height: own }) => own > 0);
  const fixed = rows.filter(({ row }) => !row.grows).reduce((sum, { height: own }) => sum + own, 0);
  const room = Math.max(bottom - top - fixed, 24);
  let y = top;
  const placed = rows.map(({ row, height: own }) => {
    const tall = row.grows ? room : own;
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
      <StartFlags frame={frame} bottom={bottom} {...(onMove ? { onMove } : {})} />
    </svg>
  );
}
