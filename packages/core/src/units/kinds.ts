import type { Shows } from '../kernel/shows.ts';
import type { Unit } from '../kernel/unit.ts';
import { isMeasured, type MeasuredUnit } from './listed.ts';

/** What sort of thing a quantity is to a reader. Money is told elsewhere. */
export type Kind =
  | Exclude<Shows, 'money'>
  | 'speed'
  | 'bulk-density'
  | 'mass-rate'
  | 'heat-flow'
  | 'conductivity'
  | 'heat-transfer'
  | 'angle';

/** A unit, the least amount of it (in that unit) at which it is used, and its own digits where the kind's are too many. */
export type Rung = readonly [name: string, least: number, digits?: number];

export type Showing = {
  readonly imperial: readonly Rung[];
  readonly metric: readonly Rung[];
  /** Significant digits where neither the caller nor a band says. */
  readonly digits: number;
  /** Last place shown, as a power of ten of the unit, for things read off a scale; instead of significant digits. */
  readonly place?: number;
  /** True where the whole part is kept whatever its length: areas, kits and loads that a reader adds up. */
  readonly whole?: true;
};

const always = (name: string): readonly Rung[] => [[name, 0]];

const showing = (
  imperial: string | readonly Rung[],
  metric: string | readonly Rung[],
  digits: number,
  more: { place?: number; whole?: true } = {},
): Showing => ({
  imperial: typeof imperial === 'string' ? always(imperial) : imperial,
  metric: typeof metric === 'string' ? always(metric) : metric,
  digits,
  ...more,
});

const both = (rungs: string | readonly Rung[], digits: number, more: { place?: number; whole?: true } = {}): Showing =>
  showing(rungs, rungs, digits, more);

/**
 * How each kind is shown, by the SI unit its values carry. Feet and inches (`length`) and hours and minutes (`duration`)
 * are written in two units and have files of their own; the entries here serve where one unit is asked for.
 */
