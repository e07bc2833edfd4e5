import table from '../../data/silica-table1.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { shroudAirflow } from '../../science/dust/index.ts';
import { givenField, type OptionContext } from '../context.ts';
import type { Task } from '../results.ts';

import { below } from '../system/limits.ts';

/** Airflow of each hand grinder beside what the rule's table asks for its wheel. Informs; judges nothing. */
function airflowSaid(ctx: OptionContext, trace: Trace): readonly Said[] {
  const hand = (ctx.catalogue.tools ?? []).filter(({ wheel }) => wheel !== undefined);
  return hand.flatMap((tool): readonly Said[] => {
    if (!tool.wheel) return [];
    const t = trace.within(`shroud.${tool.id}`);
    const per = table.airflowPerWheel;
    const needed = t.figure('airflow', shroudAirflow, {
      wheelDiameter: givenField(t, 'wheel', tool.wheel, 'data sheet', { where: tool.name }),
      airflowPerDiameter: t.given('per-diameter', {
        value: tabled(per.value, 'm²/s'),
        unit: 'm²/s',
        origin: 'table',
        source: per.source,
        typed: per.value,
      }),
    });
    const names = { tool: tool.name };
    if (!tool.airflow) return [{ code: 'preparation-dust-airflow-not-known', names, figures: { needed: needed.id } }];
    const entered = givenField(t, 'entered', tool.airflow, 'data sheet', { where: tool.name });
    const short = below(entered.value, needed.value);
    const code = short ? 'preparation-dust-airflow-below' : 'preparation-dust-airflow-reaches';
    return [{ code, names, figures: { needed: needed.id, entered: entered.id } }];
  });
}

/** What the tasks stir up and which rule's table speaks of it. Respirator figures are left for the firm's own entry. */
export function dustSaid(
  ctx: OptionContext,
  trace: Trace,
  tasks: readonly Task[],
  chosen: string | undefined,
): readonly Said[] {
  if (tasks.length === 0 || chosen === undefined) return [];
  const row = table.rows.find(({ methods }) => methods.includes(chosen));
  const off = table.notOnTheTable.includes(chosen);
  const method = `@preparation-method-${chosen}`;
  const edges = tasks.some(({ work }) => work === 'edge' || work === 'edge-through-film' || work === 'stem-prep');
  const { airReturns, occupiedBeside } = ctx.job.survey.building ?? {};
  const rows = (row ? 1 : 0) + (edges ? 1 : 0);
  return [
    ...(row ? [{ code: 'preparation-dust-row', names: { method, row: row.row } }] : []),
    ...(off ? [{ code: 'preparation-dust-not-on-table', names: { method } }] : []),
    ...(row?.hepaBetweenPasses ? [{ code: 'preparation-dust-vacuum-between' }] : []),
    ...(edges ? airflowSaid(ctx, trace) : []),
    ...(rows > 1 ? [{ code: 'preparation-dust-sum-durations' }] : []),
    { code: 'preparation-dust-respirator-own-entry' },
    ...(airReturns === 'no' ? [] : [{ code: 'preparation-dust-air-returns' }]),
    ...(occupiedBeside === 'yes' ? [{ code: 'preparation-dust-occupied-beside' }] : []),
  ];
}
