import { canonicalText, climate, type Issue, jobFrom, readJson, weatherDocumentOf } from '@slabwright/core';
import { askService } from '../ask-service.ts';
import { refuseExisting, writeWhole } from '../data/write-file.ts';
import { badInput, readInput } from '../read-file.ts';
import { sharedParts } from '../shared.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';
import { plainVoice } from '../voice.ts';

const { askForecast, MET_NORWAY, NATIONAL_WEATHER_SERVICE, roundedPlace } = climate.weatherScience;

export const SERVICES = ['met-norway', 'nws'] as const;

/** Each service with the name its terms want to see beside its data. */
const KNOWN = {
  'met-norway': { service: MET_NORWAY, name: 'Norwegian Meteorological Institute, CC BY 4.0' },
  nws: { service: NATIONAL_WEATHER_SERVICE, name: 'US National Weather Service' },
} as const;

export interface ForecastOptions {
  readonly service: (typeof SERVICES)[number];
  readonly out: string;
  readonly allowSendingThePlace?: boolean;
  readonly overwrite?: boolean;
  readonly json?: boolean;
}

/** `forecast JOB`: asks a public service for the weather of the site and keeps it as a weather file. */
export async function forecast(path: string, options: ForecastOptions, terminal: Terminal): Promise<number> {
  const whole = readJson(readInput(path, 'job.json').text);
  const shared = whole.ok ? sharedParts(path, whole.value) : undefined;
  const read = whole.ok ? jobFrom(shared ? shared.job : whole.value) : whole;
  if (!read.ok) throw badInput(path, read.issues);
  const { latitude, longitude, altitude, zone } = read.value.place;
  if (latitude === undefined || longitude === undefined) {
    const missing = latitude === undefined ? 'latitude' : 'longitude';
    throw badInput(path, [{ code: 'weather-place-missing', path: ['place', missing] }]);
  }
  const place = roundedPlace({ latitude, longitude, ...(altitude ? { elevation: altitude.value } : {}) });
  const { service, name } = KNOWN[options.service];
  if (!options.allowSendingThePlace) {
    throw new BadInput([
      `Nothing was asked. Asking sends the place of the site, rounded to 0.01° (${place.latitude}, ${place.longitude}), to ${name}, and nothing else of the job. Add --allow-sending-the-place to allow it, or type the day: --air-low "8 °C" --air-high "22 °C" --humidity "85 %" --wind "2 m/s" --cloud "30 %".`,
    ]);
  }
  refuseExisting(options.out, options.overwrite);
  const { series, issues } = await askForecast(service, place, { sendPlace: true }, { fetchText: askService });
  const voice = plainVoice();
  const told = [...new Set(issues.map((issue: Issue) => voice.sayIssue(issue)))];
  if (!series) throw new BadInput(told, issues);
  const document = weatherDocumentOf(series, { source: name, zone });
  const [first, last] = [document.rows[0], document.rows.at(-1)];
  if (!first || !last) throw new BadInput([`${name} sent no hour that can be used.`, ...told], issues);
  writeWhole(options.out, `${JSON.stringify(document, null, 1)}\n`);
  const { out } = options;
  const hours = document.rows.length;
  terminal.out(
    options.json
      ? `${canonicalText({ out, source: name, place, from: first.at, until: last.at, hours, issues }, 1)}\n`
      : `${[`${out}: ${hours} hours from ${first.at} to ${last.at} (${name}).`, ...told].join('\n')}\n`,
  );
  return EXIT.fine;
}
