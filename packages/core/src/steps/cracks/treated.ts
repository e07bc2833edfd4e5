import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { priceTotal } from '../../science/price/index.ts';
import type { OptionContext } from '../context.ts';
import { fillerOfLine } from '../formulas/cracks.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import { timeFromLength } from '../formulas/preparation.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import { givenAmount, priced } from '../price/amounts.ts';
import type { CrackPlan, CracksPlan, DayPlan, Task } from '../results.ts';

/** Groove that is filled, m: a crack chased open, a saw cut filled to its depth. Common practice, no source. */
const GROOVE = {
  crack: { width: 6e-3, depth: 12e-3 },
  joint: { width: 4e-3, depth: 25e-3 },
} as const;

/** Works of the tasks that make up one treatment, in order. */
function worksOf({ kind, planned }: CrackPlan): readonly string[] {
  const closed = kind === 'crack' ? ['crack-fill'] : kind === 'isolation' ? [] : ['joint-fill'];
  switch (planned) {
    case 'filled':
    case 'filled and coated over':
      return closed;
    case 'filled and reinforced':
      return [...closed, 'crack-reinforce'];
    case 're-cut and filled':
      return [...(kind === 'crack' ? [] : closed), 'joint-recut-and-fill'];
    case 'held':
      return [];
  }
}

/**
 * What the treatment of each crack and joint takes: its share of the tasks of its area, that time at the firm's wage,
 * the filler, and for what is cut again the earliest hour, when the metre of the last coat laid last bears feet.
 */
export function treated(
  ctx: OptionContext,
  judged: CracksPlan,
  tasks: readonly Task[],
  day: DayPlan | undefined,
  trace: Trace,
): CracksPlan {
  const bears = day?.coats.at(-1)?.milestones.find(({ what }) => what === 'foot')?.last.at;
  const hour = judged.cracks.length > 0 && ctx.priceBook ? wageOf(ctx, trace) : undefined;
  const lines = judged.cracks.map((line): CrackPlan => {
    const t = trace.within(line.area).within(line.id).within('treatment');
    const work = workOf(line, tasks, t);
    const recut = line.planned === 're-cut and filled';
    return {
      ...line,
      ...(work ? { work } : {}),
      ...(work && hour ? { labour: priced(t, 'labour', { quantity: work, per: hour.per }, hour.wage) } : {}),
      ...(line.planned === 'held' ? {} : { filler: fillerOf(line, t) }),
      ...(recut && bears ? { earliest: bears } : {}),
    };
  });
  const [first] = lines.filter(({ earliest }) => earliest !== undefined);
  const at = first?.earliest?.slice(0, 16).replace('T', ' ');
  return {
    ...judged,
    cracks: lines,
    notes: [
      ...judged.notes,
      ...totalOf(lines, trace.within('treatment')),
      ...(at ? [{ code: 'cracks-recut-earliest', names: { at } }] : []),
    ],
  };
}

/** All treatments of the option together; nothing while one of them is held or has no rate. */
function totalOf(lines: readonly CrackPlan[], trace: Trace): readonly Said[] {
  const works = lines.flatMap(({ work }) => work ?? []);
  const volumes = lines.flatMap(({ filler }) => filler ?? []);
  if (works.length === 0 || works.length < lines.length || volumes.length === 0) return [];
  const figures = {
    work: trace.figure('all-work', personTime, { times: works }).id,
    filler: trace.figure('all-filler', totalVolume, { volumes }).id,
  };
  const wages = lines.flatMap(({ labour }) => labour ?? []);
  if (wages.length < lines.length) return [{ code: 'cracks-treatment', figures }];
  const labour = trace.figure('all-labour', priceTotal, { lines: wages });
  return [{ code: 'cracks-treatment-priced', figures: { ...figures, labour: labour.id } }];
}

/** Nothing where a part of it has no task, or is counted as a whole and cannot be shared out by length. */
function workOf(line: CrackPlan, tasks: readonly Task[], trace: Trace): Figure<'s'> | undefined {
  const works = worksOf(line);
  const rates = works.flatMap((work) => {
    const rate = tasks.find((task) => task.work === work && task.area === line.area)?.rate;
    return rate?.unit === 'm/s' ? [{ work, rate: rate as Known<'m/s'> }] : [];
  });
  if (works.length === 0 || rates.length < works.length) return undefined;
  const times = rates.map(({ work, rate }) => trace.figure(work, timeFromLength, { length: line.length, rate }));
  return trace.figure('work', personTime, { times });
}

function wageOf({ priceBook }: OptionContext, trace: Trace) {
  if (!priceBook) return undefined;
  const t = trace.within('treatment');
  const per = t.given('hour', { value: 3600, unit: 's', origin: 'chosen', typed: '1 h', shows: 'duration' });
  return { per, wage: givenAmount(t, 'wage', priceBook.wage, priceBook) };
}

function fillerOf({ kind, length }: CrackPlan, trace: Trace): Figure<'m³'> {
  const groove = kind === 'crack' ? GROOVE.crack : GROOVE.joint;
  const side = (name: 'width' | 'depth'): Known<'m'> =>
    trace.given(name, {
      value: groove[name],
      unit: 'm',
      origin: 'assumed',
      source: 'hours-common-practice',
      says: 'cracks-groove-assumed',
      shows: 'small-length',
    });
  return trace.figure('filler', fillerOfLine, { length, width: side('width'), depth: side('depth') });
}
