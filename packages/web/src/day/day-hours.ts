import type { DayPlan, Published, SchedulePlan, VerdictWord } from '@slabwright/core';
import type { StepView } from '../steps/step-view.tsx';
import { taskName } from '../steps/task-name.ts';
import type { SiteCurves } from '../worker/api.ts';
import { answered } from '../worker/plan-types.ts';
import { epoch, HOUR, MINUTE } from './scale.ts';

/** What the forecast adds to the ribbon: windows, hands at work, what the floor bears and when it is given back. */

export interface Window {
  readonly from: number;
  readonly until: number;
  readonly word: VerdictWord;
  /** Why it is not open, and the smallest change that would open it. */
  readonly why?: string;
  readonly lift?: string;
}

export interface CoatWindows {
  readonly layer: string;
  readonly name: string;
  readonly windows: readonly Window[];
}

export interface Block {
  readonly key: string;
  readonly from: number;
  readonly until: number;
  readonly text: string;
  readonly is: 'task' | 'coat' | 'wait';
}

export interface Hand {
  readonly who: string;
  readonly blocks: readonly Block[];
}

export type FloorBears = 'bare' | 'off' | 'crew' | 'foot' | 'light' | 'vehicle';

export interface FloorStretch {
  readonly from: number;
  readonly until: number;
  readonly bears: FloorBears;
}

export interface Pole {
  readonly what: 'foot' | 'light' | 'vehicle' | 'full';
  readonly at: number;
  readonly low: number;
  /** Absent when the slow side never gets there. */
  readonly high?: number;
}

/** Lowest margin of a coat and its moment. */
export interface Least {
  readonly layer: string;
  readonly at: number;
  readonly text: string;
}

/** A coat laid on a slab that warms while it is wet. */
export interface Rising {
  readonly from: number;
  readonly until: number;
}

export interface DayHours {
  readonly curves: SiteCurves;
  readonly coats: readonly CoatWindows[];
  readonly hands: readonly Hand[];
  readonly floor: readonly FloorStretch[];
  readonly poles: readonly Pole[];
  readonly least: readonly Least[];
  readonly rising: readonly Rising[];
}

type Day = Published<DayPlan>;
type Coat = Day['coats'][number];

/** Starts are judged every so often; a stretch holds until the next one. */
const EVERY = 15 * MINUTE;

function windowsOf(coats: Day['coats'], say: StepView['voice']['say']): readonly CoatWindows[] {
  return coats.map(({ layer, name, starts }) => ({
    layer,
    name,
    windows: starts.map(
      ({ from, until, word, limiting }): Window => ({
        from: epoch(from),
        until: epoch(until) + EVERY,
        word,
        ...(limiting ? { why: say(limiting) } : {}),
        ...(limiting?.lift ? { lift: say(limiting.lift) } : {}),
      }),
    ),
  }));
}

function handsOf(schedule: Published<SchedulePlan>, named: (work: string) => string, waits: string): readonly Hand[] {
  const hands = new Map<string, Block[]>();
  const add = (who: string, block: Block): void => {
    hands.set(who, [...(hands.get(who) ?? []), block]);
  };
  for (const [i, { who, from, until, work, layer }] of schedule.tasks.entries()) {
    const is = layer ? 'coat' : 'task';
    add(who, { key: `t${i}`, from: epoch(from), until: epoch(until), text: named(work), is });
  }
  for (const [i, { who, from, until }] of schedule.waits.entries())
    add(who, { key: `w${i}`, from: epoch(from), until: epoch(until), text: waits, is: 'wait' });
  return [...hands]
    .sort(([a], [b]) => Number(a) - Number(b))
    .map(([who, blocks]) => ({ who, blocks: blocks.sort((a, b) => a.from - b.from) }));
}

const reached = (coat: Coat, what: string): number | undefined => {
  const found = coat.milestones.find((one) => one.what === what);
  return found ? epoch(found.last.at) : undefined;
};

/** What the floor bears from stage to stage; the last metre decides. */
export function floorOf(coats: readonly Coat[], from: number, until: number): readonly FloorStretch[] {
  const laid = coats.filter(({ start }) => start);
  const turns: { at: number; bears: FloorBears }[] = [{ at: from, bears: 'bare' }];
  laid.forEach((coat, i) => {
    const at = epoch(coat.start?.at ?? '');
    turns.push({ at, bears: 'off' });
    const next = laid[i + 1];
    if (next) {
      // Between coats the crew walks on it again, nobody else.
      const opens = reached(coat, 'recoat opens') ?? reached(coat, 'foot');
      if (opens !== undefined && opens < epoch(next.start?.at ?? '')) turns.push({ at: opens, bears: 'crew' });
      return;
    }
    for (const what of ['foot', 'light', 'vehicle'] as const) {
      const when = reached(coat, what);
      if (when !== undefined) turns.push({ at: when, bears: what });
    }
  });
  return turns
    .map(({ at, bears }, i) => ({ from: Math.max(at, from), until: turns[i + 1]?.at ?? until, bears }))
    .filter((one) => one.until > one.from);
}

function polesOf(coat: Coat | undefined): readonly Pole[] {
  return (['foot', 'light', 'vehicle', 'full'] as const).flatMap((what): Pole[] => {
    const span = coat?.milestones.find((one) => one.what === what)?.last;
    if (!span) return [];
    return [
      {
        what,
        at: epoch(span.at),
        low: epoch(span.low),
        ...(span.high === undefined ? {} : { high: epoch(span.high) }),
      },
    ];
  });
}

const kept = new WeakMap<StepView, DayHours | null>();

/** Null without weather, or while the day could not be worked out. Worked out once for each plan. */
export function dayHours(view: StepView, waits: string): DayHours | null {
  const known = kept.get(view);
  if (known !== undefined) return known;
  const found = hoursFrom(view, waits);
  kept.set(view, found);
  return found;
}

function hoursFrom({ planned, option, voice }: StepView, waits: string): DayHours | null {
  const { curves, banded } = planned;
  const day = option?.day;
  if (!curves || !option || !day || !answered(day)) return null;
  const { coats } = day;
  const last = coats.findLast(({ start }) => start);
  const until = curves.from + curves.slab.length * curves.step + 10 * 24 * HOUR;
  return {
    curves,
    coats: windowsOf(coats, voice.say),
    hands: answered(option.schedule) ? handsOf(option.schedule, (work) => taskName(voice, work), waits) : [],
    floor: floorOf(coats, curves.from, until),
    poles: polesOf(last),
    least: coats.flatMap(({ layer, start }): Least[] => {
      if (!start?.margin || !start.marginAt) return [];
      const { text, number, band } = banded[start.margin] ?? voice.entry(start.margin);
      // The unit is said once: a band carries it.
      return [{ layer, at: epoch(start.marginAt), text: band ? `${number} ${band}` : text }];
    }),
    rising: coats.flatMap(({ start }): Rising[] =>
      start?.verdict.reasons.some(({ code }) => code.startsWith('day-window-rising'))
        ? [{ from: epoch(start.at), until: epoch(start.laid) + HOUR }]
        : [],
    ),
  };
}
