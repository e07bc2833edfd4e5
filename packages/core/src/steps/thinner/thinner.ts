import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { dryAtOldGauge, leastThinner } from '../formulas/thinner.ts';
import type { CoatThinner, LayerFit, SystemPlan, ThinnerPlan } from '../results.ts';
import { above } from '../system/limits.ts';
import { exemptionOf, vocLimitOf, workDay } from './place.ts';
import { countsAsExempt, type VocOf, vocOf } from './voc.ts';

interface Told {
  readonly coat: CoatThinner;
  readonly reasons: readonly Reason[];
  readonly notes: readonly Said[];
  readonly missing: readonly Missing[];
}

/**
 * What thinner does to each coat: the dry film stays, the gauge rises, and the most is bounded by the sheet and by the
 * VOC limit of the place on the day of the work. Above the sheet's own limit the system step stops the plan; here a
 * legal figure is only set beside the coat's, because who is bound by it differs from rule to rule.
 */
export function thinner(ctx: OptionContext, fitted: SystemPlan, trace: Trace): ThinnerPlan {
  const told = ctx.system.layers.flatMap((layer, i): readonly Told[] => {
    const fit = fitted.layers.find((one) => one.layer === layer.id);
    return fit ? [coatThinner(ctx, layer, fit, ctx.system.layers[i + 1] !== undefined, trace.within(layer.id))] : [];
  });
  return {
    verdict: verdictOf(
      told.flatMap((one) => one.reasons),
      ctx.job.overrides,
    ),
    missing: told.flatMap((one) => one.missing),
    notes: told.flatMap((one) => one.notes),
    coats: told.map((one) => one.coat),
  };
}

function coatThinner(ctx: OptionContext, layer: Layer, fit: LayerFit, covered: boolean, trace: Trace): Told {
  const product = productOf(ctx, layer);
  const sheet = sheetOf(product);
  const stated = product.thinner;
  const allowed = stated?.allowed ?? 'not known';
  const ratio = fit.thinnerRatio;
  const day = workDay(ctx.option, ctx.now);
  const limit = vocLimitOf(ctx.job, product.id, day);
  const exemption = exemptionOf(ctx.job, stated?.name, day);
  const base = {
    layer: layer.id,
    product: product.id,
    name: fit.name,
    allowed,
    ...(stated?.name ? { thinner: stated.name } : {}),
    dry: fit.dry,
    wet: fit.wet,
    exempt: countsAsExempt(exemption, limit),
    longerOpenTime: stated?.lengthensOpenTime ?? 'not known',
  } as const;
  if (allowed !== 'yes' && !ratio) {
    return { coat: { ...base, againstLimit: 'not known' }, reasons: [], notes: [], missing: [] };
  }
  const voc = vocOf(trace, product, sheet, ratio, limit, exemption);
  const bySheet = stated?.most ? givenFact(trace, 'most-by-sheet', stated.most, { where: sheet }) : undefined;
  const most =
    bySheet && voc.most ? trace.figure('most', leastThinner, { bySheet, byLimit: voc.most }) : (bySheet ?? voc.most);
  const coat: CoatThinner = {
    ...base,
    ...(ratio
      ? { ratio, dryAtOldGauge: trace.figure('dry-at-old-gauge', dryAtOldGauge, { dry: fit.dry, thinnerRatio: ratio }) }
      : {}),
    ...(bySheet ? { mostBySheet: bySheet } : {}),
    ...(voc.limit ? { limit: voc.limit } : {}),
    ...(voc.most ? { mostByLimit: voc.most } : {}),
    ...(most ? { most } : {}),
    ...(voc.voc ? { voc: voc.voc } : {}),
    againstLimit: against(voc),
  };
  if (!ratio) return { coat, reasons: overAlready(coat, limit?.source ?? '', day), notes: [], missing: [] };
  const names = { layer: fit.name, thinner: stated?.name ?? '' };
  return {
    coat,
    reasons: [...overLimit(coat, limit?.source ?? '', day), ...entrapment(coat, fit, covered)],
    notes: notesOf(coat, ratio, names, exemption?.source ?? '', exemption?.date ?? '', voc),
    missing: [...noLimit(limit !== undefined, names), ...sheetLacks(voc, product.id, names)],
  };
}

