import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';
import type { LayerFit, SurveyPlan, SystemPlan } from '../results.ts';
import { ageFit } from './age.ts';
import { bondFit } from './bond.ts';
import { chemistryFit } from './chemistry.ts';
import { climateFit, roomReadings } from './climate.ts';
import { type Coat, join } from './coat.ts';
import { coatOf } from './film.ts';
import { filmLimits } from './film-limits.ts';
import { lightFit } from './light.ts';
import { mixFit } from './mix.ts';
import { moistureFit, moistureLimits } from './moisture.ts';
import { profileFit } from './profile.ts';
import { thinnerFit } from './thinner.ts';

/** Whether the chosen system fits this slab, room and use, by the limits of its own sheets. */
export function system(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace): SystemPlan {
  const walls = hasVerticals(ctx, surveyed);
  const coats = ctx.system.layers.map((layer) => coatOf(ctx, layer, (layer.verticals ?? false) && walls, trace));
  const alone = coats.map((coat) =>
    join([filmLimits(coat), thinnerFit(coat), ageFit(ctx, coat, surveyed), chemistryFit(coat), mixFit(coat)]),
  );
  const limits = moistureLimits(coats);
  const together = join([
    moistureFit(coats, limits, surveyed, trace),
    bondFit(coats, surveyed),
    climateFit(coats, roomReadings(ctx, surveyed, trace)),
    lightFit(ctx, coats),
    profileFit(ctx, coats, trace),
  ]);
  const all = join([...alone, together]);
  return {
    system: ctx.system.id,
    name: ctx.system.name,
    layers: coats.map((coat, i) => fitOf(ctx, coat, alone[i]?.reasons ?? [])),
    moistureLimit: limits,
    verdict: verdictOf(all.reasons, ctx.job.overrides),
    missing: all.missing,
    notes: all.notes,
  };
}

/** Whether this option coats anything that stands up. */
function hasVerticals(ctx: OptionContext, surveyed: SurveyPlan): boolean {
  const wanted = new Set(ctx.option.areas);
  const bare = new Set(ctx.option.leaveOut ?? []);
  return surveyed.areas.some((area) => wanted.has(area.id) && area.verticals.some((v) => !bare.has(v.id)));
}

function fitOf(ctx: OptionContext, coat: Coat, reasons: Parameters<typeof verdictOf>[0]): LayerFit {
  return {
    layer: coat.layer.id,
    product: coat.product.id,
    name: coat.name,
    wet: coat.wet,
    dry: coat.dry,
    ...(coat.wetVertical ? { wetVertical: coat.wetVertical } : {}),
    solids: coat.solids,
    ...(coat.thinnerRatio ? { thinnerRatio: coat.thinnerRatio } : {}),
    reasons: verdictOf(reasons, ctx.job.overrides),
  };
}
