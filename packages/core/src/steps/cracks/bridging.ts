import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import type { CrackPlan } from '../results.ts';
import { above, below } from '../system/limits.ts';
import { BRIDGING_SOURCE, widthOfClass } from './classes.ts';
import type { Season } from './season.ts';

/** Crack that one coat of the system was shown to bridge, and how cold it was in that test. */
export interface Shown {
  readonly layer: string;
  readonly width: Known<'m'>;
  readonly at: Known<'°C'>;
}

/** What the sheets of the system show, the widest crack first. */
export function shownBy(ctx: OptionContext, trace: Trace): readonly Shown[] {
  return ctx.system.layers
    .flatMap((layer): readonly Shown[] => {
      const product = productOf(ctx, layer);
      const shown = product.crackBridging;
      if (!shown) return [];
      const t = trace.within('shown').within(layer.id);
      const where = sheetOf(product);
      const at = givenField(t, 'at', shown.at, 'data sheet', { where });
      if (shown.width) return [{ layer: layer.id, width: givenFact(t, 'width', shown.width, { where }), at }];
      if (!shown.class) return [];
      const { width: value, typed } = widthOfClass(shown.class);
      const width = t.given('width', {
        value,
        unit: 'm',
        origin: 'table',
        typed,
        source: BRIDGING_SOURCE,
        where: `EN 1062-7 ${shown.class}`,
        shows: 'small-length',
      });
      return [{ layer: layer.id, width, at }];
    })
    .sort((a, b) => b.width.value - a.width.value);
}

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
  const cold = wide.find(({ at }) => !above(at.value, coldest.value));
  return cold ? { answer: 'yes', ...cold } : { answer: 'no', ...first };
}

/** Elongation on a sheet without a bridged crack: it does not rank films over cracks. */
export const onlyElongation = (ctx: OptionContext): readonly string[] =>
  ctx.system.layers.flatMap((layer) => {
    const { crackBridging, properties = [], name } = productOf(ctx, layer);
    return !crackBridging && properties.some(({ what }) => /elongation/i.test(what)) ? [name] : [];
  });
