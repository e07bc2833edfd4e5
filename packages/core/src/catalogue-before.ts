import { z } from 'zod';
import { BRIDGING_CLASSES } from './data/crack-bridging.ts';
import type { Property } from './evidence.ts';
import { fact, quantity, trouble } from './fields.ts';

/** What older files say in a place of its own: still read, and brought to where it stands today. */

/** Crack a film of this product was shown to bridge: a class of EN 1062-7 or a width, at the temperature of the test. */
export const crackBridging = () =>
  z
    .strictObject({
      class: z.enum(BRIDGING_CLASSES).optional(),
      width: fact('m', 'data sheet', { least: '0.01 mm', most: '10 mm', shows: 'small-length' }).optional(),
      at: quantity('°C', { least: '-40 °C', most: '80 °C', shows: 'temperature' }),
    })
    .superRefine((shown, ctx) => {
      if (!shown.class && !shown.width) trouble(ctx, { code: 'catalogue-bridging-states-nothing' });
    });

type Shown = z.output<ReturnType<typeof crackBridging>>;

/** Width of a crack that a maker shows bridged, by no standard: the method of its claim. */
const SHOWN_WIDTH = 'crack width shown';

/** The same as claims of the sheet, with method and temperature. */
export function claimsOfBridging(shown: Shown): readonly Property[] {
  const claim = (method: string, value: string): Property => ({
    what: 'crack bridging',
    method,
    value,
    conditions: { temperature: shown.at },
  });
  return [
    ...(shown.class ? [claim(`EN 1062-7 ${shown.class.slice(0, 1)}`, shown.class)] : []),
    ...(shown.width ? [claim(SHOWN_WIDTH, shown.width.typed)] : []),
  ];
}

type Json = { readonly [key: string]: unknown };
const isObject = (value: unknown): value is Json =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

const OLD = crackBridging();

/**
 * A catalogue as it stands in a file, with such claims written where a form shows them and saves them. What was not
 * understood stays where it is, so that reading the file names it; a file without any is handed back itself.
 */
export function broughtUp(file: unknown): unknown {
  if (!isObject(file) || !Array.isArray(file.products)) return file;
  const products = file.products.map(productUp);
  return products.every((one, i) => one === (file.products as readonly unknown[])[i]) ? file : { ...file, products };
}

function productUp(product: unknown): unknown {
  if (!isObject(product) || product.crackBridging === undefined) return product;
  const { crackBridging: old, properties = [], ...rest } = product;
  const shown = OLD.safeParse(old);
  if (!shown.success || !Array.isArray(properties)) return product;
  const claims = claimsOfBridging(shown.data).map((claim) => ({
    ...claim,
    conditions: { temperature: shown.data.at.typed },
  }));
  return { ...rest, properties: [...properties, ...claims] };
}
