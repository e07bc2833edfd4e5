import { tabled } from '../../data/tabled.ts';
import type { Job } from '../../job.ts';
import { epochOf, type Instant, instantIn } from '../../kernel/instant.ts';
import type { Issue } from '../../kernel/issue.ts';
import type { Said } from '../../kernel/said.ts';
import {
  type DoorOpen,
  type Exposure,
  FORECAST_ERRORS,
  GARAGE,
  heatedRoom,
  PATIO,
  type SlabDescription,
  type SlabReading,
  STONE_MIX_CONCRETE,
} from '../../science/heat/index.ts';
import { DAY_MS, endOf, freshness, type WeatherSeries } from '../../science/weather/index.ts';
import { type SiteHours, siteHours } from '../../science/windows/index.ts';
import type { WeatherFile } from '../../weather.ts';
import type { SitePlan } from '../results.ts';
import { seriesOf } from './weather-rows.ts';
import { USUAL_WORKDAY, workingHours } from './workday.ts';

/** Slab and ground where nobody said (common practice). */
export const USUAL_SLAB = tabled('100 mm', 'm');
const USUAL_BASE = tabled('100 mm', 'm');
const USUAL_ROOM = 20;

/**
 * The weather and the slab of one site, worked out: what every option reads, and what a moved start does not change.
 * Handed back into `plan` it is used again as far as its inputs are the same, so that nothing is fitted twice.
 */
export interface SiteState {
  readonly hours?: SiteHours;
  readonly series?: WeatherSeries;
  readonly issues: readonly Issue[];
  readonly cautions: readonly string[];
  /** What was assumed about slab, room and doors. */
  readonly assumed: readonly Said[];
  readonly outdoors: boolean;
  readonly weather: SitePlan['weather'];
  /** What it was worked out from; the fit stands on `fitted`, the hours on both. */
  readonly fitted: string;
  readonly told: string;
}

interface Site {
  readonly slab: SlabDescription;
  readonly exposure: Exposure;
  readonly doors: readonly DoorOpen[];
  readonly assumed: readonly Said[];
}

/** Slab, room and doors as the survey gives them, each assumption said. */
function siteFrom(job: Job, series: WeatherSeries): Site {
  const { slab, exposure, climate = [] } = job.survey;
  const assumed: Said[] = [];
  const kind = exposure?.kind ?? 'closed garage';
  if (!exposure) assumed.push({ code: 'day-exposure-assumed' });
  if (!slab?.thickness) assumed.push({ code: 'day-slab-thickness-assumed' });
  const described: SlabDescription = {
    ...STONE_MIX_CONCRETE,
    slabThickness: slab?.thickness?.value ?? USUAL_SLAB,
    baseThickness: exposure?.base?.value ?? USUAL_BASE,
  };
  let doors: readonly DoorOpen[] = (exposure?.doors ?? []).map(({ from, until }) => ({
    from: epochOf(from),
    to: epochOf(until),
  }));
  if (kind === 'open garage' && doors.length === 0) {
    assumed.push({ code: 'day-doors-assumed' });
    doors = workingHours(USUAL_WORKDAY, job.place.zone, series.start - DAY_MS, endOf(series));
  }
  const room = (): number => {
    if (exposure?.room) return exposure.room.value;
    assumed.push({ code: 'day-room-assumed' });
    const read = climate.map(({ air }) => air.value);
    return read.length === 0 ? USUAL_ROOM : read.reduce((sum, each) => sum + each, 0) / read.length;
  };
  const felt = kind === 'patio' ? PATIO : kind === 'heated room' ? heatedRoom(room()) : GARAGE;
  return { slab: described, exposure: felt, doors, assumed };
}

const readingsOf = (job: Job): readonly SlabReading[] =>
  (job.survey.climate ?? []).flatMap(({ at, slab }) => (slab ? [{ time: epochOf(at), temperature: slab.value }] : []));

/** First moment that is told: the day of the first start chosen, where that lies before now; never before the weather. */
function firstTold(job: Job, series: WeatherSeries, now: number): number {
  const starts = job.options.flatMap(({ starts: chosen = [] }) => chosen.map(({ at }) => epochOf(at)));
  const earliest = starts.reduce((least, each) => Math.min(least, each), now);
  const day = epochOf(
    `${instantIn(earliest, job.place.zone).slice(0, 10)}T00:00:00${offsetOf(earliest, job.place.zone)}`,
  );
  return Math.max(series.start, earliest < now ? day : now);
}

