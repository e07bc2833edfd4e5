import type { Layer } from '../../catalogue.ts';
import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { placedPoint } from '../../science/shape/index.ts';
import {
  arithmeticReasons,
  checkCase,
  fullEffort,
  type PlanOptions,
  planSpread,
  pourSheets,
  quickEffort,
  type SpreadCase,
  type SpreadEffort,
  type SpreadPlan,
  type SpreadResult,
  spreadProblem,
  textMap,
} from '../../spread/index.ts';
import { type OptionContext, productOf } from '../context.ts';
import { totalArea } from '../formulas/quantities-volumes.ts';
import { mostInSequence, sumInSequence } from '../formulas/spread.ts';
import type {
  CoatSpread,
  DayPlan,
  HoursPlan,
  JoinedSpread,
  QuantitiesPlan,
  SpreadsPlan,
  SurveyPlan,
} from '../results.ts';
import { type CrewPlanned, crewOf } from './crew.ts';
import { type Door, type FloorPart, floorParts, mainDoor } from './floor.ts';
import { haltedBy, reasonCode, told } from './halted.ts';
import { issueSaid } from './issues.ts';
import { poursOf } from './pours.ts';
import { seamsOf } from './seams.ts';
import { type SpreadTimes, spreadTimes } from './times.ts';

/** How hard to look: named, or in candidates. */
export type SpreadSearch = 'quick' | 'full' | number;

/** The squares behind a coat, for whoever draws its day or judges an order of their own. */
export interface SpreadSeen {
  readonly layer: string;
  readonly areas: readonly string[];
  /** Moment of the first mixing, and its minute of the day. */
  readonly start: Instant;
  readonly question: SpreadCase;
  readonly result: SpreadResult;
}

export type SpreadObserver = (seen: SpreadSeen) => void;

interface Spreaded {
  readonly coat: CoatSpread;
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  readonly notes: readonly Said[];
}

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

