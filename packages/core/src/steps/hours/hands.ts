import type { Reason } from '../../kernel/verdict.ts';
import type { OptionContext } from '../context.ts';

/** One mixes, one draws out and rolls, one throws: fewer hands do two of these in turn. */
const FOR_A_BROADCAST = 3;

/** While one person mixes the next batch, two cannot roll and broadcast as well. */
export function handsReasons(ctx: OptionContext): readonly Reason[] {
  const { people } = ctx.option;
  if (people >= FOR_A_BROADCAST) return [];
  return ctx.system.layers
    .filter(({ broadcast }) => broadcast !== undefined)
    .map((layer) => ({
      verdict: 'caution',
      code: people === 1 ? 'hours-one-pair-of-hands' : 'hours-two-people-broadcast',
      names: { layer: layer.name ?? layer.id },
      lift: { code: 'hours-hands-lift' },
    }));
}
