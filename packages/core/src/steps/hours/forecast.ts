import { epochOf } from '../../kernel/instant.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import type { Gated } from './gate.ts';
import type { Forecast } from './index.ts';
import { clock } from './readings.ts';

/** What a slab that was read and a forecast answer together, and what the day says better. */
const ANSWERED = new Set([
  'hours-no-reading',
  'hours-night-not-read',
  'hours-night-not-read-to-the-end',
  'hours-trend-not-known',
  'hours-recoat-too-early',
  'hours-recoat-too-late',
  'hours-recoat-not-on-sheet',
]);
/**
 * A gate with the hours ahead worked in: readings stay as they are, what nobody could read yet comes from the day. A
 * forecast goes on from a reading, it never replaces the first one: on a slab that nobody has read the gate stays not
 * known.
 */
export function withForecast(gated: Gated, layer: string, ctx: OptionContext, forecast: Forecast | undefined): Gated {
  const start = forecast?.day.coats.find((coat) => coat.layer === layer)?.start;
  if (!forecast || !start) return gated;
  const beyond = start.verdict.reasons.some(({ code }) => code === 'day-window-weather-unknown');
  if (beyond) return gated;
  const read = forecast.site.readings.value > 0;
  const name = forecast.day.coats.find((coat) => coat.layer === layer)?.name ?? layer;
  const names = { layer: name, at: clock(ctx, epochOf(start.at)) };
  // What the day proposes is nobody's decision yet: the gate stays not known until a start is chosen.
  if (start.by === 'proposed')
    return { gate: gated.gate, notes: [...gated.notes, { code: 'day-start-proposed', names }] };
  const kept = gated.gate.verdict.reasons.filter(({ code }) => !(read && ANSWERED.has(code)));
  const unread: readonly Reason[] = read
    ? []
    : [
        {
          verdict: 'not known',
          code: 'day-slab-never-read',
          names,
          lift: { code: 'day-slab-never-read-lift' },
        },
      ];
  const { margin } = start;
  return {
    gate: {
      layer,
      at: start.at,
      verdict: verdictOf([...kept, ...start.verdict.reasons, ...unread], ctx.job.overrides),
      ...(gated.gate.margin ? { margin: gated.gate.margin } : margin ? { margin } : {}),
    },
    notes: read ? gated.notes.filter(({ code }) => code !== 'hours-recoat-if-as-warm') : gated.notes,
  };
}

export const promiseReasons = ({ day }: Forecast): readonly Reason[] =>
  day.verdict.reasons.filter(({ code }) => code.startsWith('day-promise-') || code === 'day-no-start-found');
