import { climate } from '@slabwright/core';

/**
 * The slab method judged on measured ground: hourly weather and infrared surface temperature of a USCRN station.
 *
 * Each judged day is predicted from ten days of weather and the readings of the day before, with that day's measured
 * weather (so no forecast error), and set beside two baselines: the same hour yesterday, and the air itself. The
 * station's surface is natural semi-arid ground seen by an infrared thermometer, not a concrete slab: it swings 40 K a
 * day where a garage slab swings 5, so the ratios carry over, the kelvins do not.
 */
const { heat, weatherScience } = climate;

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const SPIN_UP = 10 * DAY;
/** Local standard time of the station, hours behind UTC. */
const ZONE = 7;
const PLACE = { latitude: 40.24, longitude: -108.97, elevation: 1847 };

/**
 * Ground of the station: found on the 2018 file alone (search over all days of that year); the year judged is 2019.
 */
const GROUND: climate.heat.SlabSetup = {
  layers: [{ thickness: heat.GROUND_DEPTH, conductivity: 0.06, density: 810, heatCapacity: 1000 }],
  ground: { mean: 4.3, amplitude: 13, coldestDay: 25 },
  groundShift: 0,
  exposure: {
    kind: 'patio',
    film: 11.4,
    filmScale: 1,
    stableShare: 0.36,
    absorptance: 0.74,
    emissivity: 0.99,
    skyView: 1,
    holdsWater: 0.0028,
  },
};
const PRIORS = { film: 0.35, conductivity: 0.2, absorptance: 0.22, ground: 2 };

/** Local hours whose hourly mean is read, for each number of readings. */
const READING_HOURS: Readonly<Record<number, readonly number[]>> = {
  0: [],
  3: [8, 12, 16],
  6: [7, 9, 11, 13, 16, 20],
};

export interface Judged {
  readonly method: string;
  /** Root mean square error of the next day's hours, K. */
  readonly error: number;
  /** The same on days without rain on them or the two before. */
  readonly dry: number;
  /** Over the error of "same hour yesterday" and of "surface = air" on the same days. */
  readonly toYesterday: number;
  readonly toAir: number;
}

export interface GroundJudgement {
  readonly year: number;
  readonly days: number;
  readonly dryDays: number;
  readonly rows: readonly Judged[];
}

interface Station {
  readonly series: climate.weatherScience.WeatherSeries;
  /** Measured hourly mean of the surface by the end of the hour, ms. */
  readonly surface: ReadonlyMap<number, number>;
  readonly air: ReadonlyMap<number, number>;
  readonly rain: ReadonlyMap<number, number>;
  /** Hours whose weather and surface are all measured. */
  readonly complete: ReadonlySet<number>;
}

/** Reads a reduced USCRN hourly file; missing is −99 or −9999, flag 0 is good. */
export const readStation = (csv: string): Station => {
  const [heading, ...lines] = csv.trim().split(/\r?\n/);
  const names = (heading ?? '').split(',');
  const rows: climate.weatherScience.WeatherRow[] = [];
  const surface = new Map<number, number>();
  const air = new Map<number, number>();
  const rain = new Map<number, number>();
  const complete = new Set<number>();
  for (const line of lines) {
    const cells = line.split(',');
    const cell = (name: string): string => cells[names.indexOf(name)] ?? '';
    const measured = (name: string, flag?: string): number | undefined => {
      const value = Number(cell(name));
      return value > -90 && (flag === undefined || cell(flag) === '0') ? value : undefined;
    };
    const date = cell('UTC_DATE');
    const time = Date.UTC(+date.slice(0, 4), +date.slice(4, 6) - 1, +date.slice(6, 8), +cell('UTC_TIME').slice(0, 2));
    const values = {
      airTemperature: measured('T_HR_AVG'),
      relativeHumidity: measured('RH_HR_AVG', 'RH_HR_AVG_FLAG'),
      radiation: measured('SOLARAD', 'SOLARAD_FLAG'),
      rain: measured('P_CALC'),
    };
    const seen = measured('SUR_TEMP', 'SUR_TEMP_FLAG');
    if (seen !== undefined) surface.set(time, seen);
    if (values.airTemperature !== undefined) air.set(time, values.airTemperature);
    rain.set(time, values.rain ?? 0);
    if (seen !== undefined && Object.values(values).every((each) => each !== undefined)) complete.add(time);
    rows.push({
      time,
      ...(values.airTemperature === undefined ? {} : { airTemperature: values.airTemperature }),
      ...(values.relativeHumidity === undefined
        ? {}
        : { relativeHumidity: Math.max(1, values.relativeHumidity) / 100 }),
      ...(values.radiation === undefined ? {} : { radiation: values.radiation }),
      ...(values.rain === undefined ? {} : { rain: values.rain / 1000 }),
    });
  }
  const built = weatherScience.buildWeather(
    rows,
    { kind: 'measured', name: 'uscrn', place: PLACE },
    { longestFill: 6, hourMeans: true },
  );
  if (built.series === undefined) throw new Error(`no series: ${built.issues.map((each) => each.code).join(', ')}`);
  return { series: built.series, surface, air, rain, complete };
};

