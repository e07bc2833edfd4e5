import { dayText } from '../when.ts';
import { words } from '../words.ts';
import type { FloorBears, Pole } from './day-hours.ts';
import type { DayFrame, DayRow } from './frame.ts';
import { fitting, rowName, shownPart } from './row-parts.tsx';
import { clock, type DayScale, dateAt } from './scale.ts';

/** What the floor bears, and the poles at which it is given back, each with its band and what was promised. */

const ROW = 22;
/** Poles stand apart so that their words do not meet. */
const STEP = 48;
/** Three lines of words stand beside the pole, over the row. */
const HEAD = 40;

const GROUND: Readonly<Record<FloorBears, string>> = {
  bare: 'var(--slab)',
  off: 'var(--slab-deep)',
  crew: 'var(--sheet)',
  foot: 'var(--slab)',
  light: 'var(--slab)',
  vehicle: 'var(--slab)',
};

const scaleFor = ({ scale, tail }: DayFrame, at: number): DayScale | null =>
  at >= scale.start && at <= scale.end ? scale : tail && at > scale.end && at <= tail.end ? tail : null;

function when(frame: DayFrame, at: number): string {
  const { offset } = frame.data;
  // Behind the break mark the weekday is enough: the axis has the dates.
  return at > frame.scale.end ? `${dayText(dateAt(at, offset)).slice(0, 3)} ${clock(at, offset)}` : clock(at, offset);
}

/** Both ends of a band, the day said once. */
function bandText(frame: DayFrame, { low, high }: Pole): string {
  const { offset } = frame.data;
  if (high === undefined) return words.day.orLater(when(frame, low));
  const same = dateAt(low, offset) === dateAt(high, offset) || low <= frame.scale.end;
  return `${when(frame, low)}–${same ? clock(high, offset) : when(frame, high)}`;
}

function PoleOf({
  pole,
  frame,
  foot,
  order,
}: {
  readonly pole: Pole;
  readonly frame: DayFrame;
  readonly foot: number;
  readonly order: number;
}) {
  const scale = scaleFor(frame, pole.at);
  if (!scale) return null;
  const inside = (at: number): number => Math.min(Math.max(scale.x(at), scale.left), scale.right);
  const [x, low, high] = [scale.x(pole.at), inside(pole.low), inside(pole.high ?? pole.at)];
  const wanted = frame.data.wanted.find(({ what }) => what === pole.what);
  const head = foot - HEAD - order * STEP;
  const lines = [
    `${words.day.given_back[pole.what]} ${when(frame, pole.at)}`,
    bandText(frame, pole),
    ...(wanted ? [words.day.wantedBy(when(frame, wanted.at))] : []),
  ];
  const longest = Math.max(...lines.map((line) => line.length)) * 6.4;
  // Words stand right of the pole, unless the sheet ends there or another pole stands in them.
  const others = (frame.data.hours?.poles ?? []).filter((one) => one !== pole && scaleFor(frame, one.at) === scale);
  const crossed = others.some((one) => scale.x(one.at) > x && scale.x(one.at) < x + longest + 8);
  const left = x - longest - 8 > frame.scale.left && (crossed || x + longest + 8 > frame.width - 4);
  return (
    <g>
      <path d={`M${x} ${foot + ROW - 5}V${head}h${left ? -6 : 6}`} stroke="var(--ink)" strokeWidth="2" fill="none" />
      <path
        d={`M${low} ${foot + ROW / 2 - 2}H${high}M${low} ${foot + 4}v11${pole.high === undefined ? '' : `M${high} ${foot + 4}v11`}`}
        stroke="var(--ink)"
        strokeWidth="2"
        fill="none"
      />
      {lines.map((line, i) => (
        <text
          key={line}
          x={left ? x - 9 : x + 9}
          y={head + 4 + i * 14}
          textAnchor={left ? 'end' : 'start'}
          className={`${i === 0 ? 'nb' : 'n'} halo-s`}
        >
          {line}
        </text>
      ))}
    </g>
  );
}

/** Whether the band of a pole lies over a word of the row; the pole says it itself. */
const underPole = (frame: DayFrame, from: number, to: number): boolean =>
  (frame.data.hours?.poles ?? []).some(({ at, low, high = low }) => {
    const scale = scaleFor(frame, at);
    return scale === frame.scale && scale.x(low) < to && scale.x(high) > from;
  });

export const floorRow: DayRow = {
  key: 'floor',
  height: ({ data, small }) => (data.hours && !small ? ROW : 0),
  draw(frame, top) {
    const { hours } = frame.data;
    if (!hours) return null;
    return (
      <>
        {rowName(frame, words.day.bearsRow, top + 14)}
        {hours.floor.map(({ from, until, bears }) => {
          const part = shownPart(frame, from, until);
          if (!part) return null;
          const fits = fitting(words.day.bears[bears], part.width - 8);
          const text = underPole(frame, part.x, part.x + 12 + fits.length * 6.1) ? '' : fits;
          return (
            <g key={from}>
              <rect x={part.x} y={top + 2} width={part.width} height={ROW - 5} fill={GROUND[bears]} />
              {bears === 'off' ? (
                <rect x={part.x} y={top + 2} width={part.width} height={ROW - 5} fill="url(#some)" opacity=".7" />
              ) : null}
              {text ? (
                <text x={part.x + 5} y={top + 14} className={bears === 'off' ? 'n halo-deep' : 'n'}>
                  {text}
                </text>
              ) : null}
            </g>
          );
        })}
        {frame.tail ? <Tail frame={frame} top={top} scale={frame.tail} /> : null}
      </>
    );
  },
};

function Tail({ frame, top, scale }: { readonly frame: DayFrame; readonly top: number; readonly scale: DayScale }) {
  const x = frame.scale.right + 14;
  return (
    <>
      <rect x={scale.left} y={top + 2} width={scale.right - scale.left} height={ROW - 5} fill="var(--slab)" />
      <path
        d={`M${x - 6} ${top - 2}l6 ${ROW + 2}M${x} ${top - 2}l6 ${ROW + 2}`}
        stroke="var(--ink)"
        strokeWidth="1.6"
        fill="none"
      />
    </>
  );
}

/** Drawn over the other rows, under the flags. */
export function Poles({ frame, foot }: { readonly frame: DayFrame; readonly foot: number }) {
  const poles = (frame.data.hours?.poles ?? []).filter(({ at }) => scaleFor(frame, at) !== null);
  const before = (i: number): number => {
    const scale = scaleFor(frame, poles[i]?.at ?? 0);
    return poles.slice(0, i).filter(({ at }) => scaleFor(frame, at) === scale).length;
  };
  return poles.map((pole, i) => <PoleOf key={pole.what} pole={pole} frame={frame} foot={foot} order={before(i) % 3} />);
}
