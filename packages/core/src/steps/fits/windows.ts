import type { JobOption } from '../../job.ts';
import { epochOf } from '../../kernel/instant.ts';
import { type Candidate, type Conditions, clockOn, findWindows } from '../../science/windows/index.ts';
import type { Extremes } from '../../science/windows/reasons.ts';
import { type OptionContext, productOf } from '../context.ts';
import { type Crew, type Placed, placeAll, type Wanted, WIDTH } from '../day/place.ts';
import { extremesBetween } from '../day/series-values.ts';
import { coatOf, cureOf } from '../day/sheet.ts';
import type { SiteState } from '../day/site-state.ts';
import { workdayOf, workingHours } from '../day/workday.ts';
import type { Task } from '../results.ts';
import { layingOf } from '../schedule/coats.ts';
import { type Phases, phasesOf } from '../schedule/phases.ts';
import { preparationFrom } from '../schedule/preparation.ts';
import type { Use } from './until-use.ts';

/** The days of the weather as every system meets them. */
export interface Ahead {
  readonly conditions: Conditions;
  readonly outdoors: boolean;
  readonly crew: Crew;
  readonly now: number;
  /** Last moment the weather tells of, ms since 1970. */
  readonly until: number;
  /** Chains of coats already laid out, by what decides them. */
  readonly known: Map<string, Reach>;
}

/** What one coat meets at its start: the worst hour of its open and sensitive time, as its start was judged. */
export interface Met {
  /** Least margin over the dew point in the sensitive time, K. */
  readonly margin: number;
  /** °C and 0-1, while the film is open. */
  readonly surface: Extremes;
  readonly air: Extremes;
  readonly humidity: Extremes;
}

/** When a system carries its use in the weather given, ms since 1970; else the coat that finds no start, and why. */
export type Reach =
  | { readonly ok: true; readonly start: number; readonly ready: number; readonly coats: readonly Met[] }
  | { readonly ok: false; readonly layer: string; readonly shut: string };

const DAY = 86_400_000;
const MARK = 300_000;

/** Nothing where the weather makes no hours for this site. */
export function aheadOf(option: JobOption, state: SiteState, now: string, zone: string): Ahead | undefined {
  if (!state.hours) return undefined;
  const { conditions } = state.hours;
  const [at, until] = [epochOf(now), conditions.from + conditions.count * MARK];
  return {
    conditions,
    outdoors: state.outdoors,
    crew: { people: option.people, hours: workingHours(workdayOf(option), zone, at - DAY, until + 14 * DAY) },
    now: at,
    until,
    known: new Map(),
  };
}

/**
 * The coats of one system laid out in the weather as a plan lays them: the first start that works, each coat in the
 * window the one before leaves. Nothing is chosen and nothing is recorded.
 */
export function reachOf(ahead: Ahead, ctx: OptionContext, tasks: readonly Task[], use: Use): Reach {
  const { layers } = ctx.system;
  const phases = phasesOf(
    tasks,
    layers.map(({ id }) => id),
  );
  const key = keyOf(ctx, phases, use);
  const found = ahead.known.get(key) ?? laidOut(ahead, ctx, phases, use);
  ahead.known.set(key, found);
  return found;
}

/**
 * The starts of a coat day by day, until as many serve as are ever followed: the same that a search of the whole weather
 * would follow, since an earlier day goes before a later one. What lies before the coat below is ready serves nobody.
 */
const firstWindows: typeof findWindows = (conditions, coat, hours, from, to) => {
  const begin = Math.max(from, coat.prepared, coat.recoatOpens ?? from);
  let found = findWindows(conditions, coat, hours, begin, Math.min(to, endOfDay(begin)));
  for (let day = endOfDay(begin) + 1; day <= to && found.ranked.length < WIDTH; day += DAY) {
    const more = findWindows(conditions, coat, hours, day, Math.min(to, day + DAY - 1));
    found = {
      starts: [...found.starts, ...more.starts],
      ranked: [...found.ranked, ...more.ranked],
      stretches: [...found.stretches, ...more.stretches],
    };
  }
  return found;
};