/** An end line is drawn by hand along a tape: an inch, or five centimetres. */
const INCH_M = 0.0254;
const TAPE_M = 0.05;

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
): Spreaded {
  const nothing = bare(ctx, layer, part, trace);
  const names = { layer: nothing.name };
  const coatDay = day?.coats.find((one) => one.layer === layer.id);
  const chosen = coatDay?.start?.at ?? ctx.option.starts?.find((one) => one.layer === layer.id)?.at;
  const start = after ?? chosen;
  const product = productOf(ctx, layer);
  if (!start) return unknown(nothing, 'spread-no-start');
  const way = mainDoor(part.exits);
  if (!way) return unknown(nothing, 'spread-no-way-out');
  const quantity = quantified.layers.find((one) => one.layer === layer.id);
  const hands = quantity && crewOf(ctx, layer, part, timed, quantity, trace);
  if (!hands) return unknown(nothing, 'spread-no-batches');
  const { zone } = ctx.job.place;
  const startMin = minuteOfDay(start, zone);
  const times = spreadTimes(ctx, layer, start, startMin, coatDay, trace);
  if (!times) return unknown(nothing, 'spread-no-times');
  const question: SpreadCase = {
    name: `${ctx.job.id} ${ctx.option.id} ${layer.id}`,
    outline: part.outline,
    holes: part.holes,
    walls: part.walls,
    exits: part.exits,
    stopLines: part.stopLines,
    mixAt: stationIn(ctx, part) ?? { exit: way.index },
    crew: hands.crew,
    batch: hands.batch,
    clock: { startMin, workingMin: times.workingMin, openMin: times.openMin },
    cellM: hands.cellM,
    openTimeAssumed: times.assumed,
  };
  const squares = part.areas.reduce((sum, { net }) => sum + net.value, 0) / hands.cellM ** 2;
  const earlier = round.before?.find((one) => one.layer === layer.id && one.areas.join() === nothing.areas.join());
  const found = withBatchThatWorks(question, {
    areas: 'clipped',
    effort: effortFor(search, squares, round.rough === true),
    seed: ctx.seed,
    onProgress: round.progress && ((done, of) => round.progress?.({ name: nothing.name, done, of }) ?? true),
    ...(earlier?.result.kind === 'plan' ? { also: [earlier.result.solution] } : {}),
  });
  observe?.({ layer: layer.id, areas: nothing.areas, start, question, result: found });
  const begun = epochOf(start);
  const common = {
    ...nothing,
    start,
    openTime: times.open,
    workingTime: times.working,
    openFrom: times.openFrom,
    wayOut: part.exits.filter(({ outside }) => outside || part.exits.length === 1).map(({ name }) => name),
  };
  if (found.kind === 'issues') {
    const reasons = found.issues.map((issue): Reason => ({ verdict: 'stop', ...issueSaid(issue, part, names) }));
    return { coat: common, reasons, missing: [], notes: times.notes };
  }
  if (found.kind === 'none' && round.rough)
    return { coat: { ...common, state: 'none found' }, reasons: [], missing: [], notes: [] };
  if (found.kind === 'none') {
    round.progress?.({ name: nothing.name, done: 1, of: 1 });
    const parts = { begun, zone, seed: ctx.seed, decides: [...hands.decides, times.open.id, times.working.id], names };
    const halted = haltedBy(found, part, parts, trace.within('halted'));
    const [lift] = halted.repairs;
    return {
      coat: { ...common, state: 'none found', repairs: halted.repairs },
      reasons: [
        { verdict: times.assumed ? 'not known' : 'stop', ...halted.why, ...(lift ? { lift } : {}) },
        ...(halted.certain ? [] : [{ verdict: 'caution' as const, code: 'spread-none-found', names }]),
      ],
      missing: [],
      notes: [...times.notes, ...halted.repairs.slice(1), ...halted.tried],
    };
  }
  return planned(found, { ctx, common, part, hands, times, product, door: way.door, begun }, trace);
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

interface PlannedFacts {
  readonly ctx: OptionContext;
  readonly common: CoatSpread;
  readonly part: FloorPart;
  readonly hands: CrewPlanned;
  readonly times: SpreadTimes;
  readonly product: ReturnType<typeof productOf>;
  readonly door: Door;
  readonly begun: number;
}

function planned(found: SpreadPlan, facts: PlannedFacts, trace: Trace): Spreaded {
  const { ctx, common, part, hands, times, product, door, begun } = facts;
  const { problem, best, check } = found;
  const { zone } = ctx.job.place;
  const mark = ctx.job.reader.units === 'imperial' ? INCH_M : TAPE_M;
  const decides = [...hands.decides, times.open.id];
  const inputs = { along: decides };
  const most = (name: string, minutes: number) =>
    trace.taken(name, mostInSequence, { value: minutes * 60, unit: 's', shows: 'duration', inputs });
  const length = (name: string, value: number) =>
    trace.taken(name, sumInSequence, { value, unit: 'm', shows: 'length', inputs });
  const { litres } = problem.question.batch;
  const smaller = litres < hands.batch.litres * 0.999;
  const batch = smaller
    ? trace.given('batch', { value: litres / 1000, unit: 'm³', origin: 'chosen', shows: 'volume' })
    : hands.largest;
  const ratio = ctx.option.thinner?.find((one) => one.layer === common.layer)?.ratio;
  const thinnerRatio = ratio
    ? trace.given('thinner-ratio', {
        value: ratio.value,
        unit: '1',
        origin: 'chosen',
        typed: ratio.typed,
        shows: 'share',
      })
    : undefined;
  const asked = { part, hands, batch, product, thinnerRatio, door, begun, zone, mark };
  const { pours, bailOuts } = poursOf(problem, best, asked, trace);
  // the checker's own numbers are printed, not the planner's
  const largestAge = most('largest-age', check.maxAgeMin);
  // each edge against the open time of its own hour
  const ageShare = trace.taken('age-share', mostInSequence, {
    value: best.score.ageShare,
    unit: '1',
    shows: 'share',
    inputs: { along: [largestAge.id, times.open.id] },
  });
  const worst = [...best.clock.pours]
    .map((pour, k) => ({
      k,
      time: pour.endMin - pour.mixedMin,
      share: (pour.endMin - pour.mixedMin) / pour.workingMin,
    }))
    .sort((a, b) => b.share - a.share || a.k - b.k)[0];
  const time = worst && most('worst-pour', worst.time);
  const names = { layer: common.name };
  const low = times.open.band?.[0];
  const reasons: Reason[] = [];
  if (smaller) {
    const largest = arithmeticReasons(spreadProblem({ ...problem.question, batch: hands.batch }, 'clipped'))[0];
    const figures = { batch: batch.id, largest: hands.largest.id };
    const why = largest && told(reasonCode(largest), largest.figures, names, decides, trace.within('largest'));
    reasons.push({ verdict: 'caution', code: 'spread-smaller-batch-planned', names, figures });
    if (why) reasons.push({ verdict: 'caution', ...why });
  }
  if (found.openTimeAssumed) {
    const code = 'spread-on-assumed-time';
    reasons.push({ verdict: 'caution', code, names, figures: { time: times.open.id }, lift: { code: `${code}-lift` } });
  }
  if (low !== undefined && largestAge.value > low) {
    const figures = { age: largestAge.id, time: times.open.id };
    reasons.push({ verdict: 'caution', code: 'spread-age-above-short-open', names, figures });
  }
  const left = pourSheets(problem, best).reduce((sum, { mixLitres, litres }) => sum + mixLitres - litres, 0);
  const coat: CoatSpread = {
    ...common,
    state: 'planned',
    laid: instantIn(begun + Math.ceil(best.clock.minutes) * 60_000, zone),
    pours,
    bailOuts,
    seams: seamsOf(problem, best, times, decides, trace),
    largestAge,
    ageShare,
    ...(worst && time
      ? {
          worstPour: {
            pour: `${worst.k + 1}`,
            time,
            share: trace.taken('worst-share', mostInSequence, {
              value: worst.share,
              unit: '1',
              shows: 'share',
              inputs: { along: [time.id, times.working.id] },
            }),
          },
        }
      : {}),
    seamLength: length('seams-in-all', check.seamM),
    walk: length('walked', check.walkM),
    leftOver: trace.taken('left-over', sumInSequence, {
      value: Math.max(0, left) / 1000,
      unit: 'm³',
      shows: 'volume',
      inputs,
    }),
    map: textMap(problem.squares, best.clock.pourOf),
  };
  return { coat, reasons, missing: [], notes: [...times.notes, ...inTurn(ctx, common)] };
}

/** One mixes, one rolls, one throws: fewer hands do two of these in turn, and the clock counts them so. */
const HANDS_FOR_A_BROADCAST = 3;

function inTurn({ option, system }: OptionContext, { layer, name }: CoatSpread): readonly Said[] {
  const thrown = system.layers.find(({ id }) => id === layer)?.broadcast;
  if (!thrown || option.people >= HANDS_FOR_A_BROADCAST) return [];
  return [{ code: 'spread-hands-in-turn', names: { layer: name, people: `${option.people}` } }];
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
    if (ends.length === own.length) times.set(layer, (Math.max(...ends) - Math.min(...starts)) / 1000);
  }
  return times;
}

/** A later part of the floor begins when the one before it is down. */
const later = (coat: CoatSpread): Instant | undefined => coat.laid;

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
    return parts.map((part, i) => {
      const t = parts.length > 1 ? trace.within(layer.id).within(`${i + 1}`) : trace.within(layer.id);
      const done = spreadCoat(ctx, layer, part, { timed, quantified, day, search, observe, round }, after, t);
      after = later(done.coat);
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
