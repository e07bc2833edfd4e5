import table from '../../data/ordinary-slab.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { tensileFromCompressive } from '../../science/bond/index.ts';
import { deviationOfValues, meanOfValues } from '../../science/statistics/index.ts';
import { givenCount, givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { claimOf } from '../evidence/index.ts';
import { assumedScatter } from '../formulas/evidence.ts';
import type { BondLink } from '../results.ts';
import { failedInGlue, stressOf } from '../survey/pull-offs.ts';
import type { Place } from './chain.ts';

/** Fewest readings whose own scatter is believed: common practice, no source. */
const ENOUGH = 3;

export interface Pull {
  readonly after: 'preparation' | 'coating';
  readonly mode: string;
  readonly glue: boolean;
  readonly stress: Known<'Pa'>;
}

/** Pulls that say something of this option's floor: all on prepared concrete, those on coats only where it was laid. */
export function pullsOf(ctx: OptionContext, trace: Trace): readonly Pull[] {
  const laid = ctx.option.accepted === true || ctx.job.options.length === 1;
  return (ctx.job.survey.pullOffs ?? []).flatMap((pull): readonly Pull[] => {
    const { after, mode } = pull;
    if (after === 'as found' || (after === 'coating' && !laid)) return [];
    const stress = stressOf(trace.within(`pull-off.${pull.id}`), pull);
    return stress ? [{ after, mode, glue: failedInGlue(pull), stress }] : [];
  });
}

type Found = Pick<BondLink, 'from' | 'strength' | 'deviation' | 'counted'>;
const NOT_KNOWN: Found = { from: 'not known' };

function scatter(trace: Trace, mean: Known<'Pa'>, which: 'scatter' | 'estimateScatter'): Known<'Pa'> {
  const { share, source } = table[which];
  const scatterShare = trace.given('scatter-share', {
    value: tabled(share, '1'),
    unit: '1',
    origin: 'assumed',
    typed: share,
    source,
    says: 'governs-scatter-assumed',
    shows: 'share',
  });
  return trace.figure('deviation', assumedScatter, { mean, scatterShare });
}

/** Mean and scatter of pulls that failed in one plane; never averaged with another. */
function fromPulls(trace: Trace, pulls: readonly Pull[]): Found {
  const values = pulls.map(({ stress }) => stress);
  const mean = trace.figure('mean', meanOfValues, { values });
  const strength: Known<'Pa'> = { ...mean, unit: 'Pa' };
  const deviation: Known<'Pa'> =
    values.length < ENOUGH
      ? scatter(trace, strength, 'scatter')
      : { ...trace.figure('deviation', deviationOfValues, { values }), unit: 'Pa' };
  return { from: 'failed here', strength, deviation, counted: givenCount(trace, 'counted', values.length, 'reading') };
}

/** The concrete by its own pulls, else as an estimate from its compressive strength. */
export function concreteStrength(ctx: OptionContext, pulls: readonly Pull[], trace: Trace): Found {
  const broke = pulls.filter(({ mode, glue }) => mode === 'A' && !glue);
  const prepared = broke.filter(({ after }) => after === 'preparation');
  const counted = prepared.length > 0 ? prepared : broke;
  if (counted.length > 0) return fromPulls(trace, counted);
  const stated = ctx.job.survey.slab?.compressiveStrength;
  if (!stated) return NOT_KNOWN;
  const compressiveStrength = givenFact(trace, 'compressive-strength', stated, { where: 'survey.slab' });
  const strength = trace.figure('estimate', tensileFromCompressive, { compressiveStrength });
  return { from: 'estimate', strength, deviation: scatter(trace, strength, 'estimateScatter') };
}

/** A coat or a plane between coats: by pulls that failed there, else by its sheet, else by what it survived. */
export function linkStrength(ctx: OptionContext, place: Place, pulls: readonly Pull[], trace: Trace): Found {
  const on = pulls.filter(({ after }) => after === 'coating');
  const here = on.filter(({ mode, glue }) => mode === place.letter && !glue);
  if (here.length > 0) return fromPulls(trace, here);
  const survived = on.filter(({ mode, glue }) => mode !== place.letter || glue);
  const most = survived.reduce<Known<'Pa'> | undefined>(
    (best, { stress }) => (best && best.value >= stress.value ? best : stress),
    undefined,
  );
  const sheet = sheetStrength(ctx, place, trace);
  const sheetHolds = sheet.from === 'data sheet' && (!most || (sheet.strength?.value ?? 0) >= most.value);
  if (sheetHolds) return sheet;
  const bounds = [most, sheet.from === 'lower bound' ? sheet.strength : undefined].filter((one) => one !== undefined);
  const strength = bounds.sort((a, b) => b.value - a.value)[0];
  return strength ? { from: 'lower bound', strength } : NOT_KNOWN;
}

/**
 * What the sheet says of a coat in tension, or of its hold on concrete. An adhesion whose failure lay elsewhere is a
 * lower bound, one without a failure mode says nothing.
 */
function sheetStrength(ctx: OptionContext, { kind, layer, id }: Place, trace: Trace): Found {
  if (!layer) return NOT_KNOWN;
  const onConcrete = id.startsWith('concrete/');
  if (kind === 'interface' && !onConcrete) return NOT_KNOWN;
  const product = productOf(ctx, layer);
  const wanted = kind === 'coat' ? 'tensile-strength' : 'adhesion';
  for (const [index, property] of (product.properties ?? []).entries()) {
    const claim = claimOf(product, property, index);
    if (claim?.family.id !== wanted || claim.value.kind !== 'number') continue;
    const at = claim.value.low;
    if (at === undefined || claim.value.unit !== 'Pa') continue;
    if (wanted === 'adhesion' && (claim.method?.metal || !claim.method?.mode || !property.failureMode)) continue;
    const strength = trace.given('sheet', {
      value: at,
      unit: 'Pa',
      origin: 'data sheet',
      where: sheetOf(product),
      typed: property.value,
      shows: 'stress',
    });
    if (wanted === 'adhesion' && property.failureMode !== 'A/B') return { from: 'lower bound', strength };
    return { from: 'data sheet', strength, deviation: scatter(trace, strength, 'scatter') };
  }
  return NOT_KNOWN;
}
