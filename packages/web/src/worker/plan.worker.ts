import {
  answered,
  broughtUp,
  type Catalogue,
  catalogueFrom,
  checkCatalogue,
  checkJob,
  fromLocal,
  type Instant,
  type Issue,
  instantIn,
  type Job,
  jobFrom,
  MESSAGES,
  type Plan,
  type PriceBook,
  plan,
  priceBookFrom,
  type Reader,
  type SiteState,
  siteStateOf,
  type Voice,
  voice,
  WARNINGS,
  type WeatherFile,
  weatherFrom,
} from '@slabwright/core';
import { expose } from 'comlink';
import { keepPlan } from '../keep/kept-plan.ts';
import type { PapersDesk } from '../papers/api.ts';
import { papersDesk } from '../papers/desk.ts';
import type { SpreadDesk } from '../spread/api.ts';
import { spreadDesk } from '../spread/desk.ts';
import type { IssueShown, LocalAnswer, PlanAnswer, Planned, PlanRequest, PlanWorker } from './api.ts';
import { temperatureAxis } from './axis.ts';
import { changesBetween } from './changes.ts';
import { bandedMargins, curvesOf, weatherTold } from './curves.ts';
import { digest } from './digest.ts';
import { drawingsOf } from './drawing.ts';
import { namesOf } from './names.ts';
import { readFile } from './read-file.ts';
import { ShownBefore } from './shown-before.ts';
import { lineNames, textsOf } from './texts.ts';
import type { WeatherAsked, WeatherMade } from './weather-api.ts';
import { weatherIn } from './weather-in.ts';
import { workingView } from './working-view.ts';

/** The last good plan, for workings. */
interface Last {
  readonly plan: Plan;
  readonly voice: Voice;
}

const shownBefore = new ShownBefore();

let last: Last | null = null;
/** What the screen has been told. */
let told: Planned | null = null;
/** The last job that could be read, planned or not: weather is given to it. */
let jobBefore: Job | null = null;
let catalogueBefore: Catalogue | null = null;
let priceBookBefore: PriceBook | null = null;
let weatherBefore: WeatherFile | null = null;
/** The slab as it was fitted; a moved start finds it again and fits nothing. */
let siteBefore: SiteState | undefined;

const plainVoice = (): Voice => voice('en', { locale: 'en-US', units: 'metric' }, {});

const issuesShown = (file: IssueShown['file'], issues: readonly Issue[]): IssueShown[] => {
  const speaks = plainVoice();
  return issues.map((issue) => ({ file, code: issue.code, path: issue.path, text: speaks.sayIssue(issue) }));
};

/** Hours around the coats of all options that any ribbon draws. */
function hoursDrawn({ options }: Plan): readonly [number, number] {
  const starts = options.flatMap(({ day }) =>
    day && answered(day) ? day.coats.flatMap(({ start }) => (start ? [Date.parse(start.at)] : [])) : [],
  );
  return [Math.min(...starts) - 8 * HOUR, Math.max(...starts) + 20 * HOUR];
}

const HOUR = 3_600_000;

function planned(request: PlanRequest): PlanAnswer {
  if (request.catalogue) {
    const read = catalogueFrom(request.catalogue);
    if (!read.ok) return { ok: false, issues: issuesShown('catalogue', read.issues) };
    const sense = checkCatalogue(read.value);
    if (sense.length > 0) return { ok: false, issues: issuesShown('catalogue', sense) };
    catalogueBefore = read.value;
    priceBookBefore = null;
  }
  if (request.priceBook) {
    const read = priceBookFrom(request.priceBook);
    if (!read.ok) return { ok: false, issues: issuesShown('price-book', read.issues) };
    priceBookBefore = read.value;
  }
  if (request.weather !== 'same') {
    weatherBefore = null;
    if (request.weather !== 'none') {
      const read = weatherFrom(request.weather.file);
      if (!read.ok) return { ok: false, issues: issuesShown('weather', read.issues) };
      weatherBefore = read.value;
    }
  }
  const weather = weatherBefore;
  const catalogue = catalogueBefore;
  if (!catalogue) throw new Error('a plan was asked for before its catalogue');
  const read = jobFrom(request.job);
  if (!read.ok) return { ok: false, issues: issuesShown('job', read.issues) };
  const job = read.value;
  jobBefore = job;
  const now: Instant = typeof request.now === 'number' ? instantIn(request.now, job.place.zone) : request.now;
  const sense = checkJob(job, catalogue, now);
  const wrong = sense.filter(({ code }) => !WARNINGS.has(code));
  if (wrong.length > 0) return { ok: false, issues: issuesShown('job', wrong) };
  if (weather) siteBefore = siteStateOf(job, weather, now, siteBefore);
  const made = plan({
    job,
    catalogue,
    now,
    ...(priceBookBefore ? { priceBook: priceBookBefore } : {}),
    ...(weather ? { weather } : {}),
    ...(weather && siteBefore ? { calibrated: siteBefore } : {}),
  });
  const units = request.units ?? job.reader.units;
  const reader: Reader = {
    locale: request.locale,
    units,
    ...(made.currency ? { currency: made.currency } : {}),
    year: made.now.slice(0, 4),
  };
  const speaks = voice('en', reader, made.entries);
  last = { plan: made, voice: speaks };
  const { entries, ...lean } = made;
  const curves = curvesOf(made);
  const next: Planned = {
    plan: lean,
    shown: shownBefore.all(entries, reader),
    texts: textsOf(made, speaks),
    ...drawingsOf(job, made, units, request.locale),
    axis: temperatureAxis(entries, reader, curves, hoursDrawn(made)),
    curves,
    weather: weather ? weatherTold(weather) : null,
    banded: bandedMargins(made, reader),
    warnings: issuesShown(
      'job',
      sense.filter(({ code }) => WARNINGS.has(code)),
    ),
    units,
    ...(made.currency ? { currency: made.currency } : {}),
    zone: job.place.zone,
    names: { ...namesOf(catalogue), ...lineNames(made, speaks) },
  };
  return toTell(next, request);
}

