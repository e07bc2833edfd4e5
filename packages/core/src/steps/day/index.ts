import type { Layer } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import { epochOf } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { DAY_MS } from '../../science/weather/index.ts';
import { type OptionContext, productOf } from '../context.ts';
import { layingTime } from '../formulas/day.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import { mostInSequence } from '../formulas/spread.ts';
import type { DayPlan, QuantitiesPlan, SitePlan, Task } from '../results.ts';
import { isRolled, type Phases, phasesOf } from '../schedule/phases.ts';
import { preparationFrom } from '../schedule/preparation.ts';
import { burnerReasons } from './burner.ts';
import { coatDay } from './coat.ts';
import { spoken } from './instants.ts';
import { materialRead } from './material.ts';
import { type Crew, type Placed, placeAll, type Wanted } from './place.ts';
import { promisesOf } from './promise.ts';
import { coatOf, cureOf } from './sheet.ts';
import type { SiteState } from './site-state.ts';
import { workdayOf, workingHours } from './workday.ts';

/** Placed coats with what the schedule needs of them. */
export interface DayWorked {
  readonly plan: DayPlan;
  readonly placed: readonly Placed[];
  readonly crew: Crew;
  readonly phases: Phases;
}

/**
 * Time to lay the floor of one coat, with the hands there are; where its pours were planned already, the time they take,
 * as uncertain in proportion as the rates they stand on.
 */
function layingOf(trace: Trace, floor: readonly Task[], people: Known<'1'>, poured: number | undefined): Figure<'s'> {
  const rolled = floor.filter(isRolled).map(({ time }) => time);
  const longest = trace.figure('rolled', personTime, { times: rolled });
  const inputs = { times: floor.map(({ time }) => time), longest, people };
  if (poured === undefined) return trace.figure('laying', layingTime, inputs);
  const rough = trace.figure('laying-by-rates', layingTime, inputs);
  const ratio = rough.value > 0 ? poured / rough.value : 1;
  const { band, causes } = rough;
  return trace.taken('laying', mostInSequence, {
    value: poured,
    unit: 's',
    shows: 'duration',
    inputs: { along: [rough.id] },
    ...(band ? { band: [band[0] * ratio, band[1] * ratio] as const } : {}),
    ...(causes ? { causes: Object.fromEntries(Object.entries(causes).map(([name, by]) => [name, by * ratio])) } : {}),
  });
}

/** Between eight in the evening and seven in the morning, by the clock of the place. */
const isNight = (instant: string): boolean => instant.slice(11, 13) < '07' || instant.slice(11, 13) >= '20';

/** Notes that name what a crew overlooks: the night, and the first metre against the last. */
function notesOf(ctx: OptionContext, plan: DayPlan['coats']): readonly Said[] {
  const { zone } = ctx.job.place;
  return plan.flatMap((coat, i): readonly Said[] => {
    const { start } = coat;
    if (!start) return [];
    const names = { layer: coat.name };
    const opens = coat.milestones.find(({ what }) => what === 'recoat opens');
    const closes = coat.milestones.find(({ what }) => what === 'recoat closes');
    const apart = epochOf(start.laid) - epochOf(start.at);
    const more = i < plan.length - 1 && opens !== undefined;
    return [
      ...(start.margin && start.marginAt
        ? [
            {
              code: isNight(start.marginAt) ? 'day-least-margin-night' : 'day-least-margin',
              figures: { margin: start.margin.id },
              names: { ...names, at: spoken(epochOf(start.marginAt), zone) },
            },
          ]
        : []),
      ...(more
        ? [
            {
              code: closes ? 'day-recoat-first-last' : 'day-recoat-first-last-open',
              figures: { laying: coat.laying.id },
              names: {
                ...names,
                first: spoken(epochOf(opens.first.at), zone),
                last: spoken(epochOf(opens.last.at), zone),
                latest: spoken(epochOf(opens.last.high ?? opens.last.at), zone),
                ...(closes ? { closes: spoken(epochOf(closes.first.low), zone) } : {}),
              },
            },
          ]
        : []),
      ...(apart > DAY_MS / 2 ? [{ code: 'day-laid-over-half-a-day', figures: { laying: coat.laying.id }, names }] : []),
    ];
  });
}

