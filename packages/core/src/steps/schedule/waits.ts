import { instantIn } from '../../kernel/instant.ts';
import type { Segment } from './layout.ts';

export interface SiteDay {
  readonly date: string;
  readonly from: number;
  readonly to: number;
}

/** Days on site, from the first task of the crew to its last. A shift over midnight belongs to the day it began. */
export function daysOf(segments: readonly Segment[], zone: string): readonly SiteDay[] {
  const days = new Map<string, { from: number; to: number }>();
  for (const { from, to } of segments) {
    const date = instantIn(from, zone).slice(0, 10);
    const day = days.get(date);
    if (!day) days.set(date, { from, to });
    else {
      day.from = Math.min(day.from, from);
      day.to = Math.max(day.to, to);
    }
  }
  return [...days].map(([date, day]) => ({ date, ...day }));
}

export interface Wait {
  readonly hand: number;
  readonly from: number;
  readonly to: number;
  readonly layer: string | undefined;
}

/** Shorter gaps are a breath, not a wait, ms. */
const LEAST = 5 * 60_000;

/** Stretches in which a hand on site has nothing to do, and the coat that comes next. */
export function waitsOf(segments: readonly Segment[], people: number, zone: string): readonly Wait[] {
  const waits: Wait[] = [];
  for (const day of daysOf(segments, zone)) {
    for (let hand = 0; hand < people; hand++) {
      const own = segments
        .filter((one) => one.hand === hand && one.from >= day.from && one.from < day.to)
        .sort((a, b) => a.from - b.from);
      let at = day.from;
      for (const { from, to } of [...own, { from: day.to, to: day.to }]) {
        if (from - at >= LEAST) waits.push({ hand, from: at, to: from, layer: nextCoat(segments, from) });
        at = Math.max(at, to);
      }
    }
  }
  return waits.sort((a, b) => a.from - b.from || a.hand - b.hand);
}

const nextCoat = (segments: readonly Segment[], from: number): string | undefined =>
  segments.filter((one) => one.from >= from && one.task.layer !== undefined).sort((a, b) => a.from - b.from)[0]?.task
    .layer;