const offsetOf = (epoch: number, zone: string): string => instantIn(epoch, zone).slice(19);

/**
 * Works the site out, or takes from an earlier state what still holds. Pure: the earlier state is an argument, and
 * everything it stands on is compared, so that a stale one is never used.
 */
export function siteStateOf(job: Job, weather: WeatherFile, now: Instant, earlier?: SiteState): SiteState {
  const { survey, place } = job;
  const fitted = JSON.stringify([
    textOf(weather),
    place.altitude?.value,
    place.latitude,
    place.longitude,
    survey.exposure,
    survey.slab?.thickness,
    (survey.climate ?? []).map(({ at, slab, air }) => [at, slab?.value, air.value]),
  ]);
  const told = JSON.stringify([now, place.zone, firstStart(job)]);
  if (earlier && earlier.fitted === fitted && earlier.told === told) return earlier;
  const built = seriesOf(weather, place.altitude?.value);
  const { source, kind = 'forecast', issued } = weather;
  const named = weather.place.name;
  const state = {
    issues: built.issues,
    cautions: [],
    assumed: [],
    outdoors: false,
    weather: { source, kind, ...(issued ? { issued } : {}), ...(named ? { place: named } : {}) },
    fitted,
    told,
  };
  const { series } = built;
  if (!series) return state;
  const site = siteFrom(job, series);
  const at = epochOf(now);
  const begin = Math.max(at, series.start);
  const known = earlier?.fitted === fitted ? earlier.hours?.calibration : undefined;
  const found = siteHours({
    weather: series,
    now: begin,
    until: endOf(series),
    from: firstTold(job, series, at),
    slab: site.slab,
    exposure: site.exposure,
    doors: site.doors,
    readings: readingsOf(job),
    ...(known ? { calibration: known } : {}),
    // Nobody has measured the hours to come: what a table says of them is somebody's forecast.
    ...(kind === 'measured' && endOf(series) > at ? { errors: FORECAST_ERRORS } : {}),
  });
  // Whether a forecast is stale is asked of the moment of planning, also where the weather begins later.
  const stale = freshness(series, at, endOf(series));
  const others = found.issues.filter(({ code }) => !code.startsWith('weather-')).map((issue) => inJob(issue, survey));
  return {
    ...state,
    ...(found.hours ? { hours: found.hours } : {}),
    series,
    issues: [...built.issues, ...otherPlace(job, weather), ...stale, ...others],
    cautions: found.cautions,
    assumed: site.assumed,
    outdoors: site.exposure.kind === 'patio',
  };
}

/** An issue of the slab under the name it has in the job, as it was typed there. */
function inJob(issue: Issue, { slab, exposure }: Job['survey']): Issue {
  const field = issue.path.at(-1);
  if (field === 'slabThickness')
    return { ...issue, path: ['survey', 'slab', 'thickness'], value: slab?.thickness?.typed ?? issue.value ?? '' };
  if (field === 'baseThickness')
    return { ...issue, path: ['survey', 'exposure', 'base'], value: exposure?.base?.typed ?? issue.value ?? '' };
  return issue;
}

/** Weather of a place further off than this is another weather, km: about the grid of a public forecast, twice. */
const NEAR = 50;
const KM_A_DEGREE = 111;

/** Weather of another place than the job's; where the job says no place, nobody can tell. */
function otherPlace({ place }: Job, { place: there }: WeatherFile): readonly Issue[] {
  const { latitude, longitude } = place;
  if (latitude === undefined || longitude === undefined) return [];
  const east = (((there.longitude - longitude + 540) % 360) - 180) * Math.cos((latitude * Math.PI) / 180);
  const away = KM_A_DEGREE * Math.hypot(there.latitude - latitude, east);
  if (away <= NEAR) return [];
  const names = { away: `${Math.round(away)} km` };
  return [{ code: 'weather-other-place', path: ['weather', 'place'], limits: [`${NEAR} km`], names }];
}

/** Text of a weather file, by which two are told apart; made once for a file however often its plan is made. */
const texts = new WeakMap<WeatherFile, string>();
function textOf(weather: WeatherFile): string {
  const known = texts.get(weather);
  if (known !== undefined) return known;
  const text = JSON.stringify(weather);
  texts.set(weather, text);
  return text;
}

/** The first chosen start decides from when the hours are told. */
const firstStart = (job: Job): string =>
  job.options
    .flatMap(({ starts = [] }) => starts.map(({ at }) => instantIn(epochOf(at), job.place.zone).slice(0, 10)))
    .sort()[0] ?? '';
