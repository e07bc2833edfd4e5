import type { Fact } from '../../fields.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact } from '../context.ts';
import { type Coat, type Found, sheetSilent } from './coat.ts';
import { above, below } from './limits.ts';

/** Thinnest and thickest the sheet allows in one coat, wet and dry, and what still hangs on a wall. */
export function filmLimits(coat: Coat): Found {
  const { film } = coat.product;
  if (!film || Object.keys(film).length === 0) return sheetSilent(coat, 'system-film-unstated', 'film');
  const vertical = coat.wetVertical ?? coat.wet;
  const checks: readonly (Reason | undefined)[] = [
    limit(coat, 'dry-thin', coat.dry, film.leastDry, below),
    limit(coat, 'dry-thick', coat.dry, film.mostDry, above),
    limit(coat, 'wet-thin', coat.wet, film.leastWet, below),
    limit(coat, 'wet-thick', coat.wet, film.mostWet, above),
    coat.climbs ? limit(coat, 'vertical-thick', vertical, film.mostWetVertical, above) : undefined,
  ];
  const reasons = checks.filter((reason) => reason !== undefined);
  if (!coat.climbs || film.mostWetVertical) return { reasons };
  // Floors are rarely lost over a run on a stem wall, so a silent sheet is a caution and not an unknown.
  const silent: Reason = {
    code: 'system-film-vertical-unstated',
    verdict: 'caution',
    figures: { film: vertical.id },
    names: { layer: coat.name },
  };
  return { reasons: [...reasons, silent] };
}

function limit(
  coat: Coat,
  name: string,
  film: Known<'m'>,
  stated: Fact<'m'> | undefined,
  breaks: (value: number, limit: number) => boolean,
): Reason | undefined {
  if (!stated) return undefined;
  const bound = givenFact(coat.trace, `limit.${name}`, stated, { where: coat.sheet });
  if (!breaks(film.value, bound.value)) return undefined;
  const figures = { film: film.id, limit: bound.id };
  const names = { layer: coat.name };
  return {
    code: `system-film-${name}`,
    verdict: 'stop',
    figures,
    names,
    source: bound.id,
    lift: { code: `system-film-${name}-lift`, figures: { limit: bound.id }, names },
  };
}
