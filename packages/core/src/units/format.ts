import type { Unit } from '../kernel/unit.ts';
import { unitFor } from './convert.ts';
import { lastPlace, numberText } from './digits.ts';
import { feetAndInches } from './feet-inches.ts';
import { hoursAndMinutes } from './hours-minutes.ts';
import { KINDS, type Kind, type Rung, type Showing, usualKind } from './kinds.ts';
import { isMeasured, type System } from './listed.ts';
import { intoSI, outOfSI, spanOutOfSI, type TradeUnit, unitsOf } from './trade-unit.ts';

export type FormatOptions = {
  readonly system: System;
  /** BCP 47. */
  readonly locale: string;
  /** What sort of thing it is; by default the usual one of its unit. */
  readonly kind?: Kind;
  /** A unit asked for by name, instead of the one the system and the kind choose. */
  readonly in?: string;
  /**
   * Significant digits, instead of those of the kind; a band may still allow fewer. Feet and inches, and hours and
   * minutes, have steps instead of digits.
   */
  readonly digits?: number;
  /** P10-P90 in SI: no digit finer than its half-width is shown. */
  readonly band?: readonly [low: number, high: number];
  /** True for a field that is typed in again: no thousands marks, which the reader refuses. */
  readonly forEntry?: boolean;
};

export type Formatted = { readonly text: string; readonly number: string; readonly unit: string };

const NO_BREAK_SPACE = '\u00a0';
const WATCH_READS = 10;

const joined = (number: string, unit: string): Formatted => {
  const tied = unit.replaceAll(' ', NO_BREAK_SPACE);
  return { number, unit: tied, text: tied === '' ? number : `${number}${NO_BREAK_SPACE}${tied}` };
};

/** A unit without a kind of its own is shown in the first unit listed for the system. */
const plainShowing = (unit: Unit): Showing => {
  const first = (system: System): readonly Rung[] => {
    const found = unitsOf(unit).find((candidate) => candidate.system === system || candidate.system === 'both');
    return [[(found ?? unitFor(unit, unit)).name, 0]];
  };
  return { imperial: first('imperial'), metric: first('metric'), digits: 4 };
};

const showingOf = (unit: Unit, kind: Kind | undefined): Showing => {
  if (!isMeasured(unit)) throw new Error(`money (${unit}) is not formatted as a physical quantity`);
  if (kind === undefined || (kind === 'plain' && unit !== '1')) return plainShowing(unit);
  const showing = Object.hasOwn(KINDS, kind) ? KINDS[kind][unit] : undefined;
  if (showing === undefined) throw new Error(`a value in ${unit} cannot be shown as ${kind}`);
  return showing;
};

interface ChosenRung {
  readonly unit: TradeUnit;
  readonly digits?: number;
}

/** The first rung the value reaches; zero has no size of its own and takes the first. */
const rungOf = (valueSI: number, unit: Unit, rungs: readonly Rung[]): ChosenRung => {
  const units = rungs.map(([name, least, digits]) => ({
    least,
    unit: unitFor(unit, name),
    ...(digits === undefined ? {} : { digits }),
  }));
  // A hair below counts as reached: 3.175 mm are an eighth of an inch whatever the last binary digit says.
  const reaches = (rung: (typeof units)[number]): boolean =>
    Math.abs(outOfSI(valueSI, rung.unit)) >= rung.least * (1 - 1e-9);
  const reached = units.find((rung) => valueSI === 0 || reaches(rung)) ?? units.at(-1);
  if (reached === undefined) throw new Error(`no unit is named for ${unit}`);
  return reached;
};

const asked = (unit: Unit, name: string): ChosenRung => ({ unit: unitFor(unit, name) });

/** The rung of what is shown: 953 mL that a band rounds to a thousand is told as 1 L. */
const rungShown = (
  valueSI: number,
  unit: Unit,
  rungs: readonly Rung[],
  placeOn: (rung: ChosenRung) => number,
): ChosenRung => {
  const own = rungOf(valueSI, unit, rungs);
  const step = 10 ** placeOn(own);
  const rounded = Math.round(outOfSI(valueSI, own.unit) / step) * step;
  return rounded === 0 ? own : rungOf(intoSI(rounded, own.unit), unit, rungs);
};

/**
 * An SI value as a reader expects it: in the units of the trade, in the reader's own number style, with no more digits
 * than its kind needs or its band supports, and never parted from its unit at a line's end.
 *
 * Throws for a value that is not finite, for money, for a kind or a unit name of another dimension: mistakes in code.
 */
export const formatQuantity = (valueSI: number, unit: Unit, options: FormatOptions): Formatted => {
  if (!Number.isFinite(valueSI)) throw new Error(`a value in ${unit} is not a finite number: ${valueSI}`);
  const { system, locale, band, digits } = options;
  const kind = options.kind ?? usualKind(unit);
  const showing = showingOf(unit, kind);
  const grouped = options.forEntry !== true;
  const halfBand = band === undefined ? undefined : Math.abs(band[1] - band[0]) / 2;
  const compound = { grouped, forEntry: !grouped, ...(halfBand === undefined ? {} : { halfBand }) };
  if (options.in === undefined && kind === 'length' && system === 'imperial') {
    const { number, unit: last } = feetAndInches(valueSI, locale, compound);
    return joined(number, last);
  }
  if (options.in === undefined && kind === 'duration' && (valueSI === 0 || Math.abs(valueSI) >= WATCH_READS)) {
    const { number, unit: last } = hoursAndMinutes(valueSI, locale, compound);
    return joined(number, last);
  }
  const placeOn = (rung: ChosenRung): number => {
    const own = digits === undefined ? { ...showing, ...(rung.digits ? { digits: rung.digits } : {}) } : { digits };
    const width = halfBand === undefined ? {} : { halfBand: spanOutOfSI(halfBand, rung.unit) };
    return lastPlace(outOfSI(valueSI, rung.unit), { ...own, ...width });
  };
  const rung = options.in === undefined ? rungShown(valueSI, unit, showing[system], placeOn) : asked(unit, options.in);
  const text = numberText(outOfSI(valueSI, rung.unit), placeOn(rung), locale, grouped);
  return joined(text, rung.unit.name === '1' ? '' : rung.unit.shows);
};
