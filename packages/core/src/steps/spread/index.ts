import type { Layer } from '../../catalogue.ts';
import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import { placedPoint } from '../../science/shape/index.ts';
import {
  arithmeticReasons,
  checkCase,
  fullEffort,
  type PlanOptions,
  planSpread,
  quickEffort,
  type SpreadCase,
  type SpreadEffort,
  type SpreadResult,
  spreadProblem,
} from '../../spread/index.ts';
import { type OptionContext, productOf } from '../context.ts';
import { totalArea } from '../formulas/quantities-volumes.ts';
import type {
  CoatSpread,
  DayPlan,
  HoursPlan,
  JoinedSpread,
  QuantitiesPlan,
  SpreadsPlan,
  SurveyPlan,
} from '../results.ts';
import { crewOf } from './crew.ts';
import { planDays } from './days.ts';
import { type FloorPart, floorParts, mainDoor } from './floor.ts';
import { hoursFrom, minutesFor, morningFor, walkableAfter, withStart } from './hours-of-part.ts';
import { ofWhole, planned, type Spreaded } from './planned.ts';
import { spreadTimes } from './times.ts';
import { ofDay, tooLong } from './told-days.ts';

/** How hard to look: named, or in candidates. */
export type SpreadSearch = 'quick' | 'full' | number;

/** The squares behind a coat, for whoever draws its day or judges an order of their own. */
export interface SpreadSeen {
  readonly layer: string;
  readonly areas: readonly string[];
  /** Which of the days, from 1, where the floor takes several. */
  readonly day?: number;
  /** Moment of the first mixing, and its minute of the day. */
  readonly start: Instant;
  readonly question: SpreadCase;
  readonly result: SpreadResult;
}

export type SpreadObserver = (seen: SpreadSeen) => void;

/** Minutes after midnight where the job is. */
function minuteOfDay(at: Instant, zone: string): number {
  const local = instantIn(epochOf(at), zone);
  return Number(local.slice(11, 13)) * 60 + Number(local.slice(14, 16));
}

/** A round that only asks for the minutes looks with a sixth of the candidates. */
const ROUGH_SHARE = 6;

function effortFor(search: SpreadSearch, squares: number, rough: boolean): SpreadEffort {
  const quick = quickEffort(squares);
  if (rough) {
    const candidates = typeof search === 'number' ? search : quick.candidates;
    return { candidates: Math.max(1, Math.ceil(candidates / ROUGH_SHARE)), nodes: 0 };
  }
  if (search === 'quick') return quick;
  return search === 'full' ? fullEffort(squares) : { candidates: search, nodes: quick.nodes };
}

function bare(ctx: OptionContext, layer: Layer, part: FloorPart, trace: Trace): CoatSpread {
  const product = productOf(ctx, layer);
  return {
    layer: layer.id,
    product: product.id,
    name: layer.name ?? product.name,
    areas: part.areas.map(({ id }) => id),
    state: 'not planned',
    pours: [],
    wayOut: [],
    bailOuts: [],
    seams: [],
    repairs: [],
    map: [],
    ...(part.rooms.length > 1 ? { joined: joinedFloor(part, trace) } : {}),
  };
}

/** Rooms that are spread as one floor, where they lie in it. */
const joinedFloor = ({ areas, outline, holes, rooms, doorways, exits }: FloorPart, trace: Trace): JoinedSpread => ({
  net: trace.figure('net', totalArea, { areas: areas.map(({ net }) => net) }),
  outline: outline.map(rounded),
  holes: holes.map((ring) => ring.map(rounded)),
  rooms: rooms.map(({ area, placed }) => ({
    area: area.id,
    placed: { cos: placed.cos, sin: placed.sin, dx: placed.dx, dy: placed.dy },
    outline: placed.outline.map(rounded),
  })),
  doorways: doorways.map(({ door, threshold }) => ({ door, along: threshold.map(rounded) })),
  exits: exits.map(({ name, a, b, outside }) => ({ name, along: [rounded(a), rounded(b)], outside })),
});

const rounded = ([x, y]: readonly [number, number]): readonly [number, number] => [
  Math.round(x * 1000) / 1000,
  Math.round(y * 1000) / 1000,
];

const unknown = (coat: CoatSpread, code: string, missing: readonly Missing[] = []): Spreaded => {
  const names = { layer: coat.name };
  return {
    coat,
    reasons: [{ verdict: 'not known', code, names, lift: { code: `${code}-lift`, names } }],
    missing,
    notes: [],
  };
};

/** The mixing place, where it stands on this part of the floor. */
function stationIn({ option }: OptionContext, { rooms }: FloorPart): SpreadCase['mixAt'] | undefined {
  const place = option.spread?.mixAt;
  const room = place && rooms.find(({ area }) => area.id === place.area);
  return room && { point: placedPoint(room.placed, [place.at[0].value, place.at[1].value]) };
}

