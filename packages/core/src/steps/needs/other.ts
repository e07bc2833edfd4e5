import { epochOf, instantIn } from '../../kernel/instant.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, sheetOf } from '../context.ts';
import { claimOf, FAMILIES } from '../evidence/index.ts';
import { plain } from '../evidence/methods.ts';
import type { Need } from '../results.ts';
import { productsOn } from './rows.ts';

/** Words with which a sheet says that a reagent does nothing. */
const UNHARMED = new Set(['nochange', 'noeffect', 'unaffected']);

/** One must-have a chemical: the top coat's sheet must name it, with the rest of its conditions. */
export function chemicalNeeds(ctx: OptionContext): readonly Need[] {
  const methods = FAMILIES.find(({ id }) => id === 'chemical-resistance')?.methods ?? [];
  return (ctx.job.use?.chemicals ?? []).map((chemical, i): Need => {
    const judged = productsOn(ctx, 'top').map((product): { readonly met: Need['met']; readonly said: Said } => {
      const names = { product: product.name, chemical };
      const claims = (product.properties ?? []).flatMap((property, index) => {
        const claim = claimOf(product, property, index);
        const named = claim?.family.id === 'chemical-resistance' && claim.conditions.reagent;
        return claim && named && plain(named) === plain(chemical) ? [claim] : [];
      });
      const [claim] = claims;
      if (!claim) return { met: 'not known', said: { code: 'needs-chemical-silent', names } };
      const said = { names: { ...names, value: claim.property.value } };
      const gaps = !claim.method || claim.method.must.some((key) => claim.conditions[key] === undefined);
      if (gaps) return { met: 'not known', said: { code: 'needs-chemical-gaps', ...said } };
      return UNHARMED.has(plain(claim.property.value))
        ? { met: 'met', said: { code: 'needs-chemical-met', ...said } }
        : { met: 'not known', said: { code: 'needs-chemical-says', ...said } };
    });
    return {
      id: `chemical-${i + 1}`,
      what: 'chemical-resistance',
      from: 'use',
      why: { code: 'needs-why-chemical', names: { chemical } },
      tests: methods.map(({ id }) => ({
        method: id,
        conditions: [{ code: 'needs-condition', names: { condition: '@evidence-condition-reagent', value: chemical } }],
      })),
      met: judged.every(({ met }) => met === 'met') ? 'met' : 'not known',
      judged: judged.map(({ said }) => said),
    };
  });
}

/** Sun by area: patches drawn in the survey, else what the customer says of the whole floor. */
export function lightNeeds(ctx: OptionContext): readonly Need[] {
  const wanted = new Set(ctx.option.areas);
  const lit = ctx.job.areas.filter((area) => wanted.has(area.id) && (area.sun ?? []).length > 0);
  if (lit.length === 0 && ctx.job.use?.sun !== 'yes') return [];
  const why: Said =
    lit.length > 0
      ? { code: 'needs-why-sun-areas', names: { areas: lit.map(({ name }) => name).join(', ') } }
      : { code: 'needs-why-sun' };
  const [top] = productsOn(ctx, 'top');
  const names = { product: top?.name ?? '' };
  const light = top?.light ?? 'not known';
  const answers = {
    stable: { met: 'met', code: 'needs-light-stable' },
    yellows: { met: 'not met', code: 'needs-light-yellows' },
    'not known': { met: 'not known', code: 'needs-light-unstated' },
  } as const;
  const { met, code } = answers[light];
  return [{ id: 'light', what: 'light', from: 'use', why, tests: [], met, judged: [{ code, names }] }];
}

/** A date as it stands, a moment by the clock of the site. */
const onSite = (by: string, zone: string): string =>
  by.length === 10 ? by : instantIn(epochOf(by), zone).slice(0, 16).replace('T', ' ');

/** Dates, smell, the rule of the place on VOC, budget: asked here, judged where their numbers are. */
export function otherNeeds(ctx: OptionContext, trace: Trace): readonly Need[] {
  const { use = {}, budget } = ctx.job;
  const elsewhere = (what: string, why: Said, judged: string): Need => ({
    id: what,
    what,
    from: 'use',
    why,
    tests: [],
    met: 'elsewhere',
    judged: [{ code: judged }],
  });
  const dates = (['foot', 'vehicle'] as const).flatMap((what) => {
    const by = what === 'foot' ? use.footBy : use.vehicleBy;
    const why: Said = {
      code: `needs-why-${what}-by`,
      names: { by: by === undefined ? '' : onSite(by, ctx.job.place.zone) },
    };
    return by === undefined ? [] : [elsewhere(what, why, 'needs-judged-by-hours')];
  });
  const money =
    budget === undefined
      ? []
      : [
          elsewhere(
            'budget',
            { code: 'needs-why-budget', names: { amount: budget.amount, currency: budget.currency } },
            'needs-judged-by-price',
          ),
        ];
  return [
    ...dates,
    ...(use.smellMatters === 'yes' ? [smellNeed(ctx, trace.within('smell'))] : []),
    ...vocNeeds(ctx, elsewhere),
    ...money,
  ];
}

/** No test measures a smell. What evaporates is the best there is on a sheet, and nobody sets a limit for it here. */
function smellNeed(ctx: OptionContext, trace: Trace): Need {
  const judged = productsOn(ctx, 'all').map((product): Said => {
    const names = { product: product.name };
    if (!product.voc) return { code: 'needs-smell-unstated', names };
    const voc = givenFact(trace, `${product.id}.voc`, product.voc, { where: sheetOf(product) });
    return voc.value === 0
      ? { code: 'needs-smell-none', names }
      : { code: 'needs-smell-some', figures: { voc: voc.id }, names };
  });
  const met = judged.every(({ code }) => code === 'needs-smell-none') ? 'met' : 'not known';
  return { id: 'smell', what: 'smell', from: 'use', why: { code: 'needs-why-smell' }, tests: [], met, judged };
}

/** The limit of a place is law: it is the firm's to enter, with its document, and is never filled in from memory. */
function vocNeeds(
  { job: { place } }: OptionContext,
  elsewhere: (what: string, why: Said, judged: string) => Need,
): readonly Need[] {
  const entered = (place.vocLimits ?? []).length > 0;
  if (!entered && place.jurisdiction === undefined) return [];
  const names = { place: place.jurisdiction ?? '@needs-this-place' };
  const why: Said = { code: 'needs-why-voc', names };
  if (entered) return [{ ...elsewhere('voc', why, 'needs-judged-by-thinner'), id: 'voc-rule' }];
  const judged = [{ code: 'needs-voc-not-entered', names }];
  return [{ id: 'voc-rule', what: 'voc', from: 'use', why, tests: [], met: 'not known', judged }];
}
