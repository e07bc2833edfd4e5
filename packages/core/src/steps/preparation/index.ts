import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { givenCount, type OptionContext } from '../context.ts';
import { totalArea } from '../formulas/survey.ts';
import type { PreparationPlan, SurveyPlan } from '../results.ts';
import { dustSaid } from './dust.ts';
import { gateReasons, oilCleared } from './gate.ts';
import { chooseMethod, rankMethods, wetWork } from './methods.ts';
import { profileDepths } from './profile-depth.ts';
import { RateBook } from './rates.ts';
import { hasRemoval, workOf } from './removal-work.ts';
import { targetProfile } from './target.ts';
import { preparationTasks } from './tasks.ts';
import { toolingSaid } from './tooling.ts';

export { METHOD_IDS } from './methods.ts';
export { type Amount, RateBook, type RateFound, type Timed, timeOf } from './rates.ts';

const HELD: Reason = {
  verdict: 'not known',
  code: 'preparation-removal-held',
  lift: { code: 'preparation-removal-held-lift' },
};

/**
 * How the slab is made ready for the chosen system: the profile it wants, the method that reaches it, the tasks with
 * their person-time, tools and dust, and the gate that must be passed before the first coat.
 */
export function preparation(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace): PreparationPlan {
  const areas = surveyed.areas.filter(({ id }) => ctx.option.areas.includes(id));
  const drawn = ctx.job.areas.filter(({ id }) => areas.some((area) => area.id === id));
  const floor = trace.figure('floor', totalArea, { areas: areas.map(({ net }) => net) });
  const { target, notes } = targetProfile(ctx, trace);
  const film = areas.some(({ id }) => hasRemoval(ctx.job, id));
  const patched = ctx.job.survey.testPatch?.method;
  // The patch timed the first pass over this floor as it lies: through the film, where there is one.
  const bareRates = new RateBook(ctx, trace.within('ranking'), film ? undefined : patched);
  const methods = rankMethods(ctx, trace, target, film, floor, bareRates);
  const { chosen, reasons: choice } = chooseMethod(ctx, target, methods);
  const first = film ? (ctx.option.preparation?.removal ?? chosen) : chosen;
  const rates = new RateBook(ctx, trace, first === patched ? (film ? workOf('remove-film', first) : first) : undefined);
  const stated = ctx.option.preparation?.passes;
  const passes = givenCount(trace, 'passes', stated ?? (film ? 2 : 1), stated === undefined ? 'assumed' : 'chosen');
  const { tasks, missing, notes: said } = preparationTasks(ctx, trace, surveyed, areas, chosen, passes, rates);
  const depth = profileDepths(ctx, trace, drawn, target);
  const gate = gateReasons(ctx, trace, surveyed, target, floor);
  const reasons = [...choice, ...(surveyed.removal === 'held' ? [HELD] : []), ...wetWork(chosen)];
  return {
    verdict: verdictOf([...reasons, ...gate], ctx.job.overrides),
    missing: [...missing, ...depth.missing],
    notes: [...notes, ...said, ...oilCleared(ctx)],
    target,
    methods,
    ...(chosen === undefined ? {} : { chosen }),
    passes,
    tasks,
    profileDepth: depth.depths,
    tooling: toolingSaid(ctx, trace, target, chosen),
    gate: verdictOf(gate, ctx.job.overrides),
    dust: dustSaid(ctx, trace, tasks, chosen),
  };
}
