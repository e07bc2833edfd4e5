import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import type { StepContext } from '../context.ts';
import { totalArea } from '../formulas/survey.ts';
import type { SurveyPlan } from '../results.ts';
import { measureAreas } from './areas.ts';
import { climateMargins } from './climate.ts';
import { judgeMoisture } from './moisture.ts';
import { lookAtFloor } from './on-floor.ts';
import { openTimesTried } from './open-time.ts';
import { judgePullOffs } from './pull-offs.ts';
import { lookInSlab } from './services.ts';
import { lookAtSite } from './site.ts';
import { slabAge } from './slab-age.ts';
import { testPatchSays } from './test-patch.ts';

export { countNeeded } from './moisture.ts';
export { coverKey, suspected } from './on-floor.ts';
export { failedInGlue } from './pull-offs.ts';

/**
 * The first step: what was found, whether it is plausible and complete, and what each missing fact changes. It knows
 * no system yet, so it compares nothing with a limit of a data sheet.
 */
export function survey(ctx: StepContext, trace: Trace): SurveyPlan {
  const measured = measureAreas(trace, ctx.job.areas);
  const total = trace.figure('total', totalArea, { areas: measured.areas.map(({ net }) => net) });
  const moisture = judgeMoisture(ctx, trace, total);
  const onFloor = lookAtFloor(ctx.job);
  const services = lookInSlab(ctx.job.survey);
  const pulls = judgePullOffs(trace, ctx.job.survey);
  const climate = climateMargins(trace, ctx.job.survey.climate ?? []);
  const { age, missing: ageMissing } = slabAge(ctx, trace);
  const site = lookAtSite(ctx.job);
  const notes = [
    ...measured.notes,
    ...moisture.notes,
    ...onFloor.notes,
    ...pulls.notes,
    ...climate.notes,
    ...testPatchSays(ctx.job.survey),
    ...openTimesTried(trace, ctx.job),
  ];
  return {
    verdict: verdictOf(
      [
        ...measured.reasons,
        ...moisture.reasons,
        ...onFloor.reasons,
        ...services.reasons,
        ...climate.reasons,
        ...site.reasons,
      ],
      ctx.job.overrides,
    ),
    missing: [
      ...moisture.missing,
      ...onFloor.missing,
      ...services.missing,
      ...climate.missing,
      ...ageMissing,
      ...site.missing,
    ],
    notes,
    areas: measured.areas,
    total,
    moisture: moisture.plan,
    removal: onFloor.removal,
    cutting: services.cutting,
    ...(age ? { slabAge: age } : {}),
    ...(pulls.pullOff ? { pullOff: pulls.pullOff } : {}),
    margins: climate.margins,
  };
}