/** How far the search for one coat is: orders tried of those it will try. Answering false stops it with the best so far. */
export type SpreadProgress = (told: { readonly name: string; readonly done: number; readonly of: number }) => boolean;

/** What an earlier round found, and whether this one only asks how long the coats take. */
export interface SpreadRound {
  /** Orders that must be among the candidates. */
  readonly before?: readonly SpreadSeen[] | undefined;
  /** A sixth of the candidates, no repairs: enough for the minutes. */
  readonly rough?: boolean | undefined;
  readonly progress?: SpreadProgress | undefined;
}

interface Sources {
  readonly round: SpreadRound;
  readonly timed: HoursPlan;
  readonly quantified: QuantitiesPlan;
  readonly day: DayPlan | undefined;
  readonly search: SpreadSearch;
  readonly observe?: SpreadObserver | undefined;
}

/** One coat on one part of the floor. `after`: the part before it is laid by then. */
function spreadCoat(
  ctx: OptionContext,
  layer: Layer,
  part: FloorPart,
  { timed, quantified, day, search, observe, round }: Sources,
  after: Instant | undefined,
  trace: Trace,
): readonly Spreaded[] {
  const nothing = bare(ctx, layer, part, trace);
  const names = { layer: nothing.name };
  const coatDay = day?.coats.find((one) => one.layer === layer.id);
  const chosen = coatDay?.start?.at ?? ctx.option.starts?.find((one) => one.layer === layer.id)?.at;
  const product = productOf(ctx, layer);
  const wanted = after ?? chosen;
  if (!wanted) return [unknown(nothing, 'spread-no-start')];
  const way = mainDoor(part.exits);
  if (!way) return [unknown(nothing, 'spread-no-way-out')];
  const quantity = quantified.layers.find((one) => one.layer === layer.id);
  const hands = quantity && crewOf(ctx, layer, part, timed, quantity, trace);
  if (!hands) return [unknown(nothing, 'spread-no-batches')];
  const { zone } = ctx.job.place;
  const floor: Omit<SpreadCase, 'clock' | 'openTimeAssumed'> = {
    name: `${ctx.job.id} ${ctx.option.id} ${layer.id}`,
    outline: part.outline,
    holes: part.holes,
    walls: part.walls,
    exits: part.exits,
    stopLines: part.stopLines,
    mixAt: stationIn(ctx, part) ?? { exit: way.index },
    crew: hands.crew,
    batch: hands.batch,
    cellM: hands.cellM,
  };
  const needed = minutesFor(floor);
  const hours = hoursFrom(ctx, epochOf(wanted));
  const start = after ? morningFor(after, needed, hours, zone) : wanted;
  const startMin = minuteOfDay(start, zone);
  const times = spreadTimes(ctx, layer, start, startMin, coatDay, trace);
  if (!times) return [unknown(nothing, 'spread-no-times')];
  const question: SpreadCase = {
    ...floor,
    clock: { startMin, workingMin: times.workingMin, openMin: times.openMin },
    openTimeAssumed: times.assumed,
  };
  const squares = part.areas.reduce((sum, { net }) => sum + net.value, 0) / hands.cellM ** 2;
  const earlier = round.before?.find((one) => one.layer === layer.id && one.areas.join() === nothing.areas.join());
  const options: PlanOptions = {
    areas: 'clipped',
    effort: effortFor(search, squares, round.rough === true),
    seed: ctx.seed,
    onProgress: round.progress && ((done, of) => round.progress?.({ name: nothing.name, done, of }) ?? true),
  };
  const begun = epochOf(start);
  const common = {
    ...nothing,
    start,
    openTime: times.open,
    workingTime: times.working,
    openFrom: times.openFrom,
    wayOut: part.exits.filter(({ outside }) => outside || part.exits.length === 1).map(({ name }) => name),
  };
  const facts = { ctx, common, part, hands, times, product, door: way.door, begun };
  const fullDay = Math.max(...hours.map(({ from, to }) => to - from)) / 60_000;
  const byDay = (): readonly Spreaded[] | undefined => {
    const days = planDays(question, {
      begun,
      hours: withStart(hoursFrom(ctx, begun), begun, zone),
      walkableAfter: walkableAfter(product),
      minuteOf: (at) => minuteOfDay(instantIn(at, zone), zone),
      find: (one) => withBatchThatWorks(one, options),
    });
    return days?.map((day, k) => {
      const begins = instantIn(day.begun, zone);
      const { question: asked, result } = day;
      observe?.({ layer: layer.id, areas: nothing.areas, day: k + 1, start: begins, question: asked, result });
      const own = trace.within('day').within(`${k + 1}`);
      const one = planned(result, { ...facts, common: { ...common, start: begins }, begun: day.begun }, own);
      return ofDay(one, days, k, facts, own);
    });
  };
  const sound = checkCase(question).length === 0;
  if (sound && needed > fullDay) {
    const days = byDay();
    if (days) return days;
  }
  const found = withBatchThatWorks(question, {
    ...options,
    ...(earlier?.result.kind === 'plan' ? { also: [earlier.result.solution] } : {}),
  });
  if (found.kind === 'plan' && found.best.clock.minutes > fullDay && needed <= fullDay) {
    const days = byDay();
    if (days) return days;
  }
  observe?.({ layer: layer.id, areas: nothing.areas, start, question, result: found });
  return [ofWhole(found, facts, round, needed > fullDay ? tooLong(needed, fullDay, names, trace) : [], trace)];
}

