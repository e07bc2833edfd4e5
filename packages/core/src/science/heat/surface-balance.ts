import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from './constants.ts';

/**
 * What a floor's surface exchanges with its surroundings at one moment.
 *
 *   q(Ts) = absorbed + film · (Ta − Ts) + emissivity · [skyView · sky + (1 − skyView) · σ Troom⁴ − σ Ts⁴]
 *
 * Positive into the slab, W/m². Indoors the film coefficient is the combined one (convection and radiation together)
 * and `emissivity` is 0. Evaporation from a wet surface is not part of it: rain is flagged by the caller.
 */
export interface SurfaceBalance {
  /** Absorbed sun, W/m². */
  absorbed: number;
  /** °C */
  airTemperature: number;
  /** Film coefficient when the floor is warmer than the air (heat rises), W/(m² K). */
  filmFloorWarmer: number;
  /** Film coefficient when the floor is cooler than the air, W/(m² K). */
  filmFloorCooler: number;
  /** 0 where the film coefficient already carries the radiation. */
  emissivity: number;
  /** Long-wave radiation coming down from the sky, W/m². */
  skyLongWave: number;
  /** Share of the hemisphere that is sky, 0-1. */
  skyView: number;
  /** What fills the rest of the hemisphere, °C. */
  roomTemperature: number;
}

/** A balance with only a film: the floor of a closed room. */
export const filmOnly = (airTemperature: number, film: number, absorbed = 0): SurfaceBalance => ({
  absorbed,
  airTemperature,
  filmFloorWarmer: film,
  filmFloorCooler: film,
  emissivity: 0,
  skyLongWave: 0,
  skyView: 0,
  roomTemperature: airTemperature,
});

/** Newton stops when a pass moves the surface by less than this, K. */
const SETTLED = 1e-9;
const MOST_PASSES = 12;

/**
 * Surface temperature at which the balance sends down exactly what the slab takes, °C.
 *
 * The slab takes `down · Ts − held`, W/m². The balance falls and the slab's demand rises with Ts, so there is one
 * solution; Newton reaches it in two or three passes because only the fourth power bends.
 */
export const surfaceTemperatureOf = (balance: SurfaceBalance, down: number, held: number, start: number): number => {
  const { absorbed, airTemperature, filmFloorWarmer, filmFloorCooler, emissivity } = balance;
  let incoming = absorbed + held;
  if (emissivity > 0) {
    const room = balance.roomTemperature + ZERO_CELSIUS;
    const around = STEFAN_BOLTZMANN * room * room * room * room;
    incoming += emissivity * (balance.skyView * balance.skyLongWave + (1 - balance.skyView) * around);
  }
  let surface = start;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const film = surface > airTemperature ? filmFloorWarmer : filmFloorCooler;
    const kelvin = surface + ZERO_CELSIUS;
    const radiantSlope = emissivity * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin;
    const excess = incoming + film * (airTemperature - surface) - radiantSlope * kelvin - down * surface;
    const move = excess / (film + 4 * radiantSlope + down);
    surface += move;
    if (move < SETTLED && move > -SETTLED) break;
  }
  return surface;
};
