import counts from '../../data/test-counts.json' with { type: 'json' };
import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenCount, type OptionContext } from '../context.ts';
import type { PreparationPlan, SurveyPlan } from '../results.ts';
import { countNeeded } from '../survey/index.ts';
import { below } from '../system/limits.ts';
import { strengthNeeded } from './strength-needed.ts';

const DROPS = 'water-drop-trade-page';

/** Water drops over the whole floor find sealers, curing compounds and oil that no eye sees. */
function waterDrops(ctx: OptionContext, trace: Trace, floor: Known<'m²'>): readonly Reason[] {
  const drops = ctx.job.survey.afterPreparation?.waterDrops ?? [];
  const stays = drops.filter(({ result }) => result === 'stays');
  const reasons: Reason[] = stays.map(({ where }) => ({
    verdict: 'stop',
    code: 'preparation-drop-stays',
    names: { where },
    source: DROPS,
    lift: { code: 'preparation-drop-stays-lift', names: { where } },
  }));
  const needed = countNeeded(trace.within('water-drops'), 'water drop', floor);
  const lift = { code: 'preparation-drops-lift', figures: { needed: needed.id } };
  if (drops.length === 0) {
    reasons.push({ verdict: 'not known', code: 'preparation-drops-not-tried', source: DROPS, lift });
  } else if (drops.length < needed.value) {
    const tried = givenCount(trace, 'water-drops.tried', drops.length, 'reading');
    const figures = { tried: tried.id, needed: needed.id };
    reasons.push({
      verdict: 'not known',
      code: 'preparation-drops-too-few',
      figures,
      source: DROPS,
      lift,
    });
  }
  return reasons;
}

/** Places drawn as oil: each must let a drop in before a coat goes over it. */
function oilSpots(ctx: OptionContext): readonly Reason[] {
  return ctx.job.areas
    .filter(({ id }) => ctx.option.areas.includes(id))
    .flatMap((area) => (area.spots ?? []).filter(({ kind }) => kind === 'oil').map((spot) => ({ area, spot })))
    .flatMap(({ area, spot }): readonly Reason[] => {
      const names = { area: area.name, spot: spot.id };
      const lift = { code: 'preparation-oil-lift', names };
      if (spot.waterDrop === 'soaks in') return [];
      if (spot.waterDrop === 'stays')
        return [{ verdict: 'stop', code: 'preparation-oil-drop-stays', names, source: DROPS, lift }];
      return [{ verdict: 'not known', code: 'preparation-oil-not-tested', names, lift }];
    });
}

/** Oil that was treated and lets a drop in is past the gate, but stays worth a look on the day. */
export function oilCleared(ctx: OptionContext): readonly Said[] {
  return ctx.job.areas
    .filter(({ id }) => ctx.option.areas.includes(id))
    .flatMap((area) => (area.spots ?? []).map((spot) => ({ area, spot })))
    .filter(({ spot }) => spot.kind === 'oil' && spot.waterDrop === 'soaks in')
    .map(({ area, spot }) => ({ code: 'preparation-oil-cleared', names: { area: area.name, spot: spot.id } }));
}

function dustTape(ctx: OptionContext): readonly Reason[] {
  const tape = ctx.job.survey.afterPreparation?.dustTape;
  if (tape === 'clean') return [];
  const lift = { code: 'preparation-tape-lift' };
  if (tape === 'dusty') {
    return [{ verdict: 'stop', code: 'preparation-tape-dusty', source: 'sp13-acceptance-2018', lift }];
  }
  return [{ verdict: 'not known', code: 'preparation-tape-not-tried', lift }];
}

function profiles(ctx: OptionContext, trace: Trace, target: PreparationPlan['target']): readonly Reason[] {
  const read = ctx.job.survey.afterPreparation?.profiles ?? [];
  const figures = { least: target.least.id, most: target.most.id };
  if (read.length === 0) {
    const lift = { code: 'preparation-profile-lift', figures };
    return [{ verdict: 'not known', code: 'preparation-profile-not-read', figures, lift }];
  }
  return read.flatMap(({ where, profile }, i): readonly Reason[] => {
    if (profile >= target.least.value && profile <= target.most.value) return [];
    const found = trace.given(`read-profile.${i}`, {
      value: profile,
      unit: '1',
      origin: 'reading',
      where,
      shows: 'count',
    });
    const said = { figures: { ...figures, profile: found.id }, names: { where } };
    if (profile < target.least.value) {
      return [
        {
          verdict: 'stop',
          code: 'preparation-profile-too-smooth',
          ...said,
          source: target.least.kind === 'given' && target.least.source ? target.least.source : target.least.id,
          lift: { code: 'preparation-profile-lift', figures },
        },
      ];
    }
    return [{ verdict: 'caution', code: 'preparation-profile-too-rough', ...said }];
  });
}

function strength(ctx: OptionContext, trace: Trace, surveyed: SurveyPlan): readonly Reason[] {
  const { mean, single, bothStated } = strengthNeeded(ctx, trace);
  const found = surveyed.pullOff;
  const lift = { code: 'preparation-pull-off-lift', figures: { needed: mean.id } };
  if (!found) return [{ verdict: 'not known', code: 'preparation-pull-off-none', figures: { needed: mean.id }, lift }];
  const reasons: Reason[] = [];
  const figures = { mean: found.mean.id, least: found.least.id, needed: mean.id, single: single.id };
  const source = mean.source ?? mean.id;
  if (found.counted.value < counts.pullOffsPerArea.least) {
    const counted = { ...figures, counted: found.counted.id };
    const names = { least: `${counts.pullOffsPerArea.least}` };
    reasons.push({ verdict: 'not known', code: 'preparation-pull-off-too-few', figures: counted, names, lift });
  }
  if (below(found.mean.value, mean.value))
    reasons.push({ verdict: 'stop', code: 'preparation-pull-off-mean-low', figures, source, lift });
  else if (below(found.least.value, single.value)) {
    reasons.push({ verdict: 'stop', code: 'preparation-pull-off-single-low', figures, source, lift });
  } else if (!bothStated && below(found.least.value, mean.value)) {
    reasons.push({ verdict: 'caution', code: 'preparation-pull-off-single-below-mean', figures, source });
  }
  return reasons;
}

/**
 * The gate after preparation: nothing is coated until drops soak in, the tape is clean, the profile is read and the
 * concrete has been pulled. None of it may be assumed.
 */
export const gateReasons = (
  ctx: OptionContext,
  trace: Trace,
  surveyed: SurveyPlan,
  target: PreparationPlan['target'],
  floor: Known<'m²'>,
): readonly Reason[] => [
  ...waterDrops(ctx, trace, floor),
  ...oilSpots(ctx),
  ...dustTape(ctx),
  ...profiles(ctx, trace, target),
  ...strength(ctx, trace, surveyed),
];
