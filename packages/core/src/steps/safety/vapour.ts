import type { Layer, Product } from '../../catalogue.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { pressureAtAltitude } from '../../science/air/index.ts';
import { airToQuarterLimit, roomFractionOfLimit, vapourFromLiquid } from '../../science/vapour/index.ts';
import { givenFact, givenField, type OptionContext, productOf, sheetOf } from '../context.ts';
import { totalVolume } from '../formulas/quantities-volumes.ts';
import { solventFromVoc, volumeNotSolid } from '../formulas/safety.ts';
import type { CoatVapour, QuantitiesPlan } from '../results.ts';
import { exemptionOf, workDay } from '../thinner/place.ts';

/** Air the vapour goes into: the warmest reading, and the pressure of the place. */
export interface RoomAir {
  readonly temperature: Known<'°C'>;
  readonly pressure: Known<'Pa'>;
}

/** Warm air where nobody has read any: more vapour than cool air, by 2 % each 6 K. An assumption. */
const WARM = 25;
const SEA_LEVEL = 101_325;

export function roomAir(ctx: OptionContext, trace: Trace): RoomAir {
  const readings = [...(ctx.job.survey.climate ?? [])].sort((a, b) => b.air.value - a.air.value);
  const [warmest] = readings;
  const temperature: Known<'°C'> = warmest
    ? givenField(trace, 'air', warmest.air, 'reading', { when: warmest.at })
    : trace.given('air', {
        value: WARM,
        unit: '°C',
        origin: 'assumed',
        says: 'safety-air-assumed',
        shows: 'temperature',
      });
  const { altitude } = ctx.job.place;
  const pressure: Known<'Pa'> = altitude
    ? trace.figure('pressure', pressureAtAltitude, { altitude: givenField(trace, 'altitude', altitude, 'chosen') })
    : trace.given('pressure', {
        value: SEA_LEVEL,
        unit: 'Pa',
        origin: 'assumed',
        says: 'safety-pressure-assumed',
        shows: 'pressure',
      });
  return { temperature, pressure };
}

/** Liquid that leaves the coat itself: from its VOC, unless the solvent is one the VOC leaves out. */
function fromCoat(
  ctx: OptionContext,
  t: Trace,
  product: Product,
  coating: Known<'m³'>,
): { readonly from: 'voc' | 'not solid'; readonly liquid: Figure<'m³'> } {
  const where = sheetOf(product);
  const { solvent, voc } = product;
  const exempt = exemptionOf(ctx.job, solvent?.name, workDay(ctx.option, ctx.now));
  if (solvent && voc && !exempt) {
    const liquid = t.figure('liquid', solventFromVoc, {
      coating,
      coatingVoc: givenFact(t, 'voc', voc, { where }),
      liquidDensity: givenFact(t, 'density', solvent.density, { where }),
    });
    return { from: 'voc', liquid };
  }
  const volumeSolids = givenFact(t, 'solids', product.volumeSolids, { where });
  return { from: 'not solid', liquid: t.figure('liquid', volumeNotSolid, { coating, volumeSolids }) };
}

/**
 * Vapour of one coat, all of it in the air at once: the worst hour of a shut room, evenly mixed. A coat whose sheet
 * names no solvent gets its liquid and no more, because density, molar mass and limit are then not known.
 */
function coatVapour(
  ctx: OptionContext,
  layer: Layer,
  quantified: QuantitiesPlan,
  room: Known<'m³'> | undefined,
  air: RoomAir,
  trace: Trace,
): CoatVapour {
  const product = productOf(ctx, layer);
  const base = { layer: layer.id, name: layer.name ?? product.name };
  const quantity = quantified.layers.find((one) => one.layer === layer.id);
  if (!quantity) return { ...base, from: 'not known' };
  const t = trace.within(layer.id);
  const nothing = product.voc?.value === 0 || (!product.voc && product.volumeSolids.value === 1);
  const { solvent } = product;
  if (nothing && !quantity.thinner && !solvent) return { ...base, from: 'none' };
  if (!solvent) return { ...base, from: 'not known' };
  const where = sheetOf(product);
  const { from, liquid: own } = fromCoat(ctx, t, product, quantity.needed);
  // The thinner is taken as the solvent the sheet names: its own molar mass is not in the catalogue.
  const liquid = quantity.thinner ? t.figure('liquid-thinned', totalVolume, { volumes: [own, quantity.thinner] }) : own;
  const vapour = t.figure('vapour', vapourFromLiquid, {
    liquidVolume: liquid,
    liquidDensity: givenFact(t, 'vapour-density', solvent.density, { where }),
    molarMass: givenFact(t, 'molar-mass', solvent.molarMass, { where }),
    airTemperature: air.temperature,
    pressure: air.pressure,
  });
  const lowerLimit = givenFact(t, 'lower-limit', solvent.lowerExplosiveLimit, { where });
  const vapourVolume = vapour;
  return {
    ...base,
    from,
    solvent: solvent.name,
    liquid,
    vapour,
    lowerLimit,
    air: t.figure('air', airToQuarterLimit, { vapourVolume, lowerExplosiveLimit: lowerLimit }),
    ...(room
      ? {
          share: t.figure('share', roomFractionOfLimit, {
            vapourVolume,
            roomVolume: room,
            lowerExplosiveLimit: lowerLimit,
          }),
        }
      : {}),
  };
}

export const vapours = (
  ctx: OptionContext,
  quantified: QuantitiesPlan,
  room: Known<'m³'> | undefined,
  trace: Trace,
): readonly CoatVapour[] => {
  const air = roomAir(ctx, trace);
  return ctx.system.layers.map((layer) => coatVapour(ctx, layer, quantified, room, air, trace));
};
