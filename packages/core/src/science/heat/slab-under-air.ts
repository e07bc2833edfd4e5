import { formula } from '../../kernel/formula.ts';
import { conduction } from './conduction.ts';
import { SHUT_FILMS } from './exposure.ts';
import { heatGrid } from './grid.ts';
import { slabOnGround } from './materials.ts';
import { STEP } from './time-steps.ts';

const HOUR = 3600;

/**
 * The slab's surface under a run of hourly air temperatures in a shut building, the same conduction that the whole
 * day is worked out with. Sun, sky, doors, wind and rain are what the day adds.
 */
export const slabUnderAir = formula({
  id: 'heat/slab-under-air',
  says: 'Temperature of a slab’s surface, hour by hour, under the air over it',
  equation:
    'ρ c ∂T/∂τ = ∂/∂z (k ∂T/∂z); at the top −k ∂T/∂z = film · (air − T), at 5 m T = ground; start: first air at the top, ground below',
  takes: { airTemperatures: '°C[]', slabThickness: 'm', groundTemperature: '°C' },
  gives: '°C[]',
  holds: { airTemperatures: [-30, 45], slabThickness: [0.05, 0.5], groundTemperature: [-5, 30] },
  refuses: { airTemperatures: [-80, 90], slabThickness: [0.025, 1.5], groundTemperature: [-40, 60] },
  source: 'incropera-conduction',
  notes:
    'Finite volumes, backward Euler at 5 minutes. The start is forgotten after about ten days. The series of a plan comes from the same run with the sun, the sky, open doors and the readings on the slab fitted in.',
  noOutsideRow:
    'Checked where the conduction is: against the closed forms of a half-space after a step and of a periodic surface.',
  shows: 'temperature',
  compute: ({ airTemperatures, slabThickness, groundTemperature }) => {
    const slab = conduction(heatGrid(slabOnGround(slabThickness, 0)), 'fixed', groundTemperature);
    slab.surface = airTemperatures[0] ?? groundTemperature;
    const balance = {
      absorbed: 0,
      airTemperature: slab.surface,
      filmFloorWarmer: SHUT_FILMS.warmer,
      filmFloorCooler: SHUT_FILMS.cooler,
      emissivity: 0,
      skyLongWave: 0,
      skyView: 0,
      roomTemperature: 0,
      wet: 0,
      vapour: 0,
    };
    return airTemperatures.map((air, hour) => {
      const before = airTemperatures[hour - 1] ?? air;
      for (let step = 1; step <= HOUR / STEP; step++) {
        balance.airTemperature = before + ((air - before) * step * STEP) / HOUR;
        slab.step(STEP, balance, groundTemperature);
      }
      return slab.surface;
    });
  },
});
