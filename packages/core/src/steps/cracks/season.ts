import type { Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Trace } from '../../kernel/trace.ts';
import { dryingShrinkageShare } from '../../science/movement/index.ts';
import { givenFact, givenField, type OptionContext } from '../context.ts';
import { USUAL_SLAB } from '../day/site-state.ts';
import { shrinkageLeft, slabCools } from '../formulas/cracks.ts';
import type { SitePlan, SurveyPlan } from '../results.ts';
import { hottestAhead, swingAhead } from './slab-ahead.ts';

/**
 * What a slab does between the day it is coated and the cold season, and from day to night. Where weather was given the
 * slab's own hours ahead say how warm it is when it is coated and how far it swings in a day; else the readings do.
 */
export interface Season {
  /** From the slab when it is coated (at its hottest of these days, or as read) to its coldest of the year. */
  readonly cools: Known<'K'>;
  /** Between the warmest and coldest slab within one day. */
  readonly day?: Known<'K'>;
  /** Coldest the slab gets, where somebody said. */
  readonly coldest?: Known<'°C'>;
  readonly restraint: Known<'1'>;
  readonly expansion: Known<'1/K'>;
  readonly shrinkage: Known<'1'>;
  readonly missing: readonly Missing[];
}

/** Cooling from the warm season to the cold one where nobody says, K, and the range it is believed in. */
const COOLS = 25;
const COOLS_BAND = [10, 40] as const;

export function seasonOf(ctx: OptionContext, surveyed: SurveyPlan, trace: Trace, site?: SitePlan): Season {
  const stated = ctx.job.place.season;
  const t = trace.within('season');
  const coldest = stated
    ? givenField(t, 'coldest', stated.coldest, 'reading', stated.source ? { where: stated.source } : {})
    : undefined;
  const slabs = surveyed.margins.map(({ slab }) => slab);
  const warmest = slabs.reduce<Known<'°C'> | undefined>((w, one) => (w && w.value >= one.value ? w : one), undefined);
  const from =
    (site && hottestAhead(site, t)) ??
    warmest ??
    (stated
      ? givenField(t, 'hottest', stated.hottest, 'reading', stated.source ? { where: stated.source } : {})
      : undefined);
  const missing: readonly Missing[] = stated
    ? []
    : [
        {
          path: 'place.season',
          fact: { code: 'cracks-season-not-known' },
          changes: { code: 'cracks-season-changes' },
          meanwhile: 'assumed',
        },
      ];
  const cools: Known<'K'> =
    coldest && from && from.value >= coldest.value
      ? t.figure('cools', slabCools, { from, to: coldest })
      : t.given('cools', {
          value: COOLS,
          unit: 'K',
          origin: 'assumed',
          source: 'season-range-assumption',
          says: 'cracks-season-assumed',
          shows: 'difference',
          band: COOLS_BAND,
        });
  const day = (site && swingAhead(site, ctx.job.place.zone, t)) ?? dayOf(surveyed, t);
  return { cools, ...(day ? { day } : {}), ...(coldest ? { coldest } : {}), ...slabOf(ctx, surveyed, t), missing };
}

/** The day whose slab was read coldest and warmest furthest apart. */
function dayOf(surveyed: SurveyPlan, t: Trace): Known<'K'> | undefined {
  const days = new Map<string, Known<'°C'>[]>();
  for (const { at, slab } of surveyed.margins) days.set(at.slice(0, 10), [...(days.get(at.slice(0, 10)) ?? []), slab]);
  let widest: { readonly from: Known<'°C'>; readonly to: Known<'°C'> } | undefined;
  for (const slabs of days.values()) {
    const sorted = [...slabs].sort((a, b) => a.value - b.value);
    const [to, from] = [sorted[0], sorted.at(-1)];
    if (!to || !from || from.value === to.value) continue;
    if (!widest || from.value - to.value > widest.from.value - widest.to.value) widest = { from, to };
  }
  return widest ? t.figure('day', slabCools, widest) : undefined;
}

/** The slab itself: held by a granular base (0.80), expansion of the middle of the aggregates. */
function slabOf(
  ctx: OptionContext,
  surveyed: SurveyPlan,
  t: Trace,
): Pick<Season, 'restraint' | 'expansion' | 'shrinkage'> {
  return {
    restraint: t.given('restraint', {
      value: 0.8,
      unit: '1',
      origin: 'assumed',
      source: 'fhwa-joint-seal-advisory',
      says: 'cracks-restraint-assumed',
    }),
    expansion: t.given('expansion', {
      value: 10e-6,
      unit: '1/K',
      origin: 'assumed',
      source: 'fhwa-hrt-12-030-table-47',
      says: 'cracks-expansion-assumed',
      shows: 'expansion',
      band: [8.75e-6, 12.42e-6],
    }),
    shrinkage: shrinkageOf(ctx, surveyed, t),
  };
}

/**
 * What a slab still shrinks as it dries: all that the published example takes where its age is unknown, else what the
 * law of drying leaves of it at that age. It dries to its top alone, from the day it was cast; the week of curing is
 * left out.
 */
function shrinkageOf({ job }: OptionContext, { slabAge }: SurveyPlan, t: Trace): Known<'1'> {
  const wholeShrinkage = t.given('whole-shrinkage', {
    value: 1e-4,
    unit: '1',
    origin: 'assumed',
    source: 'fhwa-joint-seal-advisory',
    says: slabAge ? 'cracks-shrinkage-whole' : 'cracks-shrinkage-undated',
  });
  if (!slabAge) return wholeShrinkage;
  const { thickness } = job.survey.slab ?? {};
  const volumeToSurface: Known<'m'> = thickness
    ? givenFact(t, 'thickness', thickness)
    : t.given('thickness', {
        value: USUAL_SLAB,
        unit: 'm',
        origin: 'assumed',
        says: 'day-slab-thickness-assumed',
        shows: 'small-length',
      });
  const shareDone = t.figure('shrinkage-done', dryingShrinkageShare, { dryingTime: slabAge, volumeToSurface });
  return t.figure('shrinkage', shrinkageLeft, { wholeShrinkage, shareDone });
}
