import { formula } from '../../kernel/formula.ts';
import { contactTemperature, penetrationDepth } from './closed-forms.ts';
import { berdahlMartin, waltonSky } from './sky.ts';

const material = { conductivity: 'W/(m K)', density: 'kg/m³', heatCapacity: 'J/(kg K)' } as const;
const real = { conductivity: [0.05, 5], density: [200, 4000], heatCapacity: [400, 4200] } as const;
const possible = { conductivity: [1e-3, 500], density: [1, 25_000], heatCapacity: [10, 20_000] } as const;

export const dailyDepth = formula({
  id: 'heat/daily-depth',
  says: 'Depth at which the swing of one day has fallen to 37 % of the surface’s',
  equation: '√(period · conductivity / (π · density · heatCapacity))',
  takes: { ...material, period: 's' },
  gives: 'm',
  holds: { ...real, period: [3600, 4e7] },
  refuses: { ...possible, period: [1, 1e10] },
  defaults: { period: 86_400 },
  source: 'incropera-conduction',
  notes: 'About 0.14 m in concrete: a slab of 100 mm feels the day through and through.',
  shows: 'small-length',
  inputShows: { period: 'duration' },
  compute: ({ period, ...of }) => penetrationDepth(of, period),
});

export const resinOnSlab = formula({
  id: 'heat/contact-temperature',
  says: 'Temperature at which fresh resin and slab meet in the first moments',
  equation: '(e1 · slabTemperature + e2 · resinTemperature) / (e1 + e2), e = √(conductivity · density · heatCapacity)',
  takes: { slabTemperature: '°C', resinTemperature: '°C', ...material },
  gives: '°C',
  holds: { ...real, slabTemperature: [-10, 60], resinTemperature: [0, 60] },
  refuses: { ...possible, slabTemperature: [-60, 95], resinTemperature: [-60, 95] },
  defaults: { conductivity: 1.4, density: 2300, heatCapacity: 880 },
  source: 'incropera-conduction',
  notes:
    'The defaults are stone-mix concrete; the resin is taken with 0.2 W/(m K), 1100 kg/m³ and 1800 J/(kg K), from memory. The slab wins: warm resin on a cold slab is a cold film at once.',
  shows: 'temperature',
  compute: ({ slabTemperature, resinTemperature, ...concrete }) =>
    contactTemperature(concrete, slabTemperature, RESIN, resinTemperature),
});

/** Coating resin, from memory. */
const RESIN = { conductivity: 0.2, density: 1100, heatCapacity: 1800 };

export const clearSkyEmissivity = formula({
  id: 'heat/sky-emissivity/berdahl-martin-1984',
  says: 'Emissivity of a clear sky by the dew point at the ground',
  equation: '0.711 + 0.56 · dewPoint/100 + 0.73 · (dewPoint/100)²',
  takes: { dewPoint: '°C' },
  gives: '1',
  holds: { dewPoint: [-20, 30] },
  refuses: { dewPoint: [-60, 60] },
  source: 'berdahl-martin-1984',
  notes:
    'Mean of a measured winter day 17 W/m² too low; its rival by Walton 9 too high. Readings on the slab settle it.',
  compute: ({ dewPoint }) => berdahlMartin(dewPoint),
});

export const waltonSkyEmissivity = formula({
  id: 'heat/sky-emissivity/walton-1983',
  says: 'Emissivity of the sky by dew point and cloud',
  equation:
    '(0.787 + 0.764 · ln(dewPoint/273)) · (1 + 0.0224 N − 0.0035 N² + 0.00028 N³), dewPoint in kelvin, N tenths of cloud',
  takes: { dewPoint: '°C', cloudShare: '1' },
  gives: '1',
  holds: { dewPoint: [-20, 30], cloudShare: [0, 1] },
  refuses: { dewPoint: [-60, 60], cloudShare: [0, 1] },
  source: 'walton-1983',
  inputShows: { cloudShare: 'share' },
  compute: ({ dewPoint, cloudShare }) => waltonSky(dewPoint, cloudShare),
});
