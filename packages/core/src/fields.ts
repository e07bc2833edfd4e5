import { z } from 'zod';
import type { Origin } from './kernel/entry.ts';
import { isDate, isInstant, isZone } from './kernel/instant.ts';
import { isDecimalText } from './kernel/money.ts';
import type { Shows } from './kernel/shows.ts';
import type { Unit } from './kernel/unit.ts';
import { parseQuantity, type Quantity } from './units/index.ts';

/**
 * Building blocks of every file format: a quantity is the text a person read or typed, with its unit, and parses to SI
 * with that text kept beside it.
 */

export interface FieldTrouble {
  readonly code: string;
  readonly value?: string;
  readonly limits?: readonly string[];
  readonly names?: Readonly<Record<string, string>>;
}

/** Adds one of our coded troubles to a zod context, at a place below where the context stands. */
export function trouble(ctx: z.RefinementCtx, params: FieldTrouble, path: (string | number)[] = []): void {
  ctx.addIssue({ code: 'custom', message: params.code, params: { ...params }, path });
}

export interface Field<U extends Unit = Unit> extends Quantity<U> {
  readonly shows?: Shows;
}

/** Allowed range, each end written the way a person would type it. */
export interface QuantityLimits {
  readonly least?: string;
  readonly most?: string;
  readonly shows?: Shows;
}

function bound(text: string | undefined, unit: Unit, fallback: number): number {
  if (text === undefined) return fallback;
  const parsed = parseQuantity(text, unit);
  if (!parsed.ok) throw new Error(`a limit in a schema does not parse: ${text}`);
  return parsed.quantity.value;
}

/** A physical quantity as text with its unit, within a range. */
export function quantity<U extends Unit>(unit: U, limits: QuantityLimits = {}) {
  const least = bound(limits.least, unit, Number.NEGATIVE_INFINITY);
  const most = bound(limits.most, unit, Number.POSITIVE_INFINITY);
  const shown = [limits.least ?? '', limits.most ?? ''];
  return z
    .string()
    .transform((typed, ctx): Field<U> => {
      const parsed = parseQuantity(typed, unit);
      if (!parsed.ok) {
        const { trouble: t } = parsed;
        trouble(ctx, {
          code: t.code,
          value: typed,
          ...(limits.least || limits.most ? { limits: shown } : {}),
          names: {
            got: t.got ?? '',
            gotDimension: (t.gotDimension ?? '').replaceAll('-', ' '),
            expectedDimension: t.expectedDimension.replaceAll('-', ' '),
            didYouMean: (t.didYouMean ?? []).join(', '),
          },
        });
        return z.NEVER;
      }
      const q = parsed.quantity;
      if (q.value < least || q.value > most) {
        trouble(ctx, { code: 'out-of-range', value: typed, limits: shown });
        return z.NEVER;
      }
      return { ...q, unit, ...(limits.shows ? { shows: limits.shows } : {}) };
    })
    .meta({ description: describe(unit, limits) });
}

const describe = (unit: Unit, { least, most }: QuantityLimits): string =>
  `Text with a unit (dimension ${unit})${least || most ? `, ${least ?? '…'} to ${most ?? '…'}` : ''}`;

export const DOORS = ['data sheet', 'own test', "firm's rate", 'assumed'] as const;
export type Door = (typeof DOORS)[number];

/** A value with where it comes from. `U` is its unit inside. */
export interface Fact<U extends Unit = Unit> extends Field<U> {
  readonly origin: Origin;
  readonly where?: string;
  readonly when?: string;
  /** P10 and P90, where the person gave a range. */
  readonly low?: number;
  readonly high?: number;
}

/**
 * A fact that may come through several doors: plain text means the usual one; an object names another, with place and
 * date, and may carry the range it is believed in.
 */
export function fact<U extends Unit>(unit: U, usual: Origin, limits: QuantityLimits = {}) {
  const value = quantity(unit, limits);
  return z.union([
    value.transform((q): Fact<U> => ({ ...q, origin: usual })),
    z
      .strictObject({
        value,
        origin: z.enum(['reading', 'data sheet', 'own test', "firm's rate", 'chosen', 'assumed']).optional(),
        where: text().optional(),
        when: dateOrInstant().optional(),
        low: value.optional(),
        high: value.optional(),
      })
      .transform(({ value: q, origin, where, when, low, high }, ctx): Fact<U> => {
        if ((low && low.value > q.value) || (high && high.value < q.value)) {
          trouble(ctx, { code: 'range-upside-down', value: q.typed, limits: [low?.typed ?? '', high?.typed ?? ''] });
          return z.NEVER;
        }
        return {
          ...q,
          origin: origin ?? usual,
          ...(where ? { where } : {}),
          ...(when ? { when } : {}),
          ...(low ? { low: low.value } : {}),
          ...(high ? { high: high.value } : {}),
        };
      }),
  ]);
}

/** Every control character but tab and line ends. */
const CONTROL = /[^\P{Cc}\t\n\r]/u;

/** Text a person wrote, trimmed of nothing, without control characters. */
export const text = (most = 2000) =>
  z.string().superRefine((value, ctx) => {
    if (value.length > most)
      trouble(ctx, { code: 'text-too-long', value: `${value.length}`, limits: ['0', `${most}`] });
    // Control characters would reach papers and terminals.
    if (CONTROL.test(value)) trouble(ctx, { code: 'text-has-control-characters' });
  });

/** A short name used as a key and in ids: no dots or slashes, because ids are paths. */
export const idText = () =>
  z.string().superRefine((value, ctx) => {
    if (!/^[a-z0-9][a-z0-9-]{0,39}$/.test(value)) trouble(ctx, { code: 'id-malformed', value });
  });

/** A time of the day as a clock shows it, `07:30`. */
export const clockTime = () =>
  z.string().superRefine((value, ctx) => {
    if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(value)) trouble(ctx, { code: 'clock-time-malformed', value });
  });

export const date = () =>
  z.string().superRefine((value, ctx) => {
    if (!isDate(value)) trouble(ctx, { code: 'date-malformed', value });
  });

export const instant = () =>
  z.string().superRefine((value, ctx) => {
    if (!isInstant(value)) trouble(ctx, { code: 'instant-malformed', value });
  });

export const dateOrInstant = () =>
  z.string().superRefine((value, ctx) => {
    if (!isDate(value) && !isInstant(value)) trouble(ctx, { code: 'date-malformed', value });
  });

export const zone = () =>
  z.string().superRefine((value, ctx) => {
    if (!isZone(value)) trouble(ctx, { code: 'zone-unknown', value });
  });

/** An exact decimal amount of money as text, `230.00`. */
export const amount = () =>
  z.string().superRefine((value, ctx) => {
    if (!isDecimalText(value)) trouble(ctx, { code: 'amount-malformed', value });
  });

export const wholeNumber = (least: number, most: number) =>
  z.number().superRefine((value, ctx) => {
    if (!Number.isInteger(value) || value < least || value > most) {
      trouble(ctx, { code: 'out-of-range', value: `${value}`, limits: [`${least}`, `${most}`] });
    }
  });

/** Three-way answer: nobody looked is never the same as no. */
export const SEEN = ['yes', 'no', 'not known'] as const;
export const seen = () => z.enum(SEEN);
export type Seen = (typeof SEEN)[number];