const against = ({ limit, voc }: VocOf): CoatThinner['againstLimit'] =>
  limit && voc ? (above(voc.value, limit.value) ? 'above' : 'at or below the figure you entered') : 'not known';

/** The coat is above the limit of the place before anybody thins it. */
function overAlready(coat: CoatThinner, rule: string, day: string): readonly Reason[] {
  const { limit, voc } = coat;
  if (coat.againstLimit !== 'above' || !limit || !voc) return [];
  return [
    {
      code: 'thinner-voc-over-already',
      verdict: 'caution',
      figures: { voc: voc.id, limit: limit.id },
      names: { layer: coat.name, rule, day },
      source: limit.id,
      lift: { code: 'thinner-voc-over-already-lift', names: { layer: coat.name } },
    },
  ];
}

function overLimit(coat: CoatThinner, rule: string, day: string): readonly Reason[] {
  const { limit, voc, mostByLimit } = coat;
  if (coat.againstLimit !== 'above' || !limit || !voc) return [];
  if (!mostByLimit || mostByLimit.value === 0) return overAlready(coat, rule, day);
  const figures = { voc: voc.id, limit: limit.id, most: mostByLimit.id };
  const names = { layer: coat.name, rule, day };
  const lift = { code: 'thinner-voc-above-limit-lift', figures: { most: mostByLimit.id }, names };
  return [{ code: 'thinner-voc-above-limit', verdict: 'caution', figures, names, source: limit.id, lift }];
}

/** More solvent has to leave through a thicker wet film; what the next coat shuts in softens the floor. */
function entrapment(coat: CoatThinner, fit: LayerFit, covered: boolean): readonly Reason[] {
  const code = covered ? 'thinner-entrapment-recoat' : 'thinner-entrapment';
  return [
    { code, verdict: 'caution', figures: { wet: coat.wet.id, solids: fit.solids.id }, names: { layer: coat.name } },
  ];
}

function notesOf(
  coat: CoatThinner,
  ratio: Known<'1'>,
  names: Readonly<Record<string, string>>,
  rule: string,
  date: string,
  voc: VocOf,
): readonly Said[] {
  const notes: Said[] = [];
  if (coat.dryAtOldGauge) {
    const figures = { ratio: ratio.id, wet: coat.wet.id, dry: coat.dry.id, left: coat.dryAtOldGauge.id };
    notes.push({ code: 'thinner-old-gauge', figures, names });
  }
  notes.push({ code: `thinner-open-time-${coat.longerOpenTime.replace(' ', '-')}`, names });
  if (coat.exempt) notes.push({ code: 'thinner-exempt', names: { ...names, rule, date } });
  else if (voc.voc) notes.push({ code: 'thinner-voc', figures: { voc: voc.voc.id }, names });
  if (voc.unbounded && !coat.exempt && coat.limit)
    notes.push({ code: 'thinner-limit-never-reached', figures: { limit: coat.limit.id }, names });
  notes.push({ code: 'thinner-vapour', names });
  return notes;
}

/** A legal figure is never supplied by the tool: without the firm's own entry only the sheet bounds the thinner. */
const noLimit = (entered: boolean, names: Readonly<Record<string, string>>): readonly Missing[] =>
  entered
    ? []
    : [
        {
          path: 'place.vocLimits',
          fact: { code: 'thinner-limit-not-entered', names },
          changes: { code: 'thinner-limit-changes', names },
          meanwhile: 'assumed',
        },
      ];

const sheetLacks = (voc: VocOf, product: string, names: Readonly<Record<string, string>>): readonly Missing[] =>
  voc.lacks === undefined
    ? []
    : [
        {
          path: `catalogue.products.${product}.${voc.lacks}`,
          fact: { code: `thinner-lacks-${voc.lacks.replace('thinner.', '')}`, names },
          changes: { code: 'thinner-limit-changes', names },
          meanwhile: 'assumed',
        },
      ];