export const KINDS: Readonly<Record<Kind, Partial<Record<MeasuredUnit, Showing>>>> = {
  plain: { '1': both('1', 4) },
  count: { '1': both('1', 15, { place: 0 }) },
  share: { '1': both('%', 3) },
  humidity: { '1': both('% RH', 3) },
  concentration: {
    '1': both(
      [
        ['%', 1],
        ['ppm', 0],
      ],
      3,
    ),
    'kg/m³': both(
      [
        ['g/L', 1],
        ['mg/m³', 0.1],
        ['µg/m³', 0],
      ],
      3,
    ),
  },
  length: { m: showing('ft', 'm', 4, { whole: true }) },
  /** A crack or a step below an eighth of an inch is told in mils: nobody reads 0.0315 in off anything. */
  'small-length': {
    m: showing(
      [
        ['in', 0.125],
        ['mil', 0, 2],
      ],
      'mm',
      3,
    ),
  },
  film: { m: showing('mil', 'µm', 3) },
  area: { 'm²': showing('ft²', 'm²', 4, { whole: true }) },
  volume: {
    'm³': showing(
      [
        ['gal', 0.25],
        ['fl oz', 0],
      ],
      [
        ['L', 1],
        ['mL', 0],
      ],
      3,
      { whole: true },
    ),
  },
  'spread-rate': { '1/m': showing('ft²/gal', 'm²/L', 3) },
  density: { 'kg/m³': showing('lb/gal', 'kg/L', 3) },
  'bulk-density': { 'kg/m³': showing('lb/ft³', 'kg/m³', 3) },
  voc: { 'kg/m³': both('g/L', 3) },
  mass: {
    kg: showing(
      [
        ['lb', 1],
        ['oz(av)', 0],
      ],
      [
        ['kg', 1],
        ['g', 0],
      ],
      3,
      { whole: true },
    ),
  },
  'area-mass': {
    'kg/m²': showing(
      'lb/ft²',
      [
        ['kg/m²', 0.1],
        ['g/m²', 0],
      ],
      3,
    ),
  },
  stress: {
    Pa: showing(
      'psi',
      [
        ['MPa', 0.1],
        ['kPa', 0.1],
        ['Pa', 0],
      ],
      3,
    ),
  },
  pressure: {
    Pa: showing(
      'inHg',
      [
        ['hPa', 1],
        ['Pa', 0],
      ],
      4,
    ),
  },
  force: {
    N: showing(
      'lbf',
      [
        ['kN', 1],
        ['N', 0],
      ],
      3,
    ),
  },
  temperature: { '°C': showing('°F', '°C', 3, { place: -1 }) },
  difference: { K: showing('F°', 'K', 3, { place: -1 }) },
  emission: { 'kg/(m² s)': showing('lb/1000 ft²·24 h', 'g/(m²·24 h)', 3) },
  airflow: { 'm³/s': showing('cfm', 'm³/h', 3, { whole: true }), 'm²/s': showing('cfm/in', 'm²/h', 3) },
  'area-rate': { 'm²/s': showing('ft²/h', 'm²/h', 3) },
  'length-rate': { 'm/s': showing('ft/h', 'm/h', 3) },
  speed: { 'm/s': showing('mi/h', 'm/s', 3) },
  duration: {
    s: both(
      [
        ['d', 2],
        ['h', 1],
        ['min', 1],
        ['s', 0],
      ],
      3,
    ),
  },
  /** Person-hours: forty of them are no two days, so they stay hours. */
  'work-time': { s: both('h', 4) },
  expansion: { '1/K': showing('1/°F', '1/K', 3) },
  power: {
    W: both(
      [
        ['kW', 1],
        ['W', 0],
      ],
      3,
    ),
  },
  current: { A: both('A', 3) },
  'energy-per-mole': { 'J/mol': both('kJ/mol', 3) },
  /** What an abrader took off: far below the litres and pounds of a kit. */
  wear: { 'm³': both('mm³', 3), kg: both('mg', 3), m: both('µm', 3) },
  impact: { 'N m': showing('in lbf', 'N m', 3) },
  /** Air of a room and vapour in it: nobody thinks of those in gallons or litres. */
  'gas-volume': { 'm³': showing('ft³', 'm³', 3) },
  'mass-rate': { 'kg/s': showing('lb/h', 'kg/h', 3) },
  'heat-flow': { 'W/m²': showing('Btu/(h ft²)', 'W/m²', 3) },
  conductivity: { 'W/(m K)': showing('Btu/(h ft °F)', 'W/(m K)', 3) },
  'heat-transfer': { 'W/(m² K)': showing('Btu/(h ft² °F)', 'W/(m² K)', 3) },
  angle: { rad: both('°', 3) },
};

/** The kind meant where only the unit is known. */
const USUAL_KIND: Partial<Record<MeasuredUnit, Kind>> = {
  '1': 'plain',
  m: 'length',
  'm²': 'area',
  'm³': 'volume',
  '1/m': 'spread-rate',
  'm²/s': 'area-rate',
  'm³/s': 'airflow',
  'm/s': 'length-rate',
  s: 'duration',
  kg: 'mass',
  'kg/m³': 'density',
  'kg/m²': 'area-mass',
  'kg/s': 'mass-rate',
  'kg/(m² s)': 'emission',
  N: 'force',
  Pa: 'stress',
  'J/mol': 'energy-per-mole',
  W: 'power',
  'W/m²': 'heat-flow',
  'W/(m K)': 'conductivity',
  'W/(m² K)': 'heat-transfer',
  A: 'current',
  K: 'difference',
  '1/K': 'expansion',
  '°C': 'temperature',
  rad: 'angle',
};

/** The kind a unit has where nobody says otherwise; undefined where the unit has none of its own. */
export const usualKind = (unit: Unit): Kind | undefined => (isMeasured(unit) ? USUAL_KIND[unit] : undefined);
