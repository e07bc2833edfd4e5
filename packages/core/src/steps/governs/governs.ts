import table from '../../data/ordinary-slab.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Figure, Given, Known } from '../../kernel/entry.ts';
import type { Missing } from '../../kernel/missing.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { type Reason, verdictOf } from '../../kernel/verdict.ts';
import { chanceConcreteFirst, weakestLink, weakestLinkIndex } from '../../science/bond/index.ts';
import type { OptionContext } from '../context.ts';
import { worthOfMoreAdhesion } from '../formulas/evidence.ts';
import type { BondLink, GovernsPlan } from '../results.ts';
import { placesOf } from './chain.ts';
import { concreteStrength, linkStrength, pullsOf } from './strengths.ts';

type Measured = BondLink & { readonly strength: Known<'Pa'>; readonly deviation: Known<'Pa'> };

/** Its own strength is known, not only that it held so far. */
const isMeasured = (link: BondLink): link is Measured =>
  link.from !== 'lower bound' && link.strength !== undefined && link.deviation !== undefined;

/**
 * What the floor would fail at when it is pulled: the weakest link of concrete, coats and the planes between them. A
 * strength is known only where something failed; past the concrete's own strength more adhesion buys nothing.
 */
export function governs(ctx: OptionContext, trace: Trace): GovernsPlan {
  const pulls = pullsOf(ctx, trace);
  const links = placesOf(ctx.system).map((place): BondLink => {
    const { layer: _, ...shown } = place;
    const at = trace.within(`link.${place.id}`);
    const found = place.kind === 'concrete' ? concreteStrength(ctx, pulls, at) : linkStrength(ctx, place, pulls, at);
    return { ...shown, ...found };
  });
  const known = links.filter(isMeasured);
  const concrete = known.find(({ kind }) => kind === 'concrete');
  const others = known.filter(({ kind }) => kind !== 'concrete');
  const ordinary = ordinarySlab(trace);
  const weakest = weakestOf(concrete ? [concrete, ...others] : [], trace);
  const pulled = concrete?.from === 'failed here';
  const chance = concrete && pulled && others.length > 0 ? chanceOf([concrete, ...others], trace) : undefined;
  const worth =
    concrete && others.length > 0
      ? trace.figure('worth', worthOfMoreAdhesion, {
          concreteStrength: concrete.strength,
          linkStrengths: others.map(({ strength }) => strength),
        })
      : undefined;
  const governing = weakest?.link;
  const reasons = [...concreteReasons(concrete), ...coatingReasons(governing, concrete)];
  return {
    links,
    ...(governing ? { governing: governing.id, strength: weakest.strength } : {}),
    ...(chance ? { chance } : {}),
    ...(worth ? { worth } : {}),
    ordinary,
    verdict: verdictOf(reasons, ctx.job.overrides),
    missing: pulled ? [] : [missingPull(links)],
    notes: notesOf({ links, governing, strength: weakest?.strength, concrete, chance, worth, ordinary }),
  };
}

function weakestOf(
  chain: readonly Measured[],
  trace: Trace,
): { readonly link: Measured; readonly strength: Known<'Pa'> } | undefined {
  if (chain.length === 0) return undefined;
  const strengths = chain.map(({ strength }) => strength);
  const deviations = chain.map(({ deviation }) => deviation);
  const strength = trace.figure('weakest', weakestLink, { strengths, deviations });
  const index = trace.figure('weakest-index', weakestLinkIndex, { strengths, deviations });
  const link = chain[index.value];
  if (!link) throw new Error('the weakest link is none of the links');
  return { link, strength };
}

/** No chance where two links are equal and neither scatters: neither is first. */
function chanceOf(chain: readonly Measured[], trace: Trace): Figure<'1'> | undefined {
  try {
    return trace.figure('chance', chanceConcreteFirst, {
      strengths: chain.map(({ strength }) => strength),
      deviations: chain.map(({ deviation }) => deviation),
    });
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return undefined;
  }
}

