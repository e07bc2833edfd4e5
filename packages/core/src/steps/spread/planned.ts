import { instantIn } from '../../kernel/instant.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import {
  arithmeticReasons,
  pourSheets,
  type SpreadPlan,
  type SpreadResult,
  spreadProblem,
  textMap,
} from '../../spread/index.ts';
import type { OptionContext, productOf } from '../context.ts';
import { mostInSequence, sumInSequence } from '../formulas/spread.ts';
import type { CoatSpread } from '../results.ts';
import type { CrewPlanned } from './crew.ts';
import type { Door, FloorPart } from './floor.ts';
import { haltedBy, reasonCode, told } from './halted.ts';
import type { SpreadRound } from './index.ts';
import { issueSaid } from './issues.ts';
import { poursOf } from './pours.ts';
import { seamsOf } from './seams.ts';
import type { SpreadTimes } from './times.ts';

export interface Spreaded {
  readonly coat: CoatSpread;
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
  readonly notes: readonly Said[];
}

/** An end line is drawn by hand along a tape: an inch, or five centimetres. */
export const INCH_M = 0.0254;
export const TAPE_M = 0.05;

export interface PlannedFacts {
  readonly ctx: OptionContext;
  readonly common: CoatSpread;
  readonly part: FloorPart;
  readonly hands: CrewPlanned;
  readonly times: SpreadTimes;
  readonly product: ReturnType<typeof productOf>;
  readonly door: Door;
  readonly begun: number;
}

export function planned(found: SpreadPlan, facts: PlannedFacts, trace: Trace): Spreaded {
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

/** What the search said of a part of the floor in one go. */
export function ofWhole(
  found: SpreadResult,
  facts: PlannedFacts,
  round: SpreadRound,
  long: readonly Reason[],
  trace: Trace,
): Spreaded {
  const { ctx, common, part, hands, times, begun } = facts;
  const names = { layer: common.name };
  if (found.kind === 'issues') {
    const reasons = found.issues.map((issue): Reason => ({ verdict: 'stop', ...issueSaid(issue, part, names) }));
    return { coat: common, reasons, missing: [], notes: times.notes };
  }
  if (found.kind === 'none' && round.rough)
    return { coat: { ...common, state: 'none found' }, reasons: [], missing: [], notes: [] };
  if (found.kind === 'none') {
    round.progress?.({ name: common.name, done: 1, of: 1 });
    const { zone } = ctx.job.place;
    const parts = { begun, zone, seed: ctx.seed, decides: [...hands.decides, times.open.id, times.working.id], names };
    const halted = haltedBy(found, part, parts, trace.within('halted'));
    const [lift] = halted.repairs;
    return {
      coat: { ...common, state: 'none found', repairs: halted.repairs },
      reasons: [
        { verdict: times.assumed ? 'not known' : 'stop', ...halted.why, ...(lift ? { lift } : {}) },
        ...long,
        ...(halted.certain ? [] : [{ verdict: 'caution' as const, code: 'spread-none-found', names }]),
      ],
      missing: [],
      notes: [...times.notes, ...halted.repairs.slice(1), ...halted.tried],
    };
  }
  const done = planned(found, facts, trace);
  return { ...done, reasons: [...done.reasons, ...long] };
}
