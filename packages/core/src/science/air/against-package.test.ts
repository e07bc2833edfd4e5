import psychrometrics from 'psychrolib';
import { beforeAll, describe, expect, test } from 'vitest';
import { evaluate } from '../../kernel/formula.ts';
import { dewPoint, frostPoint, humidityFromWetBulb, humidityRatio, saturationPressure, wetBulb } from './index.ts';

/**
 * Against a general psychrometrics package (psychrolib 1.1.1), which uses the same saturation law: agreement tells of
 * slips in our solving, not of the law. Its stated tolerance is 0.001 °C for what it solves by iteration.
 */
const ITERATION = 0.001;
const temperatures = Array.from({ length: 29 }, (_, i) => -20 + 2.5 * i);
const humidities = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const pressures = [80000, 90000, 101325, 105000];

beforeAll(() => psychrometrics.SetUnitSystem(psychrometrics.SI));

function* grid() {
  for (const airTemperature of temperatures)
    for (const relativeHumidity of humidities)
      for (const pressure of pressures) yield { airTemperature, relativeHumidity, pressure };
}

describe('against psychrolib over −20…50 °C, 5…100 %, 80…105 kPa', () => {
  test('saturation pressure is the same everywhere', () => {
    for (const temperature of temperatures) {
      const theirs = psychrometrics.GetSatVapPres(temperature);
      expect(evaluate(saturationPressure, { temperature }).value / theirs).toBeCloseTo(1, 12);
    }
  });

  test('its dew point is ours above 0.01 °C and our frost point below, because it inverts the ice curve there', () => {
    let [water, ice] = [0, 0];
    for (const { airTemperature, relativeHumidity } of grid()) {
      const theirs = psychrometrics.GetTDewPointFromRelHum(airTemperature, relativeHumidity);
      const law = theirs > 0.01 ? dewPoint : frostPoint;
      if (theirs > 0.01) water++;
      else ice++;
      expect(Math.abs(evaluate(law, { airTemperature, relativeHumidity }).value - theirs)).toBeLessThan(ITERATION);
    }
    expect([water, ice].every((count) => count > 100)).toBe(true);
  });

  test('humidity ratio', () => {
    for (const point of grid()) {
      const theirs = psychrometrics.GetHumRatioFromRelHum(point.airTemperature, point.relativeHumidity, point.pressure);
      expect(evaluate(humidityRatio, point).value / theirs).toBeCloseTo(1, 10);
    }
  });

  test('wet bulb, except at freezing, where a wick may be wet or iced', () => {
    let atFreezing = 0;
    for (const point of grid()) {
      const ours = evaluate(wetBulb, point).value;
      const theirs = psychrometrics.GetTWetBulbFromRelHum(point.airTemperature, point.relativeHumidity, point.pressure);
      // It bisects over both balances at once and so may take the iced wick where ours takes the wet one. The latent
      // heat of freezing, 329 kJ/kg on 4 to 5 g/kg of vapour, moves the reading by at most 0.9 K.
      if (Math.abs(ours) < 0.9 && Math.abs(theirs - ours) >= 2 * ITERATION) {
        atFreezing++;
        expect(ours).toBeGreaterThanOrEqual(0);
        expect(Math.abs(theirs - ours)).toBeLessThan(0.9);
      } else expect(Math.abs(theirs - ours)).toBeLessThan(2 * ITERATION);
    }
    expect(atFreezing).toBeLessThan(20);
  });

  test('humidity from the wet bulb', () => {
    for (const { airTemperature, pressure } of grid()) {
      for (const fall of [0, 0.5, 2, 4]) {
        const wetBulbTemperature = airTemperature - fall;
        if (Math.abs(wetBulbTemperature) < 0.01) continue; // It changes balance at 0 °C, we at the triple point.
        let ours: number;
        try {
          ours = evaluate(humidityFromWetBulb, { airTemperature, wetBulbTemperature, pressure }).value;
        } catch {
          continue; // Drier than dry air: we refuse, it answers its least humidity.
        }
        const theirs = psychrometrics.GetRelHumFromTWetBulb(airTemperature, wetBulbTemperature, pressure);
        if (theirs > 0.001) expect(ours / theirs).toBeCloseTo(1, 8);
      }
    }
  });
});

/** Magnus sets of the literature (constants from memory); the largest differences are own arithmetic. */
const MAGNUS = [
  ['Alduchov and Eskridge 1996', 17.625, 243.04, 0.035],
  ['Sonntag 1990', 17.62, 243.12, 0.045],
  ['Tetens form', 17.27, 237.7, 0.053],
  ['Buck 1981', 17.502, 240.97, 0.024],
] as const;

test.each(MAGNUS)('%s: the dew point differs by no more than it was found to', (_, a, b, most) => {
  let worst = 0;
  for (let airTemperature = 0.01; airTemperature <= 45; airTemperature += 1) {
    for (let relativeHumidity = 0.2; relativeHumidity <= 0.95; relativeHumidity += 0.05) {
      const g = Math.log(relativeHumidity) + (a * airTemperature) / (b + airTemperature);
      const ours = evaluate(dewPoint, { airTemperature, relativeHumidity }).value;
      worst = Math.max(worst, Math.abs((b * g) / (a - g) - ours));
    }
  }
  expect(worst).toBeLessThan(most + 0.001);
  expect(worst).toBeGreaterThan(most / 3);
});
