import type { Said } from '../../kernel/said.ts';
import { known, once, openStops, type PaperContext, paper, reasonsOf, said, technical } from '../context.ts';
import type { Block, Issued } from '../paper.ts';
import { coatPage } from './coat-page.ts';
import { preparationPage } from './preparation-page.ts';
import { orderPage } from './tasks.ts';

/** Facts without which nothing says go: a sheet on the wall would be read as a go. */
function heldBack(ctx: PaperContext): readonly Said[] {
  return technical(ctx).flatMap(({ missing }) =>
    missing.filter(({ meanwhile }) => meanwhile === 'held').map(({ fact }) => fact),
  );
}

/**
 * The sheets: the work in order and, on its back, the preparation; then one for each coat, whose front hangs on the wall
 * and whose back is read in the hand. It is not issued while the floor stands at stop or
 * not known, because a sheet that hangs there is worked by.
 */
export function crewSheet(ctx: PaperContext): Issued {
  const stops = openStops(ctx);
  const unknown = reasonsOf(technical(ctx), 'not known');
  const held = heldBack(ctx);
  const coats = known(ctx.option.coats)?.coats ?? [];
  const unsure = ctx.option.conditional || ctx.option.verdict === 'not known' || unknown.length + held.length > 0;
  if (stops.length > 0 || unsure || coats.length === 0) {
    const first = stops.length > 0 ? 'crew-not-issued-stop' : 'crew-not-issued-not-known';
    return { ok: false, kind: 'crew-sheet', why: once([said(first), ...stops, ...unknown, ...held]) };
  }
  const pages = coats.length + 1;
  const blocks: readonly Block[] = [
    { kind: 'page-break', hand: true },
    ...orderPage(ctx, known(ctx.option.hours)?.tasks ?? [], pages),
    { kind: 'page-break', hand: true },
    ...preparationPage(ctx, pages),
    ...coats.flatMap((_, i) => [{ kind: 'page-break' } as const, ...coatPage(ctx, i, pages)]),
  ];
  return { ok: true, paper: paper(ctx, 'crew-sheet', ctx.language, blocks) };
}
