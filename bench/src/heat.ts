import { climate } from '@slabwright/core';
import { medianOf, type Row } from './measure.ts';

const { cure, heat, weatherScience, windows } = climate;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const START = Date.parse('2026-05-01T07:00:00Z');

/** Slab heat, calibration, cure and the search of windows for a garage, ten days of spin-up before three or seven ahead. */
export function heatRows(): readonly Row[] {
  const rows = Array.from({ length: 24 * 18 }, (_, i) => {
    const wave = Math.sin((2 * Math.PI * (i - 9)) / 24);
    return {
      time: START + i * HOUR,
      airTemperature: 16 + 6 * wave,
      relativeHumidity: 0.65 - 0.2 * wave,
      cloud: 0.3,
      wind: 2,
      rain: 0,
      pressure: 101_325,
    };
  });
  const place = { latitude: 40, longitude: -105, elevation: 1600 };
  const { series } = weatherScience.buildWeather(rows, { kind: 'forecast', name: 'bench', place, issued: START });
  if (series === undefined) throw new Error('no series');
  const setup = {
    layers: heat.slabOnGround(0.1, 0.1),
    ground: heat.roughAnnualWave(40, 1600),
    groundShift: 0,
    exposure: heat.GARAGE,
  };
  const doors = Array.from({ length: 17 }, (_, day) => ({
    from: START + day * DAY + 8 * HOUR,
    to: START + day * DAY + 17 * HOUR,
  }));
  const near = heat.forcingOf(series, START, START + 13 * DAY);
  const slab = medianOf(() => heat.runSlab(setup, near, doors, START + 10 * DAY), 40);

  const far = heat.forcingOf(series, START, START + 17 * DAY);
  const readings = [7, 9, 11, 13, 16, 20].map((hour) => ({
    time: START + 9 * DAY + hour * HOUR,
    temperature: 15 + 3 * Math.sin((2 * Math.PI * (hour - 10)) / 24),
  }));
  const fit = medianOf(() => heat.calibrate({ setup, forcing: far, doors, readings }), 15);
  const calibration = heat.calibrate({ setup, forcing: far, doors, readings });
  const now = START + 10 * DAY;
  const band = medianOf(() => heat.forecastSlab(calibration, far, doors, now, now, heat.FORECAST_ERRORS), 15);
  const forecast = heat.forecastSlab(calibration, far, doors, now, now, heat.FORECAST_ERRORS);
  const conditions = windows.conditionsOf(series, forecast);
  const coat = {
    laying: 3600,
    open: cure.cureLaw(
      [
        { temperature: 10, time: 3600 },
        { temperature: 20, time: 1800 },
      ],
      'film',
    ),
    touch: cure.cureLaw(
      [
        { temperature: 10, time: 43_200 },
        { temperature: 20, time: 21_600 },
      ],
      'film',
    ),
    sensitive: 21_600,
    marginRule: windows.THREE_KELVIN,
    slab: [8, 30] as const,
    air: [8, 32] as const,
    humidity: [undefined, 0.85] as const,
    porous: true,
    risingStops: false,
    outdoors: false,
    prepared: now,
  };
  // A copy of the conditions is one that nothing is remembered of.
  const search = medianOf(() => windows.findWindows({ ...conditions }, coat, [], now, START + 16 * DAY), 15);
  const row = (name: string, time: number, most: number | undefined): Row => ({
    name,
    figure: `${time.toFixed(1)} ms`,
    budget: most === undefined ? '' : `≤ ${most} ms`,
    holds: most === undefined ? undefined : time <= most,
  });
  return [
    row('13 days of slab heat, door opened daily', slab, 6),
    row('calibration to six readings', fit, 300),
    row('a week of slab with its band', band, undefined),
    row('windows of one coat, 577 starts', search, undefined),
  ];
}