function ordinarySlab(trace: Trace): GovernsPlan['ordinary'] {
  const { least, most, source } = table.surface;
  const end = (name: string, typed: string): Given<'Pa'> =>
    trace.given(name, {
      value: tabled(typed, 'Pa'),
      unit: 'Pa',
      origin: 'table',
      typed,
      source,
      says: 'governs-ordinary-common-practice',
      shows: 'stress',
    });
  return { least: end('ordinary-least', least), most: end('ordinary-most', most) };
}

function concreteReasons(concrete: Measured | undefined): readonly Reason[] {
  if (concrete?.from === 'failed here') return [];
  const lift: Said = { code: 'governs-pull-lift' };
  if (!concrete) return [{ code: 'governs-no-pull-off', verdict: 'not known', lift }];
  const figures = { strength: concrete.strength.id };
  return [{ code: 'governs-only-estimate', verdict: 'not known', figures, source: 'tensile-four-estimates', lift }];
}

/** A floor that parts in or under a coat before the concrete breaks was prepared or chosen too weak. */
function coatingReasons(governing: Measured | undefined, concrete: Measured | undefined): readonly Reason[] {
  if (!governing || !concrete || governing.kind === 'concrete' || concrete.from !== 'failed here') return [];
  return [
    {
      code: `governs-weakest-${governing.kind}`,
      verdict: 'caution',
      figures: { strength: governing.strength.id, concrete: concrete.strength.id },
      names: { ...governing.says.names },
    },
  ];
}

const missingPull = (links: readonly BondLink[]): Missing => {
  const names = { coat: links.find(({ kind }) => kind === 'coat')?.says.names?.coat ?? '' };
  return {
    path: 'survey.pullOffs',
    fact: { code: 'governs-no-pull-off' },
    changes: { code: 'governs-pull-changes', names },
    meanwhile: 'held',
  };
};

/** A chance is said in words; its number stands in the working. */
function chanceWord(chance: number): string {
  if (chance > 0.99) return 'nearly-certain';
  if (chance > 0.6) return 'likely';
  return chance >= 0.4 ? 'even' : 'unlikely';
}

interface Facts {
  readonly links: readonly BondLink[];
  readonly governing: Measured | undefined;
  readonly strength: Known<'Pa'> | undefined;
  readonly concrete: Measured | undefined;
  readonly chance: Figure<'1'> | undefined;
  readonly worth: Figure<'Pa'> | undefined;
  readonly ordinary: GovernsPlan['ordinary'];
}

function notesOf({ links, governing, strength, concrete, chance, worth, ordinary }: Facts): readonly Said[] {
  const said: Said[] = [];
  if (governing && strength) {
    const names = { ...governing.says.names };
    const code = governing.from === 'estimate' ? 'governs-headline-estimate' : `governs-headline-${governing.kind}`;
    said.push({ code, figures: { strength: strength.id }, names });
  }
  if (chance) said.push({ code: `governs-chance-${chanceWord(chance.value)}`, figures: { chance: chance.id } });
  if (worth && concrete) {
    const figures = { worth: worth.id, concrete: concrete.strength.id };
    said.push({ code: worth.value > 0 ? 'governs-worth' : 'governs-worth-nothing', figures });
  }
  said.push({ code: 'governs-ordinary', figures: { least: ordinary.least.id, most: ordinary.most.id } });
  for (const link of links) {
    if (link.from !== 'lower bound' || !link.strength) continue;
    const bySheet = link.strength.kind === 'given' && link.strength.origin === 'data sheet';
    const code = bySheet ? 'governs-bound-sheet' : `governs-bound-${link.kind}`;
    said.push({ code, figures: { strength: link.strength.id }, names: { ...link.says.names } });
  }
  for (const kind of ['interface', 'coat'] as const) {
    const silent = links.filter((link) => link.from === 'not known' && link.kind === kind);
    const coats = silent.map(({ says }) => says.names?.over ?? says.names?.coat ?? '').join(', ');
    if (silent.length > 0) said.push({ code: `governs-unknown-${kind}`, names: { coats } });
  }
  return said;
}
