import type { Unit } from '../kernel/unit.ts';

/** The two ways of measuring that a reader chooses between. */
export type System = 'imperial' | 'metric';

export type MoneyUnit = Extract<Unit, 'money' | `money/${string}`>;
/** An SI unit of the core that people write with a unit; money has its own module. */
export type MeasuredUnit = Exclude<Unit, MoneyUnit>;

export type Listing = {
  /** A code for the message files. */
  readonly dimension: string;
  readonly imperial: readonly string[];
  readonly metric: readonly string[];
  readonly both: readonly string[];
};

const listing = (
  dimension: string,
  lists: { imperial?: readonly string[]; metric?: readonly string[]; both?: readonly string[] },
): Listing => ({ dimension, imperial: lists.imperial ?? [], metric: lists.metric ?? [], both: lists.both ?? [] });

/** The units offered for each SI unit of the core, the usual ones first. Sizes are computed from these names. */
export const LISTED: Readonly<Record<MeasuredUnit, Listing>> = {
  '1': listing('share', { both: ['1', '%', '% RH', 'ppm', 'ppb'] }),
  m: listing('length', {
    imperial: ['ft', 'in', 'mil', 'yd', 'mi'],
    metric: ['m', 'mm', 'µm', 'cm', 'km', 'nm'],
  }),
  'm²': listing('area', { imperial: ['ft²', 'in²', 'yd²', 'acre'], metric: ['m²', 'cm²', 'mm²'] }),
  'm³': listing('volume', {
    imperial: ['gal', 'qt', 'pt', 'fl oz', 'ft³', 'in³', 'yd³', 'gal(imp)', 'fl oz(imp)'],
    metric: ['L', 'mL', 'm³', 'cm³', 'mm³', 'µL'],
  }),
  '1/m': listing('spread-rate', {
    imperial: ['ft²/gal', 'ft²/gal(imp)', '1/in', '1/ft'],
    metric: ['m²/L', '1/m', '1/mm'],
  }),
  'm²/s': listing('area-rate', {
    imperial: ['ft²/h', 'ft²/min', 'cfm/in'],
    metric: ['m²/h', 'm²/min', 'm²/s', 'mm²/s'],
  }),
  'm³/s': listing('flow', {
    imperial: ['cfm', 'gal/min', 'gal/h'],
    metric: ['m³/h', 'L/min', 'L/s', 'mL/s', 'mL/min', 'm³/min', 'm³/s'],
  }),
  'm/s': listing('speed', {
    imperial: ['ft/h', 'ft/min', 'in/min', 'ft/s', 'mi/h', 'mil/h'],
    metric: ['m/h', 'm/min', 'mm/min', 'm/s', 'km/h', 'µm/h'],
  }),
  s: listing('duration', { both: ['min', 'h', 'd', 's', 'week'] }),
  's/m²': listing('time-per-area', {
    imperial: ['h/1000 ft²', 'h/ft²', 'min/ft²'],
    metric: ['h/100 m²', 'h/m²', 'min/m²', 's/m²'],
  }),
  '1/s': listing('frequency', { both: ['1/h', '1/min', '1/s', '1/d'] }),
  kg: listing('mass', { imperial: ['lb', 'oz(av)', 'ton(US)'], metric: ['kg', 'g', 'mg', 'µg', 't'] }),
  'kg/m³': listing('density', {
    imperial: ['lb/gal', 'lb/ft³', 'lb/yd³', 'lb/gal(imp)'],
    metric: ['g/L', 'kg/L', 'kg/m³', 'g/cm³', 'g/mL', 'mg/m³', 'µg/m³'],
  }),
  'kg/m²': listing('area-mass', {
    imperial: ['lb/ft²', 'lb/100 ft²', 'lb/1000 ft²', 'lb/yd²', 'oz(av)/ft²'],
    metric: ['kg/m²', 'g/m²'],
  }),
  'kg/mol': listing('molar-mass', { both: ['g/mol', 'kg/mol'] }),
  'kg/s': listing('mass-rate', {
    imperial: ['lb/h', 'lb/min'],
    metric: ['kg/h', 'kg/min', 'g/h', 'g/min', 'g/s', 'kg/s'],
  }),
  'kg/(m² s)': listing('emission', {
    imperial: ['lb/1000 ft²·24 h'],
    metric: ['g/(m²·24 h)', 'g/(m²·h)', 'µg/(s m²)', 'kg/(m² s)'],
  }),
  mol: listing('amount', { both: ['mol', 'mmol'] }),
  N: listing('force', { imperial: ['lbf', 'kip'], metric: ['kN', 'N', 'MN', 'kgf'] }),
  Pa: listing('stress', {
    imperial: ['psi', 'ksi', 'lbf/ft²', 'inHg', 'inH₂O'],
    metric: ['MPa', 'kPa', 'hPa', 'Pa', 'N/mm²', 'mbar', 'bar', 'GPa', 'mmHg', 'kgf/cm²'],
  }),
  'Pa/s': listing('stress-rate', { imperial: ['psi/s', 'psi/min'], metric: ['MPa/s', 'kPa/s', 'Pa/s', 'MPa/min'] }),
  'N m': listing('torque', { imperial: ['ft lbf', 'in lbf'], metric: ['N m', 'kN m'] }),
  J: listing('energy', { imperial: ['Btu'], metric: ['J', 'kJ', 'MJ', 'kWh', 'Wh'] }),
  'J/mol': listing('energy-per-mole', { both: ['kJ/mol', 'J/mol'] }),
  'J/(kg K)': listing('specific-heat', { imperial: ['Btu/(lb °F)'], metric: ['kJ/(kg K)', 'J/(kg K)', 'J/(g K)'] }),
  'J/K': listing('heat-capacity', { imperial: ['Btu/°F'], metric: ['J/K', 'kJ/K'] }),
  W: listing('power', { both: ['W', 'kW'], imperial: ['hp', 'Btu/h'] }),
  'W/m²': listing('heat-flow', { imperial: ['Btu/(h ft²)'], metric: ['W/m²'] }),
  'W/(m K)': listing('conductivity', { imperial: ['Btu/(h ft °F)'], metric: ['W/(m K)'] }),
  'W/(m² K)': listing('heat-transfer', { imperial: ['Btu/(h ft² °F)'], metric: ['W/(m² K)'] }),
  V: listing('voltage', { both: ['V', 'kV', 'mV'] }),
  A: listing('current', { both: ['A', 'mA'] }),
  K: listing('temperature-difference', { imperial: ['F°'], metric: ['K'] }),
  'K/s': listing('temperature-rate', { imperial: ['°F/h', '°F/min'], metric: ['K/h', 'K/min', 'K/s'] }),
  '1/K': listing('expansion', { imperial: ['1/°F'], metric: ['1/K'] }),
  '°C': listing('temperature', { imperial: ['°F'], metric: ['°C'] }),
  rad: listing('angle', { both: ['°', 'rad'] }),
};

export const isMeasured = (unit: Unit): unit is MeasuredUnit => Object.hasOwn(LISTED, unit);
