import type { ReactNode } from 'react';
import { words } from '../words.ts';
import type { SiteCurves } from '../worker/api.ts';
import type { DayHours, Least } from './day-hours.ts';
import type { DayFrame } from './frame.ts';
import { clock } from './scale.ts';

/** Slab and dew point with their bands, air dotted, and the lowest margins with their hours. */

type Place = (value: number) => number;

interface Drawn {
  readonly frame: DayFrame;
  readonly hours: DayHours;
  readonly y: Place;
}

const timeOf = ({ from, step }: SiteCurves, i: number): number => from + i * step;

function indices({ frame, hours: { curves } }: Drawn): readonly number[] {
  return curves.slab
    .map((_, i) => i)
    .filter((i) => timeOf(curves, i) >= frame.scale.start && timeOf(curves, i) <= frame.scale.end);
}

const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** A label stands where its curve leaves room: late in the afternoon, above or below the line. */
function nameAt({ frame, hours: { curves }, y }: Drawn, values: readonly number[], share: number, up: boolean) {
  const time = frame.scale.start + (frame.scale.end - frame.scale.start) * share;
  const value = values[Math.round((time - curves.from) / curves.step)];
  return value === undefined ? null : { x: frame.scale.x(time), y: y(value) + (up ? -8 : 16) };
}

/** What was read lies over the curves and under the words. */
export function ForecastCurves({ children, ...drawn }: Drawn & { readonly children?: ReactNode }) {
  const { frame, hours, y } = drawn;
  const { curves, rising, least } = hours;
  const shown = indices(drawn);
  const at = (values: readonly number[]): readonly (readonly [number, number])[] =>
    shown.map((i) => [frame.scale.x(timeOf(curves, i)), y(values[i] ?? 0)] as const);
  const band = (low: readonly number[], high: readonly number[]): string =>
    `${path([...at(high), ...[...at(low)].reverse()])}Z`;
  const warming = (from: number, until: number): string =>
    path(
      shown
        .filter((i) => timeOf(curves, i) >= from - curves.step && timeOf(curves, i) <= until)
        .map((i) => [frame.scale.x(timeOf(curves, i)), y(curves.slab[i] ?? 0)] as const),
    );
  const names = [
    { key: 'slab', place: nameAt(drawn, curves.slab, 0.62, true) },
    { key: 'dew', place: nameAt(drawn, curves.dew, 0.72, false) },
    { key: 'air', place: nameAt(drawn, curves.air, 0.33, true) },
  ] as const;
  return (
    <>
      <path d={band(curves.slabLow, curves.slabHigh)} fill="var(--warm)" opacity=".2" />
      <path d={band(curves.dewLow, curves.dewHigh)} fill="var(--dew)" opacity=".2" />
      <path d={path(at(curves.air))} fill="none" stroke="var(--quiet)" strokeWidth="1.3" strokeDasharray="1.6 4" />
      <path d={path(at(curves.slab))} fill="none" stroke="var(--warm)" strokeWidth={frame.small ? 2 : 2.4} />
      <path d={path(at(curves.dew))} fill="none" stroke="var(--dew)" strokeWidth={frame.small ? 2 : 2.4} />
      {rising.map(({ from, until }) => (
        <path
          key={from}
          d={warming(from, until)}
          fill="none"
          stroke="var(--caution)"
          strokeWidth={frame.small ? 4 : 5}
        />
      ))}
      {children}
      {frame.small
        ? null
        : names.map(({ key, place }) =>
            place ? (
              <text key={key} x={place.x} y={place.y} className={`nb halo-s curve-${key}`}>
                {words.day[key]}
              </text>
            ) : null,
          )}
      {frame.small ? null : least.map((one) => <Lowest key={one.layer} least={one} drawn={drawn} />)}
    </>
  );
}

/** The gap between slab and dew point where it is smallest, measured off like a dimension. */
function Lowest({ least, drawn: { frame, hours, y } }: { readonly least: Least; readonly drawn: Drawn }) {
  const { curves } = hours;
  const i = Math.round((least.at - curves.from) / curves.step);
  const [slab, dew] = [curves.slab[i], curves.dew[i]];
  if (slab === undefined || dew === undefined || least.at < frame.scale.start || least.at > frame.scale.end)
    return null;
  const x = frame.scale.x(least.at);
  const text = words.day.leastAt(least.text, clock(least.at, frame.data.offset));
  const left = x + text.length * 6.6 > frame.scale.right;
  return (
    <g>
      <path
        d={`M${x} ${y(slab)}V${y(dew)}M${x - 4} ${y(slab)}h8M${x - 4} ${y(dew)}h8`}
        stroke="var(--ink)"
        strokeWidth="1.6"
        fill="none"
      />
      <text
        x={left ? x - 8 : x + 8}
        y={(y(slab) + y(dew)) / 2 + 4}
        textAnchor={left ? 'end' : 'start'}
        className="nb halo-s"
      >
        {text}
      </text>
    </g>
  );
}