/** Last of all, because it counts as told: nothing after it may fail. */
function toTell(next: Planned, { afresh, known, keepAs, job }: PlanRequest): PlanAnswer {
  const before = told;
  told = next;
  if (keepAs)
    keepSoon(() => keepPlan({ ...keepAs, mark: digest(next), job, planned: next, words: words() }, Date.now()));
  if (known !== undefined && known === digest(next)) return { ok: true, is: 'known' };
  if (afresh || !before) return { ok: true, is: 'whole', planned: next };
  return { ok: true, is: 'changes', changes: changesBetween(before, next) };
}

/** A hand at rest for so long has decided. */
const REST_MS = 700;
let keeping: ReturnType<typeof setTimeout> | undefined;

function keepSoon(keep: () => Promise<void>): void {
  clearTimeout(keeping);
  keeping = setTimeout(() => void keep(), REST_MS);
}

const words = (): Readonly<Record<string, string>> =>
  Object.fromEntries([...MESSAGES.en].filter(([, text]) => !text.includes('{')));

function local(text: string, zone: string): LocalAnswer {
  try {
    const found = fromLocal(text, zone);
    if (found.kind === 'one') return found;
    if (found.kind === 'two') return { kind: 'two', choices: [found.first, found.second] };
    return { kind: 'none', choices: [found.before, found.after] };
  } catch (trouble) {
    if (trouble instanceof RangeError) return { kind: 'unreadable' };
    throw trouble;
  }
}

function fileIssues(kind: 'catalogue' | 'price-book', value: unknown): readonly IssueShown[] {
  if (kind === 'price-book') {
    const read = priceBookFrom(value);
    return read.ok ? [] : issuesShown(kind, read.issues);
  }
  const read = catalogueFrom(value);
  return issuesShown(kind, read.ok ? checkCatalogue(read.value) : read.issues);
}

/** Public forecast services want to know who asks; a browser tells them the origin of the page by itself. */
async function fetchText(url: string): Promise<string> {
  const answer = await fetch(url, { credentials: 'omit', headers: { accept: 'application/json' } });
  if (!answer.ok) throw new Error(`HTTP ${answer.status}`);
  return answer.text();
}

async function weatherMade(asked: WeatherAsked, now: number): Promise<WeatherMade> {
  if (!jobBefore) throw new Error('weather was given before a job was planned');
  const { file = null, issues, says = [], headings = [] } = await weatherIn(asked, jobBefore, now, fetchText);
  const speaks = plainVoice();
  return { file, headings, issues: [...new Set([...says, ...issues.map((issue) => speaks.sayIssue(issue))])] };
}

const api: PlanWorker & SpreadDesk & PapersDesk = {
  ...spreadDesk,
  ...papersDesk,
  words,
  plan: planned,
  working: (id) => (last ? workingView(id, last.plan.entries, last.voice) : null),
  local,
  issues: fileIssues,
  async calendar(optionId) {
    const option = last?.plan.options.find(({ id }) => id === optionId);
    if (!last || !option) throw new Error(`a calendar was asked for an option that is not planned: ${optionId}`);
    const { icsOf } = await import('@slabwright/calendar');
    return icsOf(last.plan, option, last.voice);
  },
  read: (text) => readFile(text, plainVoice()),
  broughtUp,
  weather: weatherMade,
};

expose(api);
