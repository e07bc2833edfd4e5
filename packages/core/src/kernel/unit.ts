/**
 * The coherent SI units that values carry inside the core, one string per dimension.
 *
 * `°C` is a temperature on a scale; `K` is a temperature difference (or an absolute temperature where a law
 * needs it). They are separate dimensions on purpose: a margin of 8.1 °F must never receive the 32 °F offset.
 * `1` is a plain number or a fraction 0-1. `money` is an amount in minor units of the one currency of its plan.
 */
export const UNITS = [
  '1',
  'm',
  'm²',
  'm³',
  '1/m',
  'm²/s',
  'm³/s',
  'm/s',
  's',
  's/m²',
  '1/s',
  'kg',
  'kg/m³',
  'kg/m²',
  'kg/mol',
  'kg/s',
  'kg/(m² s)',
  'mol',
  'N',
  'Pa',
  'Pa/s',
  'N m',
  'J',
  'J/mol',
  'J/(kg K)',
  'J/K',
  'W',
  'W/m²',
  'W/(m K)',
  'W/(m² K)',
  'V',
  'A',
  'K',
  'K/s',
  '1/K',
  '°C',
  'rad',
  'money',
  'money/s',
  'money/m',
  'money/m²',
  'money/m³',
  'money/kg',
] as const;

export type Unit = (typeof UNITS)[number];

const KNOWN: ReadonlySet<string> = new Set(UNITS);

/** True when the text is one of the core's own SI unit strings. */
export const isUnit = (text: string): text is Unit => KNOWN.has(text);
