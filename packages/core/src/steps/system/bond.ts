import type { Reason } from '../../kernel/verdict.ts';
import { givenFact } from '../context.ts';
import type { SurveyPlan } from '../results.ts';
import { type Coat, type Found, join, sheetSilent } from './coat.ts';
import { below } from './limits.ts';

/** Fewest pull-offs a mean is taken from without a word: common practice, no source. */
const FEW = 3;

/**
 * Bond the sheet asks of the concrete against the pull-offs after preparation: the mean, and the least single one. Other
 * coats lie on resin; only what they state is compared.
 */
export function bondFit(coats: readonly Coat[], surveyed: SurveyPlan): Found {
  const first = coats.find((coat) => coat.layer.onConcrete) ?? coats[0];
  return join(
    coats.map((coat) => {
      if (coat.product.bondNeed) return against(coat, surveyed);
      return coat === first ? sheetSilent(coat, 'system-bond-unstated', 'bondNeed') : { reasons: [] };
    }),
  );
}

function against(coat: Coat, { pullOff }: SurveyPlan): Found {
  const { bondNeed, bondLeast } = coat.product;
  if (!bondNeed) return { reasons: [] };
  const need = givenFact(coat.trace, 'bond-need', bondNeed, { where: coat.sheet });
  const names = { layer: coat.name };
  if (!pullOff) {
    const said = { code: 'system-bond-not-tested', figures: { need: need.id }, names };
    const changes = { code: 'system-bond-changes', figures: { need: need.id }, names };
    return {
      reasons: [{ ...said, verdict: 'not known', source: need.id }],
      missing: [{ path: 'survey.pullOffs', fact: said, changes, meanwhile: 'held' }],
    };
  }
  const reasons: Reason[] = [];
  const { mean, least, counted } = pullOff;
  const figures = { mean: mean.id, least: least.id, need: need.id };
  if (below(mean.value, need.value)) {
    const lift = { code: 'system-bond-lift', figures: { need: need.id }, names };
    reasons.push({ code: 'system-bond-mean-below', verdict: 'stop', figures, names, source: need.id, lift });
  }
  const floor = bondLeast ? givenFact(coat.trace, 'bond-least', bondLeast, { where: coat.sheet }) : undefined;
  if (floor && below(least.value, floor.value)) {
    const lift = { code: 'system-bond-lift', figures: { need: floor.id }, names };
    const against = { least: least.id, need: floor.id };
    reasons.push({
      code: 'system-bond-single-below',
      verdict: 'stop',
      figures: against,
      names,
      source: floor.id,
      lift,
    });
  } else if (!floor && below(least.value, need.value) && reasons.length === 0) {
    reasons.push({ code: 'system-bond-single-low', verdict: 'caution', figures, names, source: need.id });
  }
  if (counted.value < FEW) {
    reasons.push({ code: 'system-bond-few', verdict: 'caution', figures: { counted: counted.id }, names });
  }
  return { reasons };
}
