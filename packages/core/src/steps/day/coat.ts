import type { Layer, Product } from '../../catalogue.ts';
import type { Figure } from '../../kernel/entry.ts';
import { instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { verdictOf } from '../../kernel/verdict.ts';
import {
  type Candidate,
  type Conditions,
  nearestUsable,
  risingWayOut,
  type WindowReason,
} from '../../science/windows/index.ts';
import { type OptionContext, sheetOf } from '../context.ts';
import { leastOf } from '../formulas/day.ts';
import type { CoatDay, CoatStart, SitePlan, StartStretch } from '../results.ts';
import { burnerReasons } from './burner.ts';
import { type MaterialRead, materialAt, materialReasons } from './material.ts';
import { milestonesOfCoat } from './milestones.ts';
import type { Placed, Wanted } from './place.ts';
import { potsOf } from './pots.ts';
import { Bounds, reasonOf } from './reasons.ts';
import { extremesBetween, momentOfLeast } from './series-values.ts';

/** Best starts told, at least an hour apart. */
const BEST = 5;
const APART = 3_600_000;

export interface CoatFacts {
  readonly layer: Layer;
  readonly product: Product;
  readonly wanted: Wanted;
  readonly placed: Placed;
  readonly laying: Figure<'s'>;
  readonly batches: number;
  /** Readings of the resin in its pail. */
  readonly material: readonly MaterialRead[];
}

interface Run {
  readonly first: Candidate;
  last: Candidate;
  /** The start that is told of: closest to opening, or the worst of those with care. */
  closest: Candidate;
}

/** Neighbouring starts of one answer: the same word for the same reason. */
function runsOf(starts: readonly Candidate[]): readonly Run[] {
  const runs: Run[] = [];
  for (const each of starts) {
    const open = runs.at(-1);
    if (open && open.last.word === each.word && open.last.limiting?.code === each.limiting?.code) {
      open.last = each;
      const [here, told] = [each.limiting?.lift.by ?? 0, open.closest.limiting?.lift.by ?? 0];
      // Of starts that are shut the one nearest to opening is told, of those with care the worst.
      if (each.word === 'caution' ? here > told : here < told) open.closest = each;
    } else runs.push({ first: each, last: each, closest: each });
  }
  return runs;
}

/** How far ahead a better start is looked for, ms. */
const LATER = 8 * 3_600_000;

/** A rising slab has several ways out; the cheapest that these hours offer is told. */
function lifted(reason: WindowReason, placed: Placed, candidate: Candidate, outdoors: boolean): WindowReason {
  if (reason.code !== 'window-rising' && reason.code !== 'window-rising-little') return reason;
  const falling = placed.found.starts.find(
    ({ start, word }) => word === 'go' && start > candidate.start && start - candidate.start <= LATER,
  );
  if (falling) return { ...reason, lift: { code: 'lift-start-later', by: (falling.start - candidate.start) / 1000 } };
  if (reason.code === 'window-rising-little') return { ...reason, lift: { code: 'lift-shade', by: reason.value } };
  const way = risingWayOut(placed.found, candidate.start, outdoors);
  return { ...reason, lift: { code: way.code, by: way.code === 'lift-start-later' ? way.by : reason.lift.by } };
}

/** Windows, start, pot lives and stages of one coat. */
export function coatDay(
  ctx: OptionContext,
  conditions: Conditions,
  facts: CoatFacts,
  site: SitePlan,
  outdoors: boolean,
  root: Trace,
): CoatDay {
  const { layer, product, wanted, placed, laying } = facts;
  const { zone } = ctx.job.place;
  const trace = root.within(layer.id);
  const name = layer.name ?? product.name;
  const bounds = new Bounds(product, trace.within('bound'));
  const at = (epoch: number): string => instantIn(epoch, zone);
  const leastMargin = (t: Trace, value: number): Figure<'K'> =>
    t.taken('margin', leastOf, { value, unit: 'K', shows: 'difference', inputs: { values: site.margin.id } });

  const starts = runsOf(placed.found.starts).map(({ first, last, closest }, i): StartStretch => {
    const { limiting } = closest;
    const t = trace.within('stretch').within(`${i}`);
    const reason = limiting && reasonOf(lifted(limiting, placed, closest, outdoors), site, bounds, t, {});
    return {
      from: at(first.start),
      until: at(last.start),
      word: first.word,
      ...(reason ? { limiting: reason } : {}),
    };
  });
  const apart: Candidate[] = [];
  for (const each of placed.found.ranked) {
    if (apart.length >= BEST) break;
    if (apart.every((one) => Math.abs(one.start - each.start) >= APART)) apart.push(each);
  }
  const best = apart.map((each, i) => ({
    at: at(each.start),
    word: each.word,
    margin: leastMargin(trace.within('best').within(`${i}`), each.margin),
  }));
  const { candidate } = placed;
  const milestones = candidate
    ? milestonesOfCoat(conditions, wanted.cure, candidate, site, product, zone, trace.within('stage'))
    : [];
  return {
    layer: layer.id,
    product: product.id,
    name,
    laying,
    starts,
    best,
    ...(candidate ? { start: startOf(candidate) } : {}),
    pots: candidate
      ? potsOf(conditions, wanted.cure, candidate, facts, site, zone, sheetOf(product), trace.within('pot'))
      : [],
    milestones,
  };

  function startOf(chosen: Candidate): CoatStart {
    const t = trace.within('start');
    const all = chosen.limiting ? [chosen.limiting, ...chosen.others] : [];
    const reasons = [
      ...all.map((one, i) =>
        reasonOf(lifted(one, placed, chosen, outdoors), site, bounds, t.within(`${i}`), { layer: name }, 'day-'),
      ),
      ...materialReasons(product, materialAt(facts.material, chosen.start), t, { layer: name }),
      ...burnerReasons(ctx.job, product, milestones, name).reasons,
    ];
    const until = Math.min(chosen.sensitiveUntil, conditions.from + (conditions.count - 1) * 300_000);
    const known = chosen.start >= conditions.from && until > chosen.start;
    const nearest = chosen.word === 'stop' ? nearestUsable(placed.found, chosen.start) : undefined;
    return {
      at: at(chosen.start),
      by: placed.by,
      verdict: verdictOf(reasons, ctx.job.overrides),
      laid: at(chosen.laid),
      sensitiveUntil: at(chosen.sensitiveUntil),
      ...(known
        ? {
            margin: leastMargin(t, extremesBetween(conditions, conditions.margin, chosen.start, until).least),
            marginAt: at(momentOfLeast(conditions, conditions.margin, chosen.start, until)),
          }
        : {}),
      ...(nearest === undefined ? {} : { nearest: at(nearest) }),
    };
  }
}
