import {
  type Catalogue,
  catalogueFrom,
  checkJob,
  instantIn,
  jobFrom,
  type Known,
  priceBookFrom,
  type Reader,
  rankSystems,
  type SiteState,
  type SystemRanked,
  type SystemsRanked,
  siteStateOf,
  type Voice,
  voice,
  WARNINGS,
  weatherFrom,
} from '@slabwright/core';
import type { CompareDesk, Measured, SystemShown } from './api.ts';
import { sheetsOf } from './sheets.ts';

/** The slab as it was fitted for the comparison before. */
let siteBefore: SiteState | undefined;

const FAR = 3;

const measured = (known: Known, speaks: Voice): Measured => ({ text: speaks.show(known.id), value: known.value });

function shownOf(one: SystemRanked, ranked: SystemsRanked, catalogue: Catalogue, speaks: Voice): SystemShown {
  const system = catalogue.systems.find(({ id }) => id === one.system);
  const product = (id: string): string => catalogue.products.find((found) => found.id === id)?.name ?? id;
  const beats = ranked.systems.find(({ system: id }) => id === one.beatenBy)?.name;
  const unknown = [one.priceWhy, one.untilUseWhy].flatMap((why) => (why ? [speaks.say(why)] : []));
  return {
    id: one.system,
    name: one.name,
    fits: one.fits,
    front: one.front,
    layers: (system?.layers ?? []).map((layer) => layer.name ?? product(layer.product)),
    also: one.also.map(speaks.say),
    cautions: one.cautions.map(speaks.say),
    unknown: [...new Set(unknown)],
    ...(beats ? { beatenBy: beats } : {}),
    ...(one.reason ? { reason: speaks.say(one.reason) } : {}),
    ...(one.reason?.lift ? { lift: speaks.say(one.reason.lift) } : {}),
    ...(one.price ? { price: measured(one.price, speaks) } : {}),
    ...(one.hours ? { hours: measured(one.hours, speaks) } : {}),
    ...(one.untilUse ? { untilUse: measured(one.untilUse, speaks) } : {}),
    ...(one.weakest
      ? {
          margin: {
            ...measured(one.weakest.margin, speaks),
            need: speaks.word(one.weakest.word),
          },
        }
      : {}),
    margins: (one.margins ?? []).map(({ word, at = '', margin }) => ({
      need: speaks.word(word),
      at,
      // Three times a limit is far from it; how far exactly helps nobody choose.
      text: margin.value > FAR ? speaks.word('fits-margin-far') : speaks.show(margin.id),
    })),
    ...(one.starts ? { starts: one.starts } : {}),
    ...(one.ready ? { ready: one.ready } : {}),
  };
}

/** Every system of the catalogue on this slab, and chosen sheets side by side. Asked for, not run with every plan. */
export const compareDesk: CompareDesk = {
  compare(request) {
    const read = catalogueFrom(request.catalogue);
    const job = jobFrom(request.job);
    if (!read.ok || !job.ok) return null;
    const catalogue = read.value;
    const now = typeof request.now === 'number' ? instantIn(request.now, job.value.place.zone) : request.now;
    if (checkJob(job.value, catalogue, now).some(({ code }) => !WARNINGS.has(code))) return null;
    const book = request.priceBook ? priceBookFrom(request.priceBook) : null;
    const sky = request.weather === null ? null : weatherFrom(request.weather);
    if (sky?.ok) siteBefore = siteStateOf(job.value, sky.value, now, siteBefore);
    const ranked = rankSystems({
      job: job.value,
      catalogue,
      now,
      ...(book?.ok ? { priceBook: book.value } : {}),
      ...(sky?.ok ? { weather: sky.value } : {}),
      ...(sky?.ok && siteBefore ? { calibrated: siteBefore } : {}),
    });
    if (!ranked) return null;
    const reader: Reader = {
      locale: request.locale,
      units: request.units ?? job.value.reader.units,
      ...(ranked.currency ? { currency: ranked.currency } : {}),
    };
    const speaks = voice('en', reader, Object.fromEntries(ranked.entries.map((entry) => [entry.id, entry])));
    return {
      use: speaks.word(`fits-use-${ranked.use}`),
      timesFrom: ranked.timesFrom,
      systems: ranked.systems.map((one) => shownOf(one, ranked, catalogue, speaks)),
      common: ranked.common.map(speaks.say),
      about: ['fits-front', 'fits-hours-alike', `fits-times-${ranked.timesFrom}`, 'fits-margin-rule'].map(speaks.word),
      ...sheetsOf(catalogue, request.products, reader),
    };
  },
};
