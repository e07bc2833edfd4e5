import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import { givenFact, type OptionContext, productOf } from '../context.ts';
import { roomVolume } from '../formulas/safety.ts';
import { totalArea } from '../formulas/survey.ts';
import type { QuantitiesPlan, SafetyPlan, SurveyPlan } from '../results.ts';
import { kitMasses } from './kits.ts';
import { permitSaid } from './permit.ts';
import { vapours } from './vapour.ts';

const solventMissing = (layer: string): Missing => ({
  path: 'catalogue.products',
  fact: { code: 'safety-missing-solvent', names: { layer } },
  changes: { code: 'safety-missing-solvent-changes' },
  meanwhile: 'assumed',
});

/**
 * What the crew should know of vapour, weight and the questions of a fire code. It informs: no figure here carries a
 * verdict, and the safety data sheet, the code of the place and the fire official go before all of it.
 */
export function safety(ctx: OptionContext, surveyed: SurveyPlan, quantified: QuantitiesPlan, trace: Trace): SafetyPlan {
  const areas = surveyed.areas.filter(({ id }) => ctx.option.areas.includes(id));
  const floor = trace.figure('floor', totalArea, { areas: areas.map(({ net }) => net) });
  const height = ctx.job.survey.building?.height;
  const room = height
    ? trace.figure('room', roomVolume, { area: floor, height: givenFact(trace, 'height', height) })
    : undefined;
  const vapour = vapours(ctx, quantified, room, trace);
  const productNames = (holds: (product: ReturnType<typeof productOf>) => boolean): readonly string[] => [
    ...new Set(
      ctx.system.layers
        .map((layer) => productOf(ctx, layer))
        .filter(holds)
        .map(({ name }) => name),
    ),
  ];
  return {
    verdict: verdictOf([]),
    missing: vapour.filter(({ from }) => from === 'not known').map(({ name }) => solventMissing(name)),
    notes: [],
    ...(room ? { room } : {}),
    vapour,
    kits: kitMasses(ctx, quantified, trace),
    permit: permitSaid(ctx, quantified, floor, trace),
    isocyanate: productNames(({ isocyanate }) => isocyanate === true),
    amine: productNames(({ amine }) => amine === true),
  };
}
