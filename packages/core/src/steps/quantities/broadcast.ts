import type { Layer } from '../../catalogue.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, type OptionContext } from '../context.ts';
import { broadcastMass } from '../formulas/quantities-broadcast.ts';
import { massLeft } from '../formulas/quantities-volumes.ts';
import type { BroadcastQuantity } from '../results.ts';
import { sumOfAreas } from './coated-areas.ts';
import type { LayerAreaMeasured } from './layer-area.ts';

export interface BroadcastMeasured {
  readonly quantity: BroadcastQuantity;
  readonly rate: Known<'kg/m²'>;
  /** Thrown until nothing more sticks: running out shows as bare spots. */
  readonly toRefusal: boolean;
}

/** Flake or quartz of one layer: thrown, kept, and what comes back when it is swept. */
export function broadcastOf(
  ctx: OptionContext,
  layer: Layer,
  areas: readonly LayerAreaMeasured[],
  floors: readonly Known<'m²'>[],
  trace: Trace,
): BroadcastMeasured | undefined {
  const { broadcast } = layer;
  if (!broadcast) return undefined;
  const media = ctx.catalogue.media?.find((one) => one.id === broadcast.media);
  if (!media) throw new Error(`layer ${layer.id} throws a material that the check let through: ${broadcast.media}`);
  const t = trace.within(layer.id).within('broadcast');
  const faces = broadcast.verticals ? areas.flatMap((area) => area.faces ?? []) : [];
  const area = sumOfAreas(t, 'area', [...floors, ...faces]);
  if (!area) throw new Error(`option ${ctx.option.id} coats no area`);
  const rate = givenFact(t, 'rate', broadcast.thrown);
  const thrown = t.figure('thrown', broadcastMass, { area, rate });
  const base = { layer: layer.id, media: media.id, name: media.name, thrown };
  const toRefusal = broadcast.toRefusal ?? false;
  if (!broadcast.kept) return { quantity: base, rate, toRefusal };
  const kept = t.figure('kept', broadcastMass, { area, rate: givenFact(t, 'kept-rate', broadcast.kept) });
  const back = t.figure('back', massLeft, { held: thrown, needed: kept });
  return { quantity: { ...base, kept, back }, rate, toRefusal };
}
