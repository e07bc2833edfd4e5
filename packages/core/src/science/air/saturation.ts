import table from '../../data/saturation-pressure.json' with { type: 'json' };
import { Refuse } from '../../kernel/refusal.ts';
import { ZERO_CELSIUS } from '../constants.ts';

/**
 * The one law of moist air: Hyland and Wexler's saturation pressure, over ice below the triple point and over water
 * above, and its inverses. Everything in this folder goes through here, so that a dew point and the humidity it came
 * from can never disagree.
 */
interface Curve {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  readonly g: number;
  readonly from: number;
  readonly to: number;
}

const ice: Curve = table.ice;
const water: Curve = table.water;

/** Triple point of water, °C: where the two curves are joined. */
export const TRIPLE_POINT = table.joined.temperature;
/** Range of the law, °C. */
export const COLDEST = table.ice.from;
export const HOTTEST = table.water.to;

/** Ratio of the molar masses of water and dry air in the humidity ratio. */
export const MOLAR_MASS_RATIO = 0.621945;

function logOf({ a, b, c, d, e, f, g }: Curve, celsius: number): number {
  const t = celsius + ZERO_CELSIUS;
  return a / t + b + t * (c + t * (d + t * (e + t * f))) + g * Math.log(t);
}

/** d(ln p)/dT, 1/K. */
function slopeOf({ a, c, d, e, f, g }: Curve, celsius: number): number {
  const t = celsius + ZERO_CELSIUS;
  return -a / (t * t) + c + t * (2 * d + t * (3 * e + t * 4 * f)) + g / t;
}

/** Saturation pressure of water vapour, Pa: over ice below 0.01 °C, over water above. */
export const saturationPressureAt = (celsius: number): number =>
  Math.exp(logOf(celsius < TRIPLE_POINT ? ice : water, celsius));

/** Pressure over ice at the triple point, Pa: above it nothing freezes out of the air. */
export const MOST_OVER_ICE = Math.exp(logOf(ice, TRIPLE_POINT));

/** Pressure of the vapour in air, Pa, from its relative humidity. */
export const vapourPressureOf = (airTemperature: number, relativeHumidity: number): number =>
  relativeHumidity * saturationPressureAt(airTemperature);

/**
 * The temperature at which a curve reaches a pressure. Newton's step on ln p, which is almost straight in 1/T, held
 * inside a bracket that halves when the step would leave it: it cannot diverge and always ends.
 */
function inverseOf(curve: Curve, pressure: number, least: number, most: number): number {
  const wanted = Math.log(pressure);
  let [low, high] = [least, most];
  if (logOf(curve, low) > wanted) throw new Refuse('air-too-dry-for-dew-point');
  let at = (low + high) / 2;
  for (let pass = 0; pass < 100; pass++) {
    const over = logOf(curve, at) - wanted;
    if (over > 0) high = at;
    else low = at;
    const step = at - over / slopeOf(curve, at);
    const next = step > low && step < high ? step : (low + high) / 2;
    if (Math.abs(next - at) <= 1e-11) return next;
    at = next;
  }
  return at;
}

/** Dew point over liquid water, °C, of a vapour pressure in Pa. Below 0 °C the water is supercooled. */
export const dewPointOf = (vapourPressure: number): number => inverseOf(water, vapourPressure, COLDEST, HOTTEST + 1);

/** Frost point over ice, °C, or undefined when the vapour would not freeze out but condense. */
export const frostPointOf = (vapourPressure: number): number | undefined =>
  vapourPressure > MOST_OVER_ICE ? undefined : inverseOf(ice, vapourPressure, COLDEST - 30, TRIPLE_POINT);

/** Humidity ratio, kg of vapour per kg of dry air, of a vapour pressure at a total pressure, both in Pa. */
export function humidityRatioOf(vapourPressure: number, pressure: number): number {
  if (vapourPressure >= pressure) throw new Refuse('vapour-pressure-above-air-pressure', 'pressure');
  return (MOLAR_MASS_RATIO * vapourPressure) / (pressure - vapourPressure);
}

/** Vapour pressure, Pa, of a humidity ratio at a total pressure in Pa. */
export const vapourPressureOfRatio = (humidityRatio: number, pressure: number): number =>
  (pressure * humidityRatio) / (MOLAR_MASS_RATIO + humidityRatio);
