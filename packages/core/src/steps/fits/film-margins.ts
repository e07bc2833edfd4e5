import type { Fact } from '../../fields.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { shareAbove, shareLeft } from '../formulas/fits.ts';
import type { LayerFit, SurveyPlan, SystemPlan } from '../results.ts';
import type { Margin } from './margins.ts';

/** Film of each coat between the thinnest and thickest of its sheet. */
export function filmMargins(
  ctx: OptionContext,
  fitted: SystemPlan,
  surveyed: SurveyPlan,
  trace: Trace,
): readonly Margin[] {
  const wanted = new Set(ctx.option.areas);
  const left = new Set(ctx.option.leaveOut ?? []);
  const stands = surveyed.areas.some((area) => wanted.has(area.id) && area.verticals.some(({ id }) => !left.has(id)));
  return ctx.system.layers.flatMap((layer): readonly Margin[] => {
    const fit = fitted.layers.find((one) => one.layer === layer.id);
    const product = productOf(ctx, layer);
    const { film } = product;
    if (!fit || !film) return [];
    const t = trace.within('film').within(layer.id);
    const where = sheetOf(product);
    const margin = (
      name: string,
      end: 'least' | 'most',
      stated: Fact<'m'> | undefined,
      reading: Known<'m'>,
    ): Figure<'1'>[] => {
      if (!stated || stated.value <= 0) return [];
      const limit = givenFact(t, `${name}.limit`, stated, { where });
      return [t.figure(name, end === 'least' ? shareAbove : shareLeft, { limit, reading })];
    };
    const all = [
      ...margin('dry-thin', 'least', film.leastDry, fit.dry),
      ...margin('dry-thick', 'most', film.mostDry, fit.dry),
      ...margin('wet-thin', 'least', film.leastWet, fit.wet),
      ...margin('wet-thick', 'most', film.mostWet, fit.wet),
      ...(stands && layer.verticals ? margin('wall-thick', 'most', film.mostWetVertical, onWall(fit)) : []),
    ];
    return all.map((one) => ({ need: 'film', word: 'fits-need-film', at: fit.name, margin: one }));
  });
}

const onWall = ({ wet, wetVertical }: LayerFit): Known<'m'> => wetVertical ?? wet;
