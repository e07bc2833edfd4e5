import table from '../../data/csp-by-film.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { dryFilmFromWet } from '../../science/film/index.ts';
import { givenFact, type OptionContext, productOf, sheetOf } from '../context.ts';
import { systemDryFilm } from '../formulas/preparation.ts';
import type { PreparationPlan } from '../results.ts';

export interface Target {
  readonly target: PreparationPlan['target'];
  readonly notes: readonly Said[];
}

type Classes = readonly [least: number, most: number];

/** Rows of one edition that a film may belong to; in a gap between bands, either neighbour. */
function rowsFor(edition: (typeof table.editions)[number], film: number): readonly Classes[] {
  const rows = edition.rows.map((row) => ({
    low: tabled(row.film[0] as string, 'm'),
    high: tabled(row.film[1] as string, 'm'),
    classes: row.class as unknown as Classes,
  }));
  const holding = rows.filter(({ low, high }) => film >= low && film <= high);
  if (holding.length > 0) return holding.map(({ classes }) => classes);
  const below = rows.filter(({ high }) => high < film).at(-1);
  const above = rows.find(({ low }) => low > film);
  // Outside all its bands an edition is silent; it is not stretched.
  return below && above ? [below.classes, above.classes] : [];
}

const strictest = (all: readonly Classes[]): Classes => {
  const least = Math.max(...all.map(([low]) => low));
  return [least, Math.max(least, Math.min(...all.map(([, high]) => high)))];
};

export interface ByFilm {
  readonly classes: Classes;
  /** Editions that speak of this film, with what each says, strictest of its own rows. */
  readonly editions: readonly { readonly id: string; readonly source: string; readonly classes: Classes }[];
}

/** Profile classes for a dry film in m, the stricter of the editions; undefined where none speaks of it. */
export function classesForFilm(film: number): ByFilm | undefined {
  const editions = table.editions.flatMap((edition) => {
    const rows = rowsFor(edition, film);
    return rows.length > 0 ? [{ id: edition.id, source: edition.source, classes: strictest(rows) }] : [];
  });
  return editions.length > 0 ? { classes: strictest(editions.map(({ classes }) => classes)), editions } : undefined;
}

const classGiven = (
  trace: Trace,
  name: string,
  value: number,
  parts: { where?: string; source?: string },
): Known<'1'> =>
  trace.given(name, { value, unit: '1', origin: parts.source ? 'table' : 'data sheet', shows: 'count', ...parts });

/** Dry films of the layers that state one, in order. */
function dryFilms(ctx: OptionContext, trace: Trace): readonly Known<'m'>[] {
  return ctx.system.layers.flatMap((layer): readonly Known<'m'>[] => {
    const t = trace.within(`film.${layer.id}`);
    if (layer.dryFilm) return [givenFact(t, 'dry', layer.dryFilm)];
    if (!layer.wetFilm) return [];
    const product = productOf(ctx, layer);
    const wetFilm = givenFact(t, 'wet', layer.wetFilm);
    const volumeSolids = givenFact(t, 'solids', product.volumeSolids, { where: sheetOf(product) });
    return [t.figure('dry', dryFilmFromWet, { wetFilm, volumeSolids })];
  });
}

/**
 * The profile wanted: the sheet's own word first, of the system and then of the product that meets the concrete; else
 * by the dry film of the whole system, where editions disagree and the stricter is taken.
 */
export function targetProfile(ctx: OptionContext, trace: Trace): Target {
  const onConcrete = ctx.system.layers.find((layer) => layer.onConcrete) ?? ctx.system.layers[0];
  const product = onConcrete ? productOf(ctx, onConcrete) : undefined;
  const stated = ctx.system.profile ?? product?.profile;
  if (stated) {
    const where = ctx.system.profile ? ctx.system.name : product ? sheetOf(product) : ctx.system.name;
    const target = {
      least: classGiven(trace, 'target.least', stated.least, { where }),
      most: classGiven(trace, 'target.most', stated.most, { where }),
      from: 'data sheet' as const,
    };
    return { target, notes: [] };
  }
  const film = trace.figure('target.film', systemDryFilm, { dryFilms: dryFilms(ctx, trace.within('target')) });
  const found = classesForFilm(film.value) ?? { classes: [1, 10] as const, editions: [] };
  const [least, most] = found.classes;
  const strict = found.editions.find(({ classes }) => classes[0] === least);
  const source = strict?.source ?? 'void-depth-assumption';
  const differ = new Set(found.editions.map(({ classes }) => classes.join('-'))).size > 1;
  const editions = found.editions.map(({ id, classes: [a, b] }) => `${id}: ${a === b ? a : `${a}–${b}`}`).join('; ');
  const figures = { film: film.id };
  return {
    target: {
      least: classGiven(trace, 'target.least', least, { source }),
      most: classGiven(trace, 'target.most', most, { source }),
      from: 'film thickness',
    },
    notes: [
      { code: 'preparation-target-from-film', figures },
      ...(differ ? [{ code: 'preparation-editions-differ', figures, names: { editions } }] : []),
      ...(found.editions.length === 0 ? [{ code: 'preparation-film-outside-tables', figures }] : []),
    ],
  };
}
