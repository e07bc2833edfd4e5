import type { OptionContext } from '../context.ts';
import { type Coat, type Found, NOTHING } from './coat.ts';

/** Whether a top coat that yellows lies in the sun. Seen patches decide before the word of the customer. */
export function lightFit(ctx: OptionContext, coats: readonly Coat[]): Found {
  const top = coats[coats.length - 1];
  if (!top || top.product.light === 'stable') return NOTHING;
  const wanted = new Set(ctx.option.areas);
  const patches = ctx.job.areas.some((area) => wanted.has(area.id) && (area.sun ?? []).length > 0);
  const sun = patches ? 'yes' : (ctx.job.use?.sun ?? 'not known');
  if (sun === 'no') return NOTHING;
  const names = { layer: top.name, product: top.product.name };
  const caution = (code: string): Found => ({ reasons: [{ code, verdict: 'caution', names }] });
  if (top.product.light === 'yellows')
    return caution(sun === 'yes' ? 'system-light-yellows' : 'system-light-sun-unknown');
  return sun === 'yes' ? caution('system-light-unstated') : NOTHING;
}
