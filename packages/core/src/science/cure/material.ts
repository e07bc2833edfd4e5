import { formula } from '../../kernel/formula.ts';

/** Surface of an upright pail by its content: a cylinder a little taller than wide, V in m³. */
const SURFACE_SHARE = 5.56;

export const materialTemperature = formula({
  id: 'cure/material-temperature',
  says: 'Temperature of resin in its pail some time after it was brought into other air',
  equation:
    'air + (stored − air) · exp(−time · film · surface / (volume · density · heatCapacity)), surface = 5.56 · volume^(2/3)',
  takes: {
    storedTemperature: '°C',
    airTemperature: '°C',
    time: 's',
    volume: 'm³',
    density: 'kg/m³',
    heatCapacity: 'J/(kg K)',
    filmCoefficient: 'W/(m² K)',
  },
  gives: '°C',
  holds: {
    storedTemperature: [0, 40],
    airTemperature: [0, 45],
    time: [0, 5e5],
    volume: [1e-4, 0.25],
    density: [800, 2000],
    heatCapacity: [1000, 2500],
    filmCoefficient: [4, 20],
  },
  refuses: {
    storedTemperature: [-40, 90],
    airTemperature: [-40, 90],
    time: [0, 1e9],
    volume: [1e-6, 10],
    density: [100, 20_000],
    heatCapacity: [100, 10_000],
    filmCoefficient: [0.1, 200],
  },
  defaults: { density: 1100, heatCapacity: 1800, filmCoefficient: 8 },
  source: 'lumped-cooling',
  notes:
    'The pail is taken as of one temperature throughout, which flatters it by a few kelvin in its middle. A 20 L pail needs about four hours to come half of the way: material in a cold van overnight is cold material all morning.',
  noOutsideRow:
    'No published time for a pail was found; the law is the textbook’s lumped capacity, checked against its own half-life in the tests.',
  shows: 'temperature',
  compute: ({ storedTemperature, airTemperature, time, volume, density, heatCapacity, filmCoefficient }) => {
    const rate = (filmCoefficient * SURFACE_SHARE * volume ** (2 / 3)) / (volume * density * heatCapacity);
    return airTemperature + (storedTemperature - airTemperature) * Math.exp(-rate * time);
  },
});
