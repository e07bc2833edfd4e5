import type { Layer } from '../../catalogue.ts';
import type { Figure, Given, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { profileFill, textureFill } from '../../science/film/index.ts';
import { filmVolume, totalVolume } from '../formulas/quantities-volumes.ts';
import type { LayerAreaQuantity } from '../results.ts';
import { type CoatedArea, sumOfAreas } from './coated-areas.ts';

/** What one coat is laid with, the same on every area. */
export interface CoatFacts {
  readonly layer: Layer;
  /** Film of coating out of the pail on the flat and on verticals; thinner is not in it. */
  readonly film: Known<'m'>;
  readonly filmVertical: Known<'m'>;
  readonly texture?: Given<'m'>;
  readonly porosity?: Given<'m'>;
  /** The sheet's own consumption and what it already counts in. */
  readonly consumption?: { readonly value: Given<'m'>; readonly includes: readonly string[] };
  readonly fillsCoves: boolean;
}

export interface LayerAreaMeasured {
  readonly quantity: LayerAreaQuantity;
  readonly parts: readonly Figure<'m³'>[];
  /** Floor and the faces this coat goes on. */
  readonly coated: Known<'m²'>;
  readonly faces?: Known<'m²'>;
}

/** Coating one layer takes on one area, part by part, so that no part is forgotten or counted twice. */
export function layerOnArea(
  trace: Trace,
  facts: CoatFacts,
  area: CoatedArea,
  profileDepth: Known<'m'> | undefined,
): LayerAreaMeasured {
  const { layer, consumption } = facts;
  const t = trace.within(area.measure.id);
  const { net } = area.measure;
  const verticals = layer.verticals ? area.verticals : [];
  const faces = sumOfAreas(
    t,
    'faces',
    verticals.map((v) => v.face),
  );
  const coated = faces ? (sumOfAreas(t, 'coated', [net, faces]) as Known<'m²'>) : net;
  const counted = (part: string): boolean => consumption?.includes.includes(part) ?? false;

  const film = t.figure('film', filmVolume, { area: net, film: consumption?.value ?? facts.film });
  const up = faces
    ? onVerticals(
        t,
        facts,
        faces,
        verticals.flatMap((v) => v.fill ?? []),
      )
    : undefined;
  const profile =
    layer.onConcrete && profileDepth && !counted('profile')
      ? t.figure('profile', profileFill, { area: coated, meanVoidDepth: profileDepth })
      : undefined;
  const texture =
    facts.texture && !counted('texture')
      ? t.figure('texture', textureFill, { area: net, textureDepth: facts.texture })
      : undefined;
  const porosity = facts.porosity
    ? t.figure('porosity', filmVolume, { area: coated, film: facts.porosity })
    : undefined;
  return {
    quantity: {
      area: area.measure.id,
      film,
      ...(up ? { verticals: up } : {}),
      ...(profile ? { profile } : {}),
      ...(texture ? { texture } : {}),
      ...(porosity ? { porosity } : {}),
    },
    parts: [film, up, profile, texture, porosity].filter((part) => part !== undefined),
    coated,
    ...(faces ? { faces } : {}),
  };
}

/** Film on stem walls, coves and steps, and the fill that rounds the coves. */
function onVerticals(trace: Trace, facts: CoatFacts, faces: Known<'m²'>, fills: readonly Figure<'m³'>[]): Figure<'m³'> {
  const film = facts.consumption?.value ?? facts.filmVertical;
  if (!facts.fillsCoves || fills.length === 0) return trace.figure('verticals', filmVolume, { area: faces, film });
  const volumes = [trace.figure('verticals-film', filmVolume, { area: faces, film }), ...fills];
  return trace.figure('verticals', totalVolume, { volumes });
}
