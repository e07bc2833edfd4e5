import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { words } from '../words.ts';
import type { Start } from './day-data.ts';
import type { DayFrame } from './frame.ts';
import { clock, MINUTE } from './scale.ts';

const STEP = 5 * MINUTE;
const snapped = (time: number): number => Math.round(time / STEP) * STEP;

interface FlagsProps {
  readonly frame: DayFrame;
  readonly bottom: number;
  readonly onMove?: (layer: string, at: number) => void;
}

/** Starts of the coats as flags: the first one solid. Each is dragged, or moved by the arrow keys. */
export function StartFlags({ frame, bottom, onMove }: FlagsProps) {
  const inView = frame.data.starts.filter(({ at }) => at >= frame.scale.start && at <= frame.scale.end);
  // The first is drawn last, so that it lies on top.
  return [...inView]
    .reverse()
    .map((start) => (
      <Flag
        key={start.layer}
        start={start}
        frame={frame}
        bottom={bottom}
        after={endOfFlagBefore(start, inView, frame)}
        {...(onMove ? { onMove } : {})}
      />
    ));
}

const flagText = ({ name, at }: Start, { small, data }: DayFrame): string =>
  small ? clock(at, data.offset) : `${name} ${clock(at, data.offset)}`;

const flagWidth = (start: Start, frame: DayFrame): number =>
  (frame.small ? 8 : start.index === 0 ? 34 : 18) + flagText(start, frame).length * (frame.small ? 6.6 : 7.2);

/** A flag close behind another one begins where that one ends, so that both can be read and taken hold of. */
function endOfFlagBefore(start: Start, all: readonly Start[], frame: DayFrame): number {
  const before = all.filter((one) => one.at < start.at || (one.at === start.at && one.index < start.index));
  return [...before]
    .sort((a, b) => a.at - b.at)
    .reduce((end, one) => Math.max(frame.scale.x(one.at) - 1.5, end) + flagWidth(one, frame) + 2, 0);
}

function Flag({ start, frame, bottom, after, onMove }: FlagsProps & { readonly start: Start; readonly after: number }) {
  const { scale, data, small } = frame;
  const drag = useRef<{ readonly id: number; readonly by: number } | null>(null);
  const first = start.index === 0;
  const x = scale.x(start.at);
  const time = clock(start.at, data.offset);
  const text = flagText(start, frame);
  const width = flagWidth(start, frame);
  const height = small ? 15 : 24;
  // Near the right end the flag flies to the left.
  const flies = x + width > frame.width ? -1 : 1;
  const box = flies > 0 ? Math.max(x - 1.5, Math.min(after, frame.width - width)) : x + 1.5 - width;
  const moved = (event: PointerEvent<SVGGElement>): number => {
    const bounds = event.currentTarget.ownerSVGElement?.getBoundingClientRect();
    return event.clientX - (bounds?.left ?? 0);
  };
  const move = (at: number): void => onMove?.(start.layer, snapped(at));
  const keys = (event: KeyboardEvent): void => {
    const by = {
      ArrowLeft: -STEP,
      ArrowDown: -STEP,
      ArrowRight: STEP,
      ArrowUp: STEP,
      PageDown: -6 * STEP,
      PageUp: 6 * STEP,
    }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    move(start.at + by);
  };
  const handle = onMove
    ? {
        role: 'slider',
        tabIndex: 0,
        'aria-label': words.hours.start(start.name),
        'aria-valuemin': Math.round(scale.start / MINUTE),
        'aria-valuemax': Math.round(scale.end / MINUTE),
        'aria-valuenow': Math.round(start.at / MINUTE),
        'aria-valuetext': time,
        onKeyDown: keys,
        onPointerDown: (event: PointerEvent<SVGGElement>) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          drag.current = { id: event.pointerId, by: moved(event) - x };
        },
        onPointerMove: (event: PointerEvent<SVGGElement>) => {
          if (drag.current?.id === event.pointerId) move(scale.timeAt(moved(event) - drag.current.by));
        },
        onPointerUp: () => {
          drag.current = null;
        },
        onPointerCancel: () => {
          drag.current = null;
        },
      }
    : {};
  return (
    <g className={onMove ? 'flag' : undefined} {...handle}>
      <path
        d={`M${x} ${small ? 3 : 4}V${bottom}`}
        stroke="var(--chalk)"
        strokeWidth={first ? (small ? 2.6 : 3) : 1.4}
        {...(first ? {} : { strokeDasharray: '4 3' })}
      />
      {onMove ? <rect x={box - 6} y={0} width={Math.max(width + 12, 44)} height="44" fill="transparent" /> : null}
      <rect
        x={box}
        y={2}
        width={width}
        height={height}
        fill={first ? 'var(--chalk)' : 'var(--sheet)'}
        stroke="var(--chalk)"
        strokeWidth="1.6"
      />
      {first && !small ? (
        <path d={`M${box + 10} 8v12M${box + 15} 8v12M${box + 20} 8v12`} stroke="var(--on-chalk)" strokeWidth="1.6" />
      ) : null}
      <text
        x={box + (small ? 4 : first ? 28 : 9)}
        y={small ? 13.5 : 18.5}
        className={`${small ? 'n' : 'nb'} ${first ? 'on-chalk' : 'chalk'}`}
      >
        {text}
      </text>
    </g>
  );
}
