import type { JobFile } from '@slabwright/core';
import type { StepView } from '../steps/step-view.tsx';
import { answered } from '../worker/plan-types.ts';
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

/** Null while the job knows no hour at all. */
export function dayData(view: StepView, typed: JobFile = view.file): DayData | null {
  const { option, planned } = view;
  // Starts follow the hand; what they lead to follows when the plan is there.
  const file = typed;
  const chosen = file.options.find(({ id }) => id === option?.id);
  const starts = (chosen?.starts ?? []).map(
    ({ layer, at }, index): Start => ({ layer, name: layerName(view, layer), at: epoch(at), index }),
  );
  const readings = readingsOf(view).filter(({ at }) => Number.isFinite(at));
  const instants = [chosen?.starts?.[0]?.at, file.survey.climate?.at(-1)?.at].filter((one) => one !== undefined);
  const [first] = instants;
  if (first === undefined) return null;
  const offset = offsetOf(first);
  // Readings far from the day of the coats belong to another day; the survey lists them.
  const anchors = starts.length > 0 ? starts.map(({ at }) => at) : [epoch(first)];
  const [from, until] = [Math.min(...anchors) - 12 * HOUR, Math.max(...anchors) + 24 * HOUR];
  const near = readings.filter(({ at }) => at >= from && at <= until);
  const wanted: Wanted[] = [];
  if (file.use?.footBy) wanted.push({ what: 'foot', at: epoch(file.use.footBy), instant: file.use.footBy });
  if (file.use?.vehicleBy) wanted.push({ what: 'vehicle', at: epoch(file.use.vehicleBy), instant: file.use.vehicleBy });
  const sun = planned.areas.flatMap(({ sun: patches }) =>
    patches.flatMap(({ id, from: since, until: to }) =>
      since && to ? [{ id, from: epoch(since), until: epoch(to) }] : [],
    ),
  );
  const close = wanted.filter(({ at }) => at <= until).map(({ at }) => at);
  const span = daySpan(
    [...near.map(({ at }) => at), ...starts.flatMap(({ at }) => [at, at + AFTER_START]), ...close],
    offset,
  );
  if (!span) return null;
  return { start: span[0], end: span[1], offset, readings: near, starts, wanted, sun };
}
