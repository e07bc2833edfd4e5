import { isEven } from '../kernel/band.ts';
import type { Entry } from '../kernel/entry.ts';
import { minorDigits } from '../kernel/money.ts';
import type { Unit } from '../kernel/unit.ts';
import { formatQuantity, type Kind, type System, toSI } from '../units/index.ts';

/** Who reads: language and region, imperial or metric, the one currency of the plan. */
export interface Reader {
  /** BCP 47, for decimal mark and plurals: `en-US`, `es-US`. */
  readonly locale: string;
  readonly units: System;
  readonly currency?: string;
  /** The year the plan was made in, `2026`: a moment within it is told without its year. */
  readonly year?: string;
}

const NO_BREAK = '\u00a0';

const MONEY_PER: Partial<
  Record<Unit, { readonly metric: readonly [number, string]; readonly imperial: readonly [number, string] }>
> = {
  'money/m²': { metric: [1, 'm²'], imperial: [toSI(1, 'ft²').value, 'ft²'] },
  'money/m': { metric: [1, 'm'], imperial: [toSI(1, 'ft').value, 'ft'] },
  'money/s': { metric: [3600, 'h'], imperial: [3600, 'h'] },
};

function moneyShown(minor: number, reader: Reader): string {
  const currency = reader.currency;
  if (!currency) throw new Error('an amount of money is shown without the currency of its plan');
  const digits = minorDigits(currency);
  return new Intl.NumberFormat(reader.locale, { style: 'currency', currency, minimumFractionDigits: digits })
    .format(minor / 10 ** digits)
    .replaceAll(' ', NO_BREAK);
}

/** A value with its unit as this reader writes it; digits never finer than the band. */
export function showValue(
  value: number,
  unit: Unit,
  reader: Reader,
  options: { readonly shows?: Entry['shows']; readonly band?: readonly [number, number]; readonly in?: string } = {},
): string {
  if (unit === 'money') return moneyShown(value, reader);
  const per = MONEY_PER[unit];
  if (per) {
    const [factor, name] = per[reader.units];
    return `${moneyShown(value * factor, reader)}/${name}`;
  }
  const kind = options.shows as Kind | undefined;
  return formatQuantity(value, unit, {
    system: reader.units,
    locale: reader.locale,
    ...(kind ? { kind } : {}),
    ...(options.band ? { band: options.band } : {}),
    ...(options.in ? { in: options.in } : {}),
  }).text;
}

/** An entry of the plan as text, without its band. Lists and series show their ends. */
export function show(entry: Entry, reader: Reader): string {
  const shows = entry.shows ? { shows: entry.shows } : {};
  if (entry.kind === 'list' || entry.kind === 'series') {
    const texts = entry.values.map((value) => showValue(value, entry.unit, reader, shows));
    return texts.length <= 6 ? texts.join(', ') : `${texts[0]} … ${texts[texts.length - 1]}`;
  }
  return showValue(entry.value, entry.unit, reader, { ...shows, ...(entry.band ? { band: entry.band } : {}) });
}

/** A band narrower than this share of its value is the rounding of causes that cancel. */
const NOTHING_TO_SHOW = 1e-6;

/** The band alone: `±0.3 K` where both sides agree within 20 %, else both ends; empty without a band. */
export function showBand(entry: Entry, reader: Reader): string {
  if ((entry.kind !== 'figure' && entry.kind !== 'given') || !entry.band) return '';
  const [low, high] = entry.band;
  const { value, unit, band } = entry;
  // causes that cancel leave a rounding behind, which nobody needs to read
  if (high - low <= NOTHING_TO_SHOW * Math.abs(value)) return '';
  const shows = entry.shows ? { shows: entry.shows } : {};
  if (high === low) return '';
  if (isEven(value, band) && unit !== '°C' && !unit.startsWith('money')) {
    return `±${showValue((high - low) / 2, unit, reader, { ...shows, band: [0, high - low] })}`;
  }
  return `${showValue(low, unit, reader, { ...shows, band })} – ${showValue(high, unit, reader, { ...shows, band })}`;
}
