import { Z90 } from '../../kernel/band.ts';
import { epochOf, type Instant } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { normalChance } from '../../science/statistics/index.ts';
import type { OptionContext } from '../context.ts';
import { shortOf } from '../formulas/day.ts';
import type { CoatDay, DayPromise, WeatherKind } from '../results.ts';
import { spoken } from './instants.ts';

/** Chances from here on are called likely, and down to here even. */
const LIKELY = 0.6;
const EVEN = 0.4;
export const oddsOf = (chance: number): 'likely' | 'even' | 'unlikely' =>
  chance > LIKELY ? 'likely' : chance >= EVEN ? 'even' : 'unlikely';

/** What a chance stands on, by what the weather is. */
const BASIS: Readonly<Record<WeatherKind, Said>> = {
  forecast: { code: 'day-basis-forecast' },
  measured: { code: 'day-basis-measured' },
  typed: { code: 'day-basis-typed' },
  'typical year': { code: 'day-basis-typical-year' },
};

/** Whether the last coat bears feet and wheels when the customer needs it, by the weather spread of the forecast. */
export function promisesOf(
  ctx: OptionContext,
  coats: readonly CoatDay[],
  kind: WeatherKind,
  trace: Trace,
): { readonly promises: readonly DayPromise[]; readonly reasons: readonly Reason[] } {
  const { footBy, vehicleBy } = ctx.job.use ?? {};
  const wanted: readonly (readonly ['foot' | 'vehicle', Instant | undefined])[] = [
    ['foot', footBy],
    ['vehicle', vehicleBy],
  ];
  const last = coats.at(-1);
  const basis = BASIS[kind];
  const reasons: Reason[] = [];
  const promises = wanted.flatMap(([what, by]): readonly DayPromise[] => {
    if (!by || !last) return [];
    const names = {
      layer: last.name,
      use: `@hours-use-${what}`,
      by: spoken(epochOf(by), ctx.job.place.zone),
    };
    const stage = last.milestones.find((one) => one.what === what);
    if (!stage || !last.start) {
      const says = { code: last.start ? 'day-promise-not-on-sheet' : 'day-promise-no-start', names };
      return [{ what, by, odds: 'not known', says, basis }];
    }
    const t = trace.within('promise').within(what);
    const ready = stage.last;
    const [at, wish] = [epochOf(ready.at), epochOf(by)];
    // The side of the band that the wish lies on: cold nights stretch the late side more than warm ones the early one.
    const side = wish >= at ? epochOf(ready.high ?? ready.at) - at : at - epochOf(ready.low);
    const start = epochOf(last.start.at);
    const from = { unit: 's', shows: 'duration', inputs: {} } as const;
    const chance = t.figure('chance', normalChance, {
      mean: t.taken('ready', shortOf, { ...from, value: (at - start) / 1000 }),
      deviation: t.taken('deviation', shortOf, { ...from, value: Math.max(60, side / 1000 / Z90) }),
      limit: t.taken('wished', shortOf, { ...from, value: (wish - start) / 1000 }),
    });
    const open = ready.high === undefined && wish >= at;
    const odds = open ? 'not known' : oddsOf(chance.value);
    const says = {
      code: `day-promise-${odds === 'not known' ? 'open' : odds}`,
      figures: { chance: chance.id, warm: stage.warm.id },
      names: { ...names, ready: spoken(at, ctx.job.place.zone) },
    };
    if (odds !== 'likely')
      reasons.push({ ...says, verdict: 'caution', source: chance.id, lift: { code: 'day-promise-lift', names } });
    return [{ what, by, ready, odds, chance, says, basis }];
  });
  return { promises, reasons };
}
