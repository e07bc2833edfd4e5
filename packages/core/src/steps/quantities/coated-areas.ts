import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { OptionContext } from '../context.ts';
import { totalArea } from '../formulas/quantities-volumes.ts';
import type { AreaMeasure, SurveyPlan, VerticalMeasure } from '../results.ts';

/** Areas of one option, in the order of the job, without the parts it leaves bare. */
export interface CoatedArea {
  readonly measure: AreaMeasure;
  readonly verticals: readonly VerticalMeasure[];
}

export function coatedAreas(ctx: OptionContext, surveyed: SurveyPlan): readonly CoatedArea[] {
  const wanted = new Set(ctx.option.areas);
  const bare = new Set(ctx.option.leaveOut ?? []);
  return surveyed.areas
    .filter((area) => wanted.has(area.id))
    .map((measure) => ({ measure, verticals: measure.verticals.filter((v) => !bare.has(v.id)) }));
}

/** The layer whose material rounds the coves: the first on concrete that goes up the wall, else the first that does. */
export const coveLayer = (layers: readonly Layer[]): Layer | undefined =>
  layers.find((layer) => layer.verticals && layer.onConcrete) ?? layers.find((layer) => layer.verticals);

/** Sum of areas, without a sum where there is only one. */
export function sumOfAreas(trace: Trace, name: string, areas: readonly Known<'m²'>[]): Known<'m²'> | undefined {
  return areas.length > 1 ? trace.figure(name, totalArea, { areas }) : areas[0];
}
