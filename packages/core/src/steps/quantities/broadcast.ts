import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { broadcastMass } from '../formulas/quantities-broadcast.ts';
import { massLeft } from '../formulas/quantities-volumes.ts';
import type { BroadcastQuantity } from '../results.ts';
import { sumOfAreas } from './coated-areas.ts';
import type { LayerAreaMeasured } from './layer-area.ts';

/** Flake or quartz of one layer: thrown, kept, and what comes back when it is swept. */
export function broadcastOf(
  ctx: OptionContext,
  layer: Layer,
  areas: readonly LayerAreaMeasured[],
  floors: readonly Known<'m²'>[],
  trace: Trace,
): BroadcastQuantity | undefined {
  const { broadcast } = layer;
  if (!broadcast) return undefined;
  const media = ctx.catalogue.media?.find((one) => one.id === broadcast.media);
  if (!media) throw new Error(`layer ${layer.id} throws a material that the check let through: ${broadcast.media}`);
  const t = trace.within(layer.id).within('broadcast');
  const faces = broadcast.verticals ? areas.flatMap((area) => area.faces ?? []) : [];
  const area = sumOfAreas(t, 'area', [...floors, ...faces]);
  if (!area) throw new Error(`option ${ctx.option.id} coats no area`);
  const thrown = t.figure('thrown', broadcastMass, { area, rate: givenFact(t, 'rate', broadcast.thrown) });
  const base = { layer: layer.id, media: media.id, name: media.name, thrown };
  if (!broadcast.kept) return base;
  const kept = t.figure('kept', broadcastMass, { area, rate: givenFact(t, 'kept-rate', broadcast.kept) });
  return { ...base, kept, back: t.figure('back', massLeft, { held: thrown, needed: kept }) };
}
