import type { Issue } from '../../kernel/issue.ts';
import { saturationPressureAt, vapourPressureOf } from '../air/saturation.ts';
import { type Built, buildWeather, type WeatherRow } from './build.ts';
import { LIMITS } from './limits.ts';
import { DAY_MS, HOUR_MS, type Place, type WeatherField } from './series.ts';

/** Weather typed by hand from any bulletin: five numbers a day. */
export interface TypedDay {
  /** Coldest and warmest air of the day, °C. */
  readonly coldest: number;
  readonly warmest: number;
  /** Relative humidity at the coldest hour, 0-1: from it the dew point, which is held all day. */
  readonly morningHumidity: number;
  /** m/s */
  readonly wind: number;
  /** Share of the sky that is cloud, 0-1. */
  readonly cloud: number;
}

/** Hours after local midnight at which air is usually coldest and warmest (common practice). */
const COLDEST_HOUR = 6;
const WARMEST_HOUR = 15;

/** Each number and the quantity whose limits it keeps. */
const QUANTITIES: readonly (readonly [keyof TypedDay, WeatherField])[] = [
  ['coldest', 'airTemperature'],
  ['warmest', 'airTemperature'],
  ['morningHumidity', 'relativeHumidity'],
  ['wind', 'wind'],
  ['cloud', 'cloud'],
];

/** Numbers no day has: outside what weather is, or the wrong way round. */
function issuesOf(day: TypedDay): readonly Issue[] {
  const issues = QUANTITIES.flatMap(([field, quantity]): readonly Issue[] => {
    const value = day[field];
    const { least, most, said } = LIMITS[quantity];
    if (value >= least && value <= most) return [];
    const percent = field === 'morningHumidity' && value > 1 && value <= 100;
    const code = percent ? 'weather-typed-looks-like-percent' : 'weather-typed-outside';
    return [{ code, path: ['weather', field], value: String(value), limits: said, names: { field } }];
  });
  if (issues.length > 0 || day.warmest >= day.coldest) return issues;
  return [
    {
      code: 'weather-warmest-below-coldest',
      path: ['weather', 'warmest'],
      value: `${day.warmest} °C`,
      limits: [`${day.coldest} °C`],
    },
  ];
}

/**
 * Days of hourly weather out of five numbers, the same every day.
 *
 * The air follows two half-cosines between the coldest hour and the warmest; water in the air stays constant, so that
 * the humidity falls as it warms. Rain is not known, so outdoor coats stay *not known*.
 *
 * @param midnight local midnight of the first day, ms since 1970
 * @param days 1 to 21
 */
export const typedWeather = (day: TypedDay, place: Place, midnight: number, days: number): Built => {
  const issues = issuesOf(day);
  if (issues.length > 0) return { issues };
  const rows: WeatherRow[] = [];
  const hours = Math.round((Math.min(21, Math.max(1, days)) * DAY_MS) / HOUR_MS);
  const vapour = vapourPressureOf(day.coldest, day.morningHumidity);
  const middle = (day.coldest + day.warmest) / 2;
  const half = (day.warmest - day.coldest) / 2;
  for (let h = 0; h <= hours; h++) {
    const clock = h % 24;
    const rising = clock >= COLDEST_HOUR && clock < WARMEST_HOUR;
    const share = rising
      ? (clock - COLDEST_HOUR) / (WARMEST_HOUR - COLDEST_HOUR)
      : ((clock - WARMEST_HOUR + 24) % 24) / (24 - WARMEST_HOUR + COLDEST_HOUR);
    const airTemperature = middle + (rising ? -1 : 1) * half * Math.cos(Math.PI * share);
    const relativeHumidity = Math.min(1, vapour / saturationPressureAt(airTemperature));
    rows.push({ time: midnight + h * HOUR_MS, airTemperature, relativeHumidity, wind: day.wind, cloud: day.cloud });
  }
  return buildWeather(rows, { kind: 'typed', name: 'typed', place });
};