/**
 * The hours of one option: when each coat may be laid, the start it has, and what follows from it on the slab's own
 * temperatures ahead. `poured`: seconds that the pours of a coat take, by layer, where they were planned.
 */
export function day(
  ctx: OptionContext,
  state: SiteState,
  site: SitePlan,
  tasks: readonly Task[],
  quantified: QuantitiesPlan,
  trace: Trace,
  poured: ReadonlyMap<string, number> = new Map(),
): DayWorked {
  const { hours } = state;
  if (!hours) throw new Error('the day needs the hours of its site');
  const { conditions } = hours;
  const now = epochOf(ctx.now);
  const { layers } = ctx.system;
  const phases = phasesOf(
    tasks,
    layers.map(({ id }) => id),
  );
  const people = trace.given('people', { value: ctx.option.people, unit: '1', origin: 'chosen', shows: 'count' });
  const layings = layers.map((layer, i) =>
    layingOf(trace.within(layer.id), phases.coats[i]?.floor ?? [], people, poured.get(layer.id)),
  );
  const chosen = layers.map((layer) => ctx.option.starts?.find((one) => one.layer === layer.id)?.at);
  const end = conditions.from + conditions.count * 300_000;
  const wanted: readonly Wanted[] = layers.map((layer, i) => {
    const product = productOf(ctx, layer);
    const cure = cureOf(product);
    const phase = phases.coats[i];
    const at = chosen[i];
    if (!phase) throw new Error(`no phase for ${layer.id}`);
    return {
      coat: coatOf(layer, product, cure, layings[i]?.value ?? 0, state.outdoors),
      cure,
      phase,
      chosen: at === undefined ? undefined : epochOf(at),
    };
  });
  const begin = Math.min(now, ...wanted.flatMap(({ chosen: at }) => (at === undefined ? [] : [at])));
  const crew: Crew = {
    people: ctx.option.people,
    hours: workingHours(workdayOf(ctx.option), ctx.job.place.zone, begin - DAY_MS, end + 14 * DAY_MS),
  };
  const prepared = preparationFrom(phases.preparation, crew, now, wanted[0]?.chosen);
  const placed = placeAll(conditions, wanted, crew, prepared.end, Math.max(now, conditions.from));
  const material = materialRead(ctx.job, trace.within('read'));
  const coats = layers.map((layer, i) =>
    coatDay(
      ctx,
      conditions,
      {
        layer,
        product: productOf(ctx, layer),
        wanted: wanted[i] as Wanted,
        placed: placed[i] as Placed,
        laying: layings[i] as Figure<'s'>,
        material,
        batches: batchCountOf(quantified, layer.id, phases.coats[i]?.floor ?? []),
      },
      site,
      state.outdoors,
      trace,
    ),
  );
  const { promises, reasons } = promisesOf(ctx, coats, site.weather.kind, trace);
  const homeless = coats
    .filter(({ start }) => start === undefined)
    .map(
      ({ name }): Reason => ({
        verdict: 'not known',
        code: 'day-no-start-found',
        names: { layer: name },
        lift: { code: 'day-no-start-found-lift' },
      }),
    );
  const unread: readonly Said[] = site.readings.value > 0 ? [] : [{ code: 'day-read-before-mixing' }];
  const plan: DayPlan = {
    verdict: verdictOf(
      [...coats.flatMap(({ start }) => start?.verdict.reasons ?? []), ...homeless, ...reasons],
      ctx.job.overrides,
    ),
    missing: [],
    notes: [
      ...notesOf(ctx, coats),
      ...promises.flatMap(({ says, odds }) => (odds === 'likely' ? [says] : [])),
      ...coats.flatMap(
        ({ name, milestones }, i) => burnerReasons(ctx.job, productOf(ctx, layers[i] as Layer), milestones, name).notes,
      ),
      ...(material.length > 0 ? [] : [{ code: 'day-material-not-read' }]),
      ...unread,
    ],
    coats,
    promises,
  };
  return { plan, placed, crew, phases };
}

/** Batches as the mixing list has them, else as the mixing task counts them. */
function batchCountOf(quantified: QuantitiesPlan, layer: string, floor: readonly Task[]): number {
  const listed = quantified.layers.find((one) => one.layer === layer)?.batches?.values.length;
  return listed ?? floor.find(({ work }) => work === 'mix')?.quantity.value ?? 0;
}
