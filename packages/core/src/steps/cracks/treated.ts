import type { Figure, Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { priceTotal } from '../../science/price/index.ts';
import type { OptionContext } from '../context.ts';
import { fillerShare } from '../formulas/cracks.ts';
import { personTime } from '../formulas/hours-tasks.ts';
import { timeFromLength } from '../formulas/preparation.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import { givenAmount, priced } from '../price/amounts.ts';
import type { BuyingLine, CrackPlan, CracksPlan, DayPlan, PriceLine, Task } from '../results.ts';
import { fillerFor } from './filler.ts';

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

/** What the other steps found that a treatment shares in. */
export interface TreatedBy {
  readonly tasks: readonly Task[];
  readonly buying: readonly BuyingLine[];
  readonly prices: readonly PriceLine[];
  readonly day?: DayPlan | undefined;
}

/**
 * What the treatment of each crack and joint takes: its share of the tasks of its area, that time at the firm's wage,
 * its share of the filler's packs by volume, and for what is cut again the earliest hour, when the metre of the last coat laid last bears feet.
 */
export function treated(
  ctx: OptionContext,
  judged: CracksPlan,
  { tasks, buying, prices, day }: TreatedBy,
  trace: Trace,
): CracksPlan {
  const bears = day?.coats.at(-1)?.milestones.find(({ what }) => what === 'foot')?.last.at;
  const hour = judged.cracks.length > 0 && ctx.priceBook ? wageOf(ctx, trace) : undefined;
  const packs = packsPriced(buying, prices, trace.within('treatment'));
  const lines = judged.cracks.map((line): CrackPlan => {
    const t = trace.within(line.area).within(line.id).within('treatment');
    const work = workOf(line, tasks, t);
    const labour = work && hour ? priced(t, 'labour', { quantity: work, per: hour.per }, hour.wage) : undefined;
    const bought = packs.get(fillerFor(ctx, line)?.id ?? '');
    const fillerCost =
      line.filler && bought ? t.figure('filler-cost', fillerShare, { ...bought, volume: line.filler }) : undefined;
    const recut = line.planned === 're-cut and filled';
    return {
      ...line,
      ...(work ? { work } : {}),
      ...(labour ? { labour } : {}),
      ...(fillerCost ? { fillerCost } : {}),
      ...(labour && fillerCost ? { cost: t.figure('cost', priceTotal, { lines: [labour, fillerCost] }) } : {}),
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
  const fillers = lines.flatMap(({ fillerCost }) => fillerCost ?? []);
  if (fillers.length < lines.length)
    return [{ code: 'cracks-treatment-priced', figures: { ...figures, labour: labour.id } }];
  const fillerCost = trace.figure('all-filler-cost', priceTotal, { lines: fillers });
  const cost = trace.figure('all-cost', priceTotal, { lines: [labour, fillerCost] });
  const all = { ...figures, labour: labour.id, fillerCost: fillerCost.id, cost: cost.id };
  return [{ code: 'cracks-treatment-with-filler', figures: all }];
}

/** By filler, what its packs cost in the price and the volume they are bought for; none where a pack has no price. */
function packsPriced(buying: readonly BuyingLine[], prices: readonly PriceLine[], trace: Trace) {
  const found = new Map<string, { readonly packs: Figure<'money'>; readonly needed: Known<'m³'> }>();
  for (const { kind, item, packs, needed } of buying) {
    if (kind !== 'filler' || needed.unit !== 'm³') continue;
    const amounts = packs.flatMap(({ pack }) => prices.find(({ id }) => id === `${item}.${pack}`)?.amount ?? []);
    if (amounts.length === 0 || amounts.length < packs.length) continue;
    const cost = trace.figure(`${item}.packs`, priceTotal, { lines: amounts });
    found.set(item, { packs: cost, needed: needed as Known<'m³'> });
  }
  return found;
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