/** Days as the search counts them. */
const endOfDay = (epoch: number): number => (Math.floor(epoch / DAY) + 1) * DAY - 1;

/** Products with their limits and times, and every stretch of work: all that the search reads of a system. */
function keyOf(ctx: OptionContext, { preparation, coats }: Phases, use: Use): string {
  const work = (tasks: readonly Task[]): string => tasks.map(({ time }) => Math.round(time.value)).join('+');
  const each = ctx.system.layers.map(({ product, mix = '', onConcrete }, i) => {
    const phase = coats[i];
    const parts = phase ? [phase.before, phase.floor, phase.walls, phase.after].map(work) : [];
    return `${product}/${mix}/${onConcrete === true}/${parts.join('/')}`;
  });
  return [use, work(preparation), ...each].join('\n');
}

function laidOut(ahead: Ahead, ctx: OptionContext, phases: Phases, use: Use): Reach {
  const { conditions, crew, now, outdoors } = ahead;
  const wanted = ctx.system.layers.map((layer, i): Wanted => {
    const product = productOf(ctx, layer);
    const phase = phases.coats[i];
    if (!phase) throw new Error(`no phase for ${layer.id}`);
    const cure = cureOf(product);
    const laying = layingOf(phase.floor, crew.people) / 1000;
    return { coat: coatOf(layer, product, cure, laying, outdoors), cure, phase, chosen: undefined };
  });
  const prepared = preparationFrom(phases.preparation, crew, now, undefined);
  const placed = placeAll(conditions, wanted, crew, prepared.end, Math.max(now, conditions.from), firstWindows);
  const stuck = placed.findIndex(({ candidate }) => candidate === undefined);
  const [first, last] = [placed[0]?.candidate, placed.at(-1)?.candidate];
  if (stuck >= 0 || !first || !last) return noStart(ctx, placed, Math.max(0, stuck));
  const law = wanted.at(-1)?.cure.film[use];
  const ready = law && clockOn(conditions, law)(last.laid)?.at;
  if (ready === undefined) return { ok: false, layer: nameOf(ctx, placed.length - 1), shut: 'not-ready' };
  const coats = placed.flatMap(({ candidate }, i) => (candidate ? metBy(conditions, wanted[i], candidate) : []));
  return { ok: true, start: first.start, ready, coats };
}

function metBy(
  conditions: Conditions,
  wanted: Wanted | undefined,
  { start, laid, margin, sensitiveUntil }: Candidate,
): Met {
  const { open } = wanted?.coat ?? {};
  const until = Math.min(sensitiveUntil, (open && clockOn(conditions, open)(laid)?.high) ?? sensitiveUntil);
  const during = (values: Float64Array): Extremes => extremesBetween(conditions, values, start, until);
  const { surface, air, humidity } = conditions;
  return { margin, surface: during(surface), air: during(air), humidity: during(humidity) };
}

const nameOf = (ctx: OptionContext, i: number): string => {
  const layer = ctx.system.layers[i];
  return layer ? (layer.name ?? productOf(ctx, layer).name) : ctx.system.name;
};

/** What the clock of the crew decides says nothing of the weather; it is told only where nothing else shuts. */
const OF_THE_CREW = new Set(['window-working-hours', 'window-preparation', 'window-recoat-not-open']);

/** The reason that shuts most starts of the coat that finds none; of two that shut as many the one by name. */
function noStart(ctx: OptionContext, placed: readonly Placed[], stuck: number): Reach {
  const counted = new Map<string, number>();
  for (const { limiting } of placed[stuck]?.found.starts ?? []) {
    if (limiting?.verdict !== 'stop' && limiting?.verdict !== 'not known') continue;
    counted.set(limiting.code, (counted.get(limiting.code) ?? 0) + 1);
  }
  const most = [...counted].sort(
    ([a, n], [b, m]) => Number(OF_THE_CREW.has(a)) - Number(OF_THE_CREW.has(b)) || m - n || (a < b ? -1 : 1),
  )[0]?.[0];
  // A later coat may find the weather at its end before it ever looks at a start.
  return { ok: false, layer: nameOf(ctx, stuck), shut: (most ?? 'window-weather-unknown').replace('window-', '') };
}
