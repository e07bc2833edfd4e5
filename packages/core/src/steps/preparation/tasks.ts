import type { Figure, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenCount, type OptionContext } from '../context.ts';
import { CLOSED, type Handled, plannedIn } from '../cracks/handled.ts';
import { crewTime, restOfArea, sweptArea } from '../formulas/preparation.ts';
import { totalArea, totalLength } from '../formulas/survey.ts';
import type { AreaMeasure, SurveyPlan, Task } from '../results.ts';
import { above } from '../system/limits.ts';
import { type Amount, type RateBook, timeOf } from './rates.ts';
import { type Removal, removalsOf } from './removal-work.ts';

export interface Tasks {
  readonly tasks: readonly Task[];
  readonly missing: readonly Missing[];
  readonly notes: readonly Said[];
}

/** A shift of work; preparation that takes longer ends on another day than the coat, and dust settles overnight. */
const SHIFT = 8 * 3600;

/** Gathers tasks; work without any rate is named as missing instead of being given hours nobody stands behind. */
class TaskList {
  readonly tasks: Task[] = [];
  readonly missing: Missing[] = [];
  private readonly trace: Trace;
  private readonly rates: RateBook;

  constructor(trace: Trace, rates: RateBook) {
    this.trace = trace;
    this.rates = rates;
  }

  /** Adds a task and gives the ids that later ones wait for: its own, or none when it has no rate. */
  add(work: string, area: string, amount: Amount, after: readonly string[], meanwhile: Missing['meanwhile']): string[] {
    const id = `${work}/${area}`;
    const found = this.rates.rate(work);
    const timed = found ? timeOf(this.trace.within('task'), id, amount, found) : undefined;
    if (!timed) {
      this.missing.push({
        path: 'catalogue.rates',
        fact: { code: 'preparation-missing-rate', names: { work: `@preparation-work-${work}` } },
        changes: { code: 'preparation-missing-rate-changes', names: { work: `@preparation-work-${work}` } },
        meanwhile,
      });
      return [];
    }
    this.tasks.push({ id, work, area, ...timed, after });
    return [id];
  }
}

const sumOfLengths = (trace: Trace, name: string, lengths: readonly Known<'m'>[]): Figure<'m'> | undefined =>
  lengths.length > 0 ? trace.figure(name, totalLength, { lengths }) : undefined;

/** First pass: what lies on the floor comes off, and bare parts are ground beside it. Gives the ids it ends with. */
function firstPass(list: TaskList, trace: Trace, area: AreaMeasure, method: string, removals: readonly Removal[]) {
  const ids = removals.flatMap((r) => list.add(r.by, area.id, { area: r.area }, [], 'held'));
  const film = removals.filter(({ work }) => work === 'remove-film');
  if (film.some(({ whole }) => whole)) return ids;
  const part = film[0]?.area;
  // Under tile or a levelling coat the concrete itself is still to be ground.
  const bare = part ? trace.figure(`rest.${area.id}`, restOfArea, { area: area.net, part }) : area.net;
  return [...ids, ...list.add(method, area.id, { area: bare }, removals.length > 0 ? ids : [], 'held')];
}

/** Passes after the first, over the whole area. */
function furtherPasses(list: TaskList, trace: Trace, area: AreaMeasure, count: number, after: readonly string[]) {
  if (count <= 0) return [...after];
  const times = givenCount(trace, `further-passes.${area.id}`, count, 'chosen');
  const swept = trace.figure(`swept.${area.id}`, sweptArea, { area: area.net, times });
  const ids = list.add('second-pass', area.id, { area: swept }, after, 'held');
  return ids.length > 0 ? ids : [...after];
}

/** Cracks to be filled before the first coat; where nobody judged them, all that are not said to move. */
const closedIn = (ctx: Handled, area: AreaMeasure): readonly Known<'m'>[] =>
  ctx.lines
    ? plannedIn(ctx, area.id, CLOSED)
        .filter(({ kind }) => kind === 'crack')
        .map(({ length }) => length)
    : area.cracks.filter(({ moves }) => moves !== 'yes').map(({ length }) => length);

function repairs(
  ctx: Handled,
  list: TaskList,
  trace: Trace,
  area: AreaMeasure,
  cutting: SurveyPlan['cutting'],
  after: string[],
): string[] {
  const done: string[] = [];
  if (cutting === 'may be planned') {
    const cracks = sumOfLengths(trace, `cracks.${area.id}`, closedIn(ctx, area));
    if (cracks) done.push(...list.add('crack-fill', area.id, { length: cracks }, after, 'held'));
    const cut = area.joints.filter(({ kind }) => kind !== 'isolation').map(({ length }) => length);
    const joints = sumOfLengths(trace, `joints.${area.id}`, cut);
    if (joints) done.push(...list.add('joint-fill', area.id, { length: joints }, after, 'held'));
    const taped = plannedIn(ctx, area.id, ['filled and reinforced']).map(({ length }) => length);
    const reinforced = sumOfLengths(trace, `reinforced.${area.id}`, taped);
    if (reinforced) {
      const filled = done.length > 0 ? [...done] : after;
      done.push(...list.add('crack-reinforce', area.id, { length: reinforced }, filled, 'held'));
    }
  }
  const holes = area.spots.filter(({ kind }) => kind === 'spall' || kind === 'pit').map(({ extent }) => extent);
  if (holes.length > 0) {
    const patched = trace.figure(`patches.${area.id}`, totalArea, { areas: holes });
    done.push(...list.add('patch', area.id, { area: patched }, after, 'held'));
  }
  return done;
}

