import { saturationPressureAt } from '../air/saturation.ts';
import { STANDARD_PRESSURE } from '../constants.ts';
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from './constants.ts';

/**
 * What a floor's surface exchanges with its surroundings at one moment.
 *
 *   q(Ts) = absorbed + film · (Ta − Ts) + emissivity · [skyView · sky + (1 − skyView) · σ Troom⁴ − σ Ts⁴]
 *           − wet · film · (es(Ts) − vapour) / γ
 *
 * Positive into the slab, W/m². Indoors the film coefficient is the combined one (convection and radiation together),
 * `emissivity` and `wet` are 0. The last term is the evaporation of a wetted surface: heat and vapour cross the same
 * film (Lewis), γ is the psychrometric constant.
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
  /** Share of the surface that is wet, 0-1. */
  wet: number;
  /** Vapour pressure of the air, Pa. */
  vapour: number;
}

/** Psychrometric constant at sea level, Pa/K: cp · p / (0.622 · L), with cp 1006 J/(kg K) and L 2.45 MJ/kg. */
export const PSYCHROMETRIC = (1006 * STANDARD_PRESSURE) / (0.622 * 2.45e6);
/** Heat that evaporates a metre of water over a square metre, J/m³. */
const LATENT_VOLUME = 2.45e6 * 1000;

/** Water that leaves a surface of the given temperature, m/s; negative when dew settles. */
export const evaporationOf = (balance: SurfaceBalance, surface: number): number => {
  const film = surface > balance.airTemperature ? balance.filmFloorWarmer : balance.filmFloorCooler;
  return (balance.wet * film * (saturationPressureAt(surface) - balance.vapour)) / PSYCHROMETRIC / LATENT_VOLUME;
};

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
  wet: 0,
  vapour: 0,
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
  const { absorbed, airTemperature, filmFloorWarmer, filmFloorCooler, emissivity, wet } = balance;
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
    let excess = incoming + film * (airTemperature - surface) - radiantSlope * kelvin - down * surface;
    let slope = film + 4 * radiantSlope + down;
    if (wet > 0) {
      const saturated = saturationPressureAt(surface);
      const perKelvin = (wet * film) / PSYCHROMETRIC;
      excess -= perKelvin * (saturated - balance.vapour);
      // d ln(es)/dT is about 5300/T² for water: near enough for a Newton step.
      slope += (perKelvin * saturated * 5300) / (kelvin * kelvin);
    }
    const move = excess / slope;
    surface += move;
    if (move < SETTLED && move > -SETTLED) break;
  }
  return surface;
};