/** Tenths of the largest batch that are tried, largest first. */
const TENTHS = [10, 9, 8, 7, 6, 5, 4, 3];

/**
 * The plan with the largest batch, or with the largest smaller one that works: a crew can always mix less at a time,
 * so that is planned rather than refused. Where none works the answer for the largest batch stands.
 */
function withBatchThatWorks(question: SpreadCase, options: PlanOptions): SpreadResult {
  let first: SpreadResult | undefined;
  for (const tenths of TENTHS) {
    const litres = (question.batch.litres * tenths) / 10;
    const smaller = { ...question, batch: { ...question.batch, litres } };
    // what arithmetic rules out for every order needs no search
    const sound = question.exits.length > 0 && checkCase(question).length === 0;
    if (sound && arithmeticReasons(spreadProblem(smaller, 'clipped')).some(({ certain }) => certain)) continue;
    const found = planSpread(smaller, options);
    if (found.kind !== 'none') return found;
    first ??= found;
  }
  return first ?? planSpread(question, options);
}

/** Floor in the thickness of walls belongs to no area: it is spread, and nobody bought for it. */
function doorwayNotes({ doorwayArea, areas }: FloorPart, trace: Trace): readonly Said[] {
  if (doorwayArea < 1e-6) return [];
  const area = trace.given(`doorways.${areas[0]?.id ?? ''}`, {
    value: doorwayArea,
    unit: 'm²',
    origin: 'reading',
    shows: 'area',
  });
  return [{ code: 'spread-doorway-floor', figures: { area: area.id } }];
}

/** Seconds from the first mixing of a coat to its last metre, by layer; without those no order was found for. */
export function pouredTimes({ coats }: SpreadsPlan): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const layer of new Set(coats.map((coat) => coat.layer))) {
    const own = coats.filter((coat) => coat.layer === layer);
    const starts = own.flatMap(({ start }) => (start ? [epochOf(start)] : []));
    const ends = own.flatMap(({ laid }) => (laid ? [epochOf(laid)] : []));
    if (ends.length < own.length) continue;
    // nights between the days of a large floor are no work
    const days = own.some(({ day }) => day !== undefined);
    const span = days
      ? ends.reduce((sum, end, i) => sum + end - (starts[i] as number), 0)
      : Math.max(...ends) - Math.min(...starts);
    times.set(layer, span / 1000);
  }
  return times;
}

/** A later part of the floor begins when the one before it is down, on its last day. */
const later = (done: readonly Spreaded[]): Instant | undefined => done.at(-1)?.coat.laid;

/** The sequence in which each coat is spread, from the far end to the way out. */
export function spreads(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  timed: HoursPlan,
  quantified: QuantitiesPlan,
  day: DayPlan | undefined,
  search: SpreadSearch,
  trace: Trace,
  observe?: SpreadObserver,
  round: SpreadRound = {},
): SpreadsPlan {
  const parts = floorParts(ctx, surveyed);
  const all = ctx.system.layers.flatMap((layer) => {
    let after: Instant | undefined;
    return parts.flatMap((part, i) => {
      const t = parts.length > 1 ? trace.within(layer.id).within(`${i + 1}`) : trace.within(layer.id);
      const done = spreadCoat(ctx, layer, part, { timed, quantified, day, search, observe, round }, after, t);
      after = later(done);
      return done;
    });
  });
  const reasons = all.flatMap((one) => one.reasons);
  return {
    verdict: verdictOf(reasons, ctx.job.overrides),
    missing: all.flatMap((one) => one.missing),
    notes: [
      ...parts.flatMap((part) => [...part.notes, ...doorwayNotes(part, trace)]),
      ...all.flatMap((one) => one.notes),
    ],
    coats: all.map(({ coat }) => coat),
  };
}
