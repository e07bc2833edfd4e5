import {
  type Answer,
  type Catalogue,
  catalogueFrom,
  checkJob,
  type Entry,
  instantIn,
  jobFrom,
  plan,
  type Reader,
  type SiteState,
  type SpreadSeen,
  type SpreadsPlan,
  siteStateOf,
  spread as spreading,
  type Voice,
  voice,
  WARNINGS,
  weatherFrom,
} from '@slabwright/core';
import { compareDesk } from '../compare/desk.ts';
import { shownOf } from '../worker/shown.ts';
import { textsOf } from '../worker/texts.ts';
import { workingView } from '../worker/working-view.ts';
import type { CoatAsked, CoatCells, JudgedOrder, SpreadDesk } from './api.ts';
import { cellsOf } from './cells.ts';
import { seenFor } from './coats.ts';
import { judged, judgedOutlines } from './judge.ts';

/** The last spread that was planned, for workings and for judging another order. */
interface Last {
  readonly entries: Readonly<Record<string, Entry>>;
  readonly voice: Voice;
  readonly seen: readonly SpreadSeen[];
}

let last: Last | null = null;
let catalogueBefore: Catalogue | null = null;
let siteBefore: SiteState | undefined;

/** Orders tried after a search was stopped: enough for pours that hold, not for the best. */
const SHORT = 40;
/** How often a person is told how far a search is. */
const TOLD_EVERY_MS = 150;

const spreadOf = (id: string): string => `${id}.spread.`;

const seenOf = (coat: CoatAsked): SpreadSeen | undefined => (last ? seenFor(last.seen, coat) : undefined);

/** Plans the order of pours of one option, in a worker of its own so that a long search holds up nobody's typing. */
export const spreadDesk: SpreadDesk = {
  ...compareDesk,
  spread(request, told) {
    const started = performance.now();
    if (request.catalogue) {
      const read = catalogueFrom(request.catalogue);
      if (!read.ok) return null;
      catalogueBefore = read.value;
    }
    const catalogue = catalogueBefore;
    const read = jobFrom(request.job);
    if (!catalogue || !read.ok) return null;
    const now = typeof request.now === 'number' ? instantIn(request.now, read.value.place.zone) : request.now;
    if (checkJob(read.value, catalogue, now).some(({ code }) => !WARNINGS.has(code))) return null;
    const sky = request.weather === null ? null : weatherFrom(request.weather);
    if (sky && !sky.ok) return null;
    const weather = sky?.value;
    if (weather) siteBefore = siteStateOf(read.value, weather, now, siteBefore);
    const job = { ...read.value, options: read.value.options.filter(({ id }) => id === request.option) };
    const seen: SpreadSeen[] = [];
    let toldAt = 0;
    const made = plan({
      job,
      catalogue,
      now,
      spread: request.effort === 'full' ? 'full' : request.effort === 'short' ? SHORT : 'quick',
      onSpread: (one) => seen.push(one),
      onSpreadProgress: (progress) => {
        const at = performance.now();
        if (at - toldAt >= TOLD_EVERY_MS) {
          toldAt = at;
          told(progress);
        }
        return true;
      },
      ...(weather ? { weather } : {}),
      ...(weather && siteBefore ? { calibrated: siteBefore } : {}),
    });
    const [option] = made.options;
    if (!option?.spread) return null;
    const reader: Reader = { locale: request.locale, units: request.units ?? job.reader.units };
    const speaks = voice('en', reader, made.entries);
    last = { entries: made.entries, voice: speaks, seen };
    const own = spreadOf(option.id);
    const shown = Object.values(made.entries).filter(({ id }) => id.startsWith(own));
    return {
      option: option.id,
      spread: option.spread as Answer<SpreadsPlan>,
      shown: Object.fromEntries(shown.map((entry) => [entry.id, shownOf(entry, reader)])),
      texts: textsOf({ ...made, options: made.options }, speaks),
      cells: seen.flatMap((one): CoatCells[] => {
        const cells = cellsOf(one);
        return cells ? [cells] : [];
      }),
      milliseconds: performance.now() - started,
    };
  },
  spreadWorking: (id) => (last ? workingView(id, last.entries, last.voice) : null),
  judgeOrder(coat, order): JudgedOrder | null {
    const found = seenOf(coat);
    if (!last || found?.result.kind !== 'plan') return null;
    return judged(found.question, spreading.reordered(found.result.solution, order), last.voice.reader);
  },
  judgeDrawn(coat, pours): JudgedOrder | null {
    const found = seenOf(coat);
    if (!last || !found || found.result.kind === 'issues') return null;
    const { result } = found;
    const planned = result.kind === 'plan' ? result.solution.pours : [];
    return judgedOutlines(result.problem, pours, planned, last.voice.reader);
  },
};