/** Errors collected as sums of squares, all days and dry ones. */
class Tally {
  private sum = 0;
  private count = 0;
  private drySum = 0;
  private dryCount = 0;
  add(error: number, dry: boolean): void {
    this.sum += error * error;
    this.count++;
    if (!dry) return;
    this.drySum += error * error;
    this.dryCount++;
  }
  get all(): number {
    return Math.sqrt(this.sum / this.count);
  }
  get dry(): number {
    return Math.sqrt(this.drySum / this.dryCount);
  }
}

/** Every third day from 15 May to 30 September with complete data: readings on that day, prediction of the next. */
export const judgeGround = (
  csv: string,
  year: number,
  setup = GROUND,
  priors: Record<string, number> = PRIORS,
): GroundJudgement => {
  const station = readStation(csv);
  const methods = Object.entries(READING_HOURS).map(([count, hours]) => ({
    name: `method, ${count} readings`,
    hours,
    tally: new Tally(),
  }));
  const yesterday = new Tally();
  const air = new Tally();
  let days = 0;
  let dryDays = 0;
  for (let day = Date.UTC(year, 4, 15, ZONE); day <= Date.UTC(year, 8, 30, ZONE); day += 3 * DAY) {
    const hours = Array.from({ length: 48 }, (_, h) => day + (h + 1) * HOUR);
    if (!hours.every((time) => station.complete.has(time)) || day - SPIN_UP < station.series.start) continue;
    const dry = [...hours, ...hours.map((time) => time - DAY)].every((time) => (station.rain.get(time) ?? 0) === 0);
    days++;
    if (dry) dryDays++;
    const measured = (time: number): number => station.surface.get(time) as number;
    const forcing = heat.forcingOf(station.series, day - SPIN_UP, day + 2 * DAY);
    for (const method of methods) {
      // An hourly mean belongs to the middle of its hour.
      const readings = method.hours.map((h) => ({
        time: day + h * HOUR - HOUR / 2,
        temperature: measured(day + h * HOUR),
      }));
      const { setup: fitted } = heat.calibrate({ setup, forcing, doors: [], readings, priors });
      const run = heat.runSlab(fitted, forcing, [], day + DAY);
      for (let h = 1; h <= 24; h++) {
        let mean = 0;
        for (let m = (h - 1) * 12 + 1; m <= h * 12; m++) mean += (run.surface[m] as number) / 12;
        method.tally.add(mean - measured(day + DAY + h * HOUR), dry);
      }
    }
    for (let h = 1; h <= 24; h++) {
      const time = day + DAY + h * HOUR;
      yesterday.add(measured(time - DAY) - measured(time), dry);
      air.add((station.air.get(time) as number) - measured(time), dry);
    }
  }
  const row = (method: string, tally: Tally): Judged => ({
    method,
    error: tally.all,
    dry: tally.dry,
    toYesterday: tally.all / yesterday.all,
    toAir: tally.all / air.all,
  });
  return {
    year,
    days,
    dryDays,
    rows: [
      ...methods.map(({ name, tally }) => row(name, tally)),
      row('same hour yesterday', yesterday),
      row('surface = air', air),
    ],
  };
};

export const judgementTable = ({ year, days, dryDays, rows }: GroundJudgement): string =>
  [
    `Next-day surface temperature of measured natural ground (not a slab), ${year}: ${days} days, ${dryDays} of them dry`,
    'method                 error, K   dry days, K   to yesterday   to air',
    ...rows.map(({ method, error, dry, toYesterday, toAir }) =>
      [
        method.padEnd(22),
        error.toFixed(2).padStart(8),
        dry.toFixed(2).padStart(13),
        toYesterday.toFixed(2).padStart(14),
        toAir.toFixed(2).padStart(8),
      ].join(' '),
    ),
  ].join('\n');