/** Oil that a drop of water already soaks in over has been treated; the rest is still to be done. */
function oilTreatment(ctx: OptionContext, list: TaskList, trace: Trace, area: AreaMeasure, after: string[]): string[] {
  const drawn = ctx.job.areas.find(({ id }) => id === area.id)?.spots ?? [];
  const open = drawn.filter(({ kind, waterDrop }) => kind === 'oil' && waterDrop !== 'soaks in').map(({ id }) => id);
  const extents = area.spots.filter(({ id }) => open.includes(id)).map(({ extent }) => extent);
  if (extents.length === 0) return [];
  const oily = trace.figure(`oil.${area.id}`, totalArea, { areas: extents });
  return list.add('oil-treat', area.id, { area: oily }, after, 'assumed');
}

function stemWalls(ctx: OptionContext, list: TaskList, trace: Trace, area: AreaMeasure): string[] {
  if (!ctx.system.layers.some(({ verticals }) => verticals)) return [];
  const left = new Set(ctx.option.leaveOut ?? []);
  const lengths = area.verticals.filter(({ id, kind }) => kind !== 'cove' && !left.has(id)).map(({ length }) => length);
  const length = sumOfLengths(trace, `verticals.${area.id}`, lengths);
  return length ? list.add('stem-prep', area.id, { length }, [], 'held') : [];
}

function notesOn(ctx: OptionContext, areas: readonly AreaMeasure[], cutting: SurveyPlan['cutting']): readonly Said[] {
  return areas.flatMap((area): readonly Said[] => {
    const names = { area: area.name };
    const moving = area.cracks.filter(({ moves }) => moves === 'yes');
    const unsure = area.cracks.filter(({ moves }) => moves === 'not known');
    const drawn = ctx.job.areas.find(({ id }) => id === area.id)?.cracks ?? [];
    const stepped = drawn.filter(({ step }) => step !== undefined && step.value > 0);
    const isolation = area.joints.some(({ kind }) => kind === 'isolation');
    const soft = area.spots.some(({ kind }) => kind === 'soft concrete');
    const cut = cutting === 'held' && (area.cracks.length > 0 || area.joints.length > 0);
    return [
      ...moving.map(({ id }) => ({ code: 'preparation-crack-moves', names: { ...names, crack: id } })),
      ...unsure.map(({ id }) => ({ code: 'preparation-crack-may-move', names: { ...names, crack: id } })),
      ...stepped.map(({ id }) => ({ code: 'preparation-crack-step', names: { ...names, crack: id } })),
      ...(isolation ? [{ code: 'preparation-isolation-joint-stays', names }] : []),
      ...(soft ? [{ code: 'preparation-soft-concrete', names }] : []),
      ...(cut ? [{ code: 'preparation-cutting-held', names }] : []),
    ];
  });
}

/**
 * Tasks of the preparation with person-time, in the order they are done. While what lies on the floor is not known no
 * machine touches it: only work that neither grinds nor cuts is planned.
 */
export function preparationTasks(
  ctx: Handled,
  trace: Trace,
  surveyed: SurveyPlan,
  areas: readonly AreaMeasure[],
  method: string | undefined,
  passes: Known<'1'>,
  rates: RateBook,
): Tasks {
  const list = new TaskList(trace, rates);
  const ends = new Map<string, string[]>();
  for (const area of areas) {
    const machine = surveyed.removal !== 'held' && method !== undefined;
    const removals = removalsOf(ctx.job, trace, area, ctx.option.preparation?.removal);
    let ground: string[] = [];
    const done: string[] = [];
    if (machine) {
      const first = firstPass(list, trace, area, method, removals);
      ground = furtherPasses(list, trace, area, passes.value - 1, first);
      const edge = removals.length > 0 ? 'edge-through-film' : 'edge';
      done.push(...list.add(edge, area.id, { length: area.edge }, [], 'held'));
      done.push(...stemWalls(ctx, list, trace, area));
    }
    done.push(...oilTreatment(ctx, list, trace, area, ground));
    if (machine) done.push(...repairs(ctx, list, trace, area, surveyed.cutting, ground));
    ends.set(area.id, [...ground, ...done]);
  }
  const people = givenCount(trace, 'people', ctx.option.people, 'chosen');
  const shared = trace.figure('clock', crewTime, { personTimes: list.tasks.map(({ time }) => time), people });
  const overnight = above(shared.value, SHIFT);
  if (list.tasks.length > 0) {
    const times = givenCount(trace, 'vacuum-times', passes.value + (overnight ? 1 : 0), 'chosen');
    for (const area of areas) {
      const swept = trace.figure(`vacuumed.${area.id}`, sweptArea, { area: area.net, times });
      list.add('vacuum', area.id, { area: swept }, ends.get(area.id) ?? [], 'held');
    }
  }
  const notes = [
    ...notesOn(ctx, areas, surveyed.cutting),
    ...(overnight ? [{ code: 'preparation-vacuum-again' }] : []),
  ];
  return { tasks: list.tasks, missing: list.missing, notes };
}
