import type { Product } from '../../catalogue.ts';
import { BRIDGING_CLASSES, type BridgingClass } from '../../data/crack-bridging.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { type Claim, claimOf } from '../evidence/index.ts';
import type { CrackPlan } from '../results.ts';
import { above, below } from '../system/limits.ts';
import { BRIDGING_SOURCE, widthOfClass } from './classes.ts';
import type { Season } from './season.ts';

/** Crack that one coat of the system was shown to bridge, and how cold it was in that test, where the sheet says. */
export interface Shown {
  readonly layer: string;
  readonly width: Known<'m'>;
  readonly at?: Known<'°C'>;
}

/** Claims of a sheet about bridged cracks; the same that are compared like for like. */
export const bridgingClaims = (product: Product): readonly Claim[] =>
  (product.properties ?? []).flatMap((property, index) => {
    const claim = claimOf(product, property, index);
    return claim?.family.id === 'crack-bridging' ? [claim] : [];
  });

/** What the sheets of the system show, the widest crack first. */
export function shownBy(ctx: OptionContext, trace: Trace): readonly Shown[] {
  return ctx.system.layers
    .flatMap((layer): readonly Shown[] => {
      const product = productOf(ctx, layer);
      return bridgingClaims(product).flatMap((claim): readonly Shown[] => {
        const t = trace
          .within('shown')
          .within(layer.id)
          .within(`${claim.index + 1}`);
        const width = widthOf(claim, t);
        if (!width) return [];
        const { temperature } = claim.conditions;
        const at = temperature && givenField(t, 'at', temperature, 'data sheet', { where: sheetOf(product) });
        return [{ layer: layer.id, width, ...(at ? { at } : {}) }];
      });
    })
    .sort((a, b) => b.width.value - a.width.value);
}

/** The width of a class, or the least a sheet states; words show nothing. */
function widthOf({ value, property, sheet }: Claim, trace: Trace): Known<'m'> | undefined {
  if (value.kind === 'number') {
    if (value.unit !== 'm' || value.low === undefined) return undefined;
    const parts = {
      unit: 'm',
      origin: 'data sheet',
      typed: property.value,
      where: sheet,
      shows: 'small-length',
    } as const;
    return trace.given('width', { value: value.low, ...parts });
  }
  const name = value.kind === 'rank' ? value.of[value.rank] : undefined;
  if (!isClass(name)) return undefined;
  const { width, typed } = widthOfClass(name);
  return trace.given('width', {
    value: width,
    unit: 'm',
    origin: 'table',
    typed,
    source: BRIDGING_SOURCE,
    where: `EN 1062-7 ${name}`,
    shows: 'small-length',
  });
}

const isClass = (name: string | undefined): name is BridgingClass =>
  (BRIDGING_CLASSES as readonly (string | undefined)[]).includes(name);

/**
 * Whether a coat was shown to bear the opening, no warmer than the slab gets. A film stiffens in the cold, so a test
 * in a warm room says nothing about winter; and without a coldest temperature there is nothing to set it against.
 */
export function bridges(shown: readonly Shown[], toBear: Known<'m'> | undefined, season: Season): CrackPlan['bridges'] {
  const [widest] = shown;
  if (!widest || !toBear) return { answer: widest ? 'not known' : 'no' };
  const { coldest } = season;
  const wide = shown.filter(({ width }) => !below(width.value, toBear.value));
  const [first = widest] = wide;
  if (wide.length === 0) return { answer: 'no', ...first };
  if (!coldest) return { answer: 'not known', ...first };
  const cold = wide.find(({ at }) => at && !above(at.value, coldest.value));
  if (cold) return { answer: 'yes', ...cold };
  // A test whose temperature the sheet leaves out may have been cold enough.
  const untold = wide.find(({ at }) => !at);
  return untold ? { answer: 'not known', ...untold } : { answer: 'no', ...first };
}

/** Elongation on a sheet without a bridged crack: it does not rank films over cracks. */
export const onlyElongation = (ctx: OptionContext): readonly string[] =>
  ctx.system.layers.flatMap((layer) => {
    const product = productOf(ctx, layer);
    const stretches = (product.properties ?? []).some(({ what }) => /elongation/i.test(what));
    return stretches && bridgingClaims(product).length === 0 ? [product.name] : [];
  });
