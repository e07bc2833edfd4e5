import type { Layer, Moment, Product } from '../../catalogue.ts';
import { tabled } from '../../data/tabled.ts';
import { type MilestoneName, type ProductCure, productCure, type SheetTime } from '../../science/cure/index.ts';
import { type ChainedCoat, THREE_KELVIN } from '../../science/windows/index.ts';

/** Stage taken as sensitive where the sheet gives no time at all: an assumption. */
const SENSITIVE = tabled('4 h', 's');

/** Names of the sheet's times as the cure knows them. */
export const MILESTONE_OF: Readonly<Partial<Record<Moment, MilestoneName>>> = {
  'open time': 'open',
  'touch dry': 'touch',
  'recoat from': 'recoat opens',
  'recoat until': 'recoat closes',
  foot: 'foot',
  light: 'light',
  vehicle: 'vehicle',
  full: 'full',
};

/** What must happen before a time takes the shorter of two lines of a sheet at one temperature, the rest the longer. */
const SHORTER: ReadonlySet<Moment> = new Set(['pot life', 'open time', 'recoat until']);

/** Points of one time by temperature; sheets may give several humidities at one, and a law takes one. */
function pointsOf(product: Product, what: Moment): readonly SheetTime[] {
  const points = new Map<number, number>();
  for (const time of product.times ?? []) {
    if (time.what !== what) continue;
    const before = points.get(time.at.value);
    const here = time.value.value;
    const kept = before === undefined ? here : SHORTER.has(what) ? Math.min(before, here) : Math.max(before, here);
    points.set(time.at.value, kept);
  }
  return [...points].map(([temperature, time]) => ({ temperature, time }));
}

/** Cures already fitted, held as long as their product is. */
const fitted = new WeakMap<Product, ProductCure>();

/** The cure of a product by its own sheet. */
export function cureOf(product: Product): ProductCure {
  const known = fitted.get(product) ?? cureFitted(product);
  fitted.set(product, known);
  return known;
}

function cureFitted(product: Product): ProductCure {
  const film: Partial<Record<MilestoneName, readonly SheetTime[]>> = {};
  for (const [moment, name] of Object.entries(MILESTONE_OF) as [Moment, MilestoneName][]) {
    film[name] = pointsOf(product, moment);
  }
  const { slabLeast, slabMost } = product.climate ?? {};
  return productCure({
    pail: pointsOf(product, 'pot life'),
    film,
    limits: {
      ...(slabLeast ? { least: slabLeast.value } : {}),
      ...(slabMost ? { most: slabMost.value } : {}),
    },
  });
}

/** A coat as the windows judge it, all but its bounds. */
export function coatOf(
  layer: Layer,
  product: Product,
  cure: ProductCure,
  laying: number,
  outdoors: boolean,
): ChainedCoat {
  const { climate = {} } = product;
  const { film } = cure;
  const touch = film.touch ?? film['recoat opens'] ?? film.foot;
  return {
    laying,
    ...(film.open ? { open: film.open } : {}),
    ...(touch ? { touch } : {}),
    sensitive: SENSITIVE,
    marginRule: climate.dewMargin?.value ?? THREE_KELVIN,
    slab: [climate.slabLeast?.value, climate.slabMost?.value],
    air: [climate.airLeast?.value, climate.airMost?.value],
    humidity: [climate.humidityLeast?.value, climate.humidityMost?.value],
    porous: layer.onConcrete === true,
    risingStops: climate.onlyFalling === true,
    outdoors,
    ...(climate.windMost ? { windMost: climate.windMost.value } : {}),
    prepared: Number.NEGATIVE_INFINITY,
    ...(film['recoat opens'] ? { recoatOpens: film['recoat opens'] } : {}),
    ...(film['recoat closes'] ? { recoatCloses: film['recoat closes'] } : {}),
  };
}
