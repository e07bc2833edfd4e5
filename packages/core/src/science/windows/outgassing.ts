import { formula } from '../../kernel/formula.ts';
import { saturationPressureAt } from '../air/saturation.ts';
import { STANDARD_PRESSURE, ZERO_CELSIUS } from '../constants.ts';

const celsius = { startTemperature: '°C', endTemperature: '°C' } as const;
const slabRange = { startTemperature: [-10, 60], endTemperature: [-10, 60] } as const;
const possible = { startTemperature: [-60, 95], endTemperature: [-60, 95] } as const;

export const dryPoreExpansion = formula({
  id: 'outgassing/dry-expansion',
  says: 'Share by which dry air in the pores of concrete grows as the slab warms',
  equation: '(endTemperature − startTemperature) / startTemperature, in kelvin below the bar',
  takes: celsius,
  gives: '1',
  holds: slabRange,
  refuses: possible,
  source: 'ideal-gas',
  notes: 'At constant pressure. Negative when the slab cools and draws air in.',
  shows: 'share',
  compute: ({ startTemperature, endTemperature }) =>
    (endTemperature - startTemperature) / (startTemperature + ZERO_CELSIUS),
});

export const moistPoreExpansion = formula({
  id: 'outgassing/moist-expansion',
  says: 'Share by which saturated air in the pores grows as the slab warms',
  equation: 'V ∝ T / (pressure − saturationPressure(T))',
  takes: { ...celsius, pressure: 'Pa' },
  gives: '1',
  holds: { ...slabRange, pressure: [60_000, 110_000] },
  refuses: { ...possible, pressure: [50_000, 120_000] },
  defaults: { pressure: STANDARD_PRESSURE },
  source: 'ideal-gas',
  notes: 'Half again as much as dry air at room temperature: the water evaporates into the pore as it warms.',
  shows: 'share',
  compute: ({ startTemperature, endTemperature, pressure }) => {
    const volume = (t: number): number => (t + ZERO_CELSIUS) / (pressure - saturationPressureAt(t));
    return volume(endTemperature) / volume(startTemperature) - 1;
  },
});

export const sealedPorePressure = formula({
  id: 'outgassing/sealed-pressure',
  says: 'Pressure that builds up in a sealed dry pore as the slab warms',
  equation: 'pressure · (endTemperature − startTemperature) / startTemperature, in kelvin below the bar',
  takes: { ...celsius, pressure: 'Pa' },
  gives: 'Pa',
  holds: { ...slabRange, pressure: [60_000, 110_000] },
  refuses: { ...possible, pressure: [50_000, 120_000] },
  defaults: { pressure: STANDARD_PRESSURE },
  source: 'ideal-gas',
  shows: 'pressure',
  compute: ({ startTemperature, endTemperature, pressure }) =>
    (pressure * (endTemperature - startTemperature)) / (startTemperature + ZERO_CELSIUS),
});

export const expelledAir = formula({
  id: 'outgassing/expelled-air',
  says: 'Air that a square metre of slab breathes out as its upper layer warms (metres: m³ per m²)',
  equation: 'airShare · depth · rise / temperature, in kelvin below the bar',
  takes: { airShare: '1', depth: 'm', temperature: '°C', rise: 'K' },
  gives: 'm',
  holds: { airShare: [0, 0.2], depth: [0, 0.3], temperature: [-10, 60], rise: [-20, 20] },
  refuses: { airShare: [0, 1], depth: [0, 10], temperature: [-60, 95], rise: [-200, 200] },
  source: 'ideal-gas',
  notes:
    'The air share of concrete, 2 to 8 % of its volume, is the uncertain part: the volume ranks hours, it predicts no bubbles.',
  compute: ({ airShare, depth, temperature, rise }) => (airShare * depth * rise) / (temperature + ZERO_CELSIUS),
});

/** Warming that breathes out as much air as a change of the barometer (Pa), at a temperature in °C, K. */
export const barometricRiseAt = (pressureChange: number, temperature: number, pressure: number): number =>
  (-pressureChange * (temperature + ZERO_CELSIUS)) / pressure;

export const barometricRise = formula({
  id: 'outgassing/barometric-rise',
  says: 'Warming of the slab that breathes out as much air as a change of the barometer',
  equation: '−pressureChange · temperature / pressure, temperature in kelvin',
  takes: { pressureChange: 'Pa', temperature: '°C', pressure: 'Pa' },
  gives: 'K',
  holds: { pressureChange: [-5000, 5000], temperature: [-10, 60], pressure: [60_000, 110_000] },
  refuses: { pressureChange: [-50_000, 50_000], temperature: [-60, 95], pressure: [50_000, 120_000] },
  defaults: { pressure: STANDARD_PRESSURE },
  source: 'ideal-gas',
  notes: 'A fall counts as warming: about 0.29 K for each hPa.',
  shows: 'difference',
  inputShows: { pressureChange: 'pressure', pressure: 'pressure' },
  compute: ({ pressureChange, temperature, pressure }) => barometricRiseAt(pressureChange, temperature, pressure),
});
