import type { JobFile } from '@slabwright/core';
import { useMemo } from 'react';
import type { StepView } from '../steps/step-view.tsx';
import { words } from '../words.ts';
import { answered } from '../worker/plan-types.ts';
import { type DayHours, dayHours } from './day-hours.ts';
import { daySpan, epoch, HOUR, offsetOf } from './scale.ts';

/** What stands on the ribbon, read from the job and its plan: readings given, starts chosen, times wanted. */

export interface Reading {
  readonly at: number;
  readonly slab?: number;
  readonly air?: number;
  readonly dew?: number;
}

export interface Start {
  readonly layer: string;
  readonly name: string;
  readonly at: number;
  readonly index: number;
  /** Nobody chose it: the day proposes it, and moving it chooses it. */
  readonly proposed?: boolean;
}

export interface Wanted {
  readonly what: 'foot' | 'vehicle';
  readonly at: number;
  readonly instant: string;
}

export interface SunPatch {
  readonly id: string;
  readonly from: number;
  readonly until: number;
}

export interface DayData {
  readonly start: number;
  readonly end: number;
  readonly offset: number;
  readonly readings: readonly Reading[];
  readonly starts: readonly Start[];
  readonly wanted: readonly Wanted[];
  readonly sun: readonly SunPatch[];
  /** Null without weather: then only what was read stands here. */
  readonly hours: DayHours | null;
  /** End of what is drawn behind the break mark; absent where nothing comes later. */
  readonly tail?: number;
}

const layerName = (view: StepView, layer: string): string => {
  const system = view.option?.system;
  const found = system && answered(system) ? system.layers.find((one) => one.layer === layer) : undefined;
  return found?.name ?? layer;
};

function readingsOf({ file, voice }: StepView): readonly Reading[] {
  return (file.survey.climate ?? []).map(({ at }, i) => {
    const value = (what: string): number | undefined => {
      const id = `survey.climate.${i}.${what}`;
      return voice.has(id) ? voice.entry(id).value : undefined;
    };
    const [slab, air, dew] = [value('slab'), value('air'), value('dew-point')];
    return {
      at: epoch(at),
      ...(slab === undefined ? {} : { slab }),
      ...(air === undefined ? {} : { air }),
      ...(dew === undefined ? {} : { dew }),
    };
  });
}

/** What follows a start at once, coating and keeping off, stays on the ribbon. */
const AFTER_START = 6 * HOUR;
/** With a forecast the night after the last coat belongs to the day. */
const NIGHT = 14 * HOUR;
/** The break mark is followed by so much at most. */
const MOST_TAIL = 6 * 24 * HOUR;

function startsOf(view: StepView, chosen: JobFile['options'][number] | undefined): readonly Start[] {
  const day = view.option?.day;
  const coats = day && answered(day) ? day.coats : [];
  const typed = chosen?.starts ?? [];
  const own = typed.map(({ layer, at }) => ({ layer, at: epoch(at) }));
  const proposed = coats.flatMap(({ layer, start }) =>
    start?.by === 'proposed' && !typed.some((one) => one.layer === layer)
      ? [{ layer, at: epoch(start.at), proposed: true }]
      : [],
  );
  return [...own, ...proposed].map((one, index) => ({ ...one, index, name: layerName(view, one.layer) }));
}

/** The first instant the day stands on, for its offset. */
const firstOf = (view: StepView, chosen: JobFile['options'][number] | undefined): string | undefined => {
  const day = view.option?.day;
  const proposed = day && answered(day) ? day.coats.find(({ start }) => start)?.start?.at : undefined;
  return chosen?.starts?.[0]?.at ?? proposed ?? view.file.survey.climate?.at(-1)?.at;
};

/** What the plan alone says of the day. */
interface PlannedDay {
  readonly hours: DayHours | null;
  readonly readings: readonly Reading[];
  readonly sun: readonly SunPatch[];
}

const plannedDay = (view: StepView): PlannedDay => ({
  hours: dayHours(view, words.day.waits),
  readings: readingsOf(view).filter(({ at }) => Number.isFinite(at)),
  sun: view.planned.areas.flatMap(({ sun: patches }) =>
    patches.flatMap(({ id, from: since, until: to }) =>
      since && to ? [{ id, from: epoch(since), until: epoch(to) }] : [],
    ),
  ),
});

/** The day of the plan with the starts as they are typed. */
export function useDayData(view: StepView | null, typed: JobFile): DayData | null {
  const day = useMemo(() => (view ? plannedDay(view) : null), [view]);
  return useMemo(() => (view && day ? dayData(view, typed, day) : null), [view, typed, day]);
}

/** Null while the job knows no hour at all. Starts follow the hand; what they lead to follows when the plan is there. */
function dayData(view: StepView, file: JobFile, { hours, readings, sun }: PlannedDay): DayData | null {
  const chosen = file.options.find(({ id }) => id === view.option?.id);
  const starts = startsOf(view, chosen);
  const first = firstOf(view, chosen);
  if (first === undefined) return null;
  const offset = offsetOf(first);
  // Readings far from the day of the coats belong to another day; the survey lists them.
  const anchors = starts.length > 0 ? starts.map(({ at }) => at) : [epoch(first)];
  const [from, until] = [Math.min(...anchors) - 12 * HOUR, Math.max(...anchors) + 24 * HOUR];
  const near = readings.filter(({ at }) => at >= from && at <= until);
  const wanted: Wanted[] = [];
  if (file.use?.footBy) wanted.push({ what: 'foot', at: epoch(file.use.footBy), instant: file.use.footBy });
  if (file.use?.vehicleBy) wanted.push({ what: 'vehicle', at: epoch(file.use.vehicleBy), instant: file.use.vehicleBy });
  const close = wanted.filter(({ at }) => at <= until).map(({ at }) => at);
  const worked = (hours?.hands ?? []).flatMap(({ blocks }) =>
    blocks.flatMap((one) => (one.from >= from && one.until <= until ? [one.from, one.until] : [])),
  );
  const span = daySpan(
    [
      ...near.map(({ at }) => at),
      ...starts.flatMap(({ at }) => [at, at + (hours ? NIGHT : AFTER_START)]),
      ...(hours ? [] : close),
      ...worked,
      ...(hours?.least ?? []).map(({ at }) => at),
    ],
    offset,
  );
  if (!span) return null;
  const [start, end] = span;
  const later = [...(hours?.poles ?? []).map(({ at, high }) => high ?? at), ...wanted.map(({ at }) => at)].filter(
    (at) => at > end && at <= end + MOST_TAIL,
  );
  return {
    start,
    end,
    offset,
    readings: near,
    starts,
    wanted,
    sun,
    hours,
    ...(hours && later.length > 0 ? { tail: Math.max(...later) + 6 * HOUR } : {}),
  };
}

/** What the ribbon stands on, in words. */
export const dayStands = (view: StepView | null): string =>
  view?.planned.curves && view.planned.weather ? words.day.forecast(view.planned.weather.source) : words.day.given;
