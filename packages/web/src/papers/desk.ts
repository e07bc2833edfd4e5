import {
  type Catalogue,
  catalogueFrom,
  checkJob,
  instantIn,
  type Job,
  jobFrom,
  type Plan,
  plan,
  priceBookFrom,
  type Reader,
  WARNINGS,
  weatherFrom,
} from '@slabwright/core';
import { transfer } from 'comlink';
import type { PapersDesk } from './api.ts';

/** The last plan with pours and what it was made from. */
export interface PaperSource {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly reader: Reader;
  readonly option: string;
}

let last: PaperSource | null = null;

function source(): PaperSource {
  if (!last) throw new Error('papers were asked for before their plan');
  return last;
}

/** Drawing papers and their fonts are loaded when somebody opens them. */
const make = () => import('./make.ts');

/**
 * The pours are planned for the leading option only. Another option is planned alone, as if it were the only one, so
 * that its crew sheet has its own.
 */
function optionFirst(job: Job, option: string): Job {
  const lead = job.options.find(({ accepted }) => accepted) ?? job.options[0];
  return lead?.id === option ? job : { ...job, options: job.options.filter(({ id }) => id === option) };
}

/** Plans a job with its pours and sets its papers, in a worker of its own so that a person can stop it. */
export const papersDesk: PapersDesk = {
  planPapers(request, coat) {
    last = null;
    const catalogue = catalogueFrom(request.catalogue);
    const read = jobFrom(request.job);
    const prices = request.priceBook === null ? null : priceBookFrom(request.priceBook);
    const sky = request.weather === null ? null : weatherFrom(request.weather);
    if (!catalogue.ok || !read.ok || prices?.ok === false || sky?.ok === false) return false;
    const now = typeof request.now === 'number' ? instantIn(request.now, read.value.place.zone) : request.now;
    if (checkJob(read.value, catalogue.value, now).some(({ code }) => !WARNINGS.has(code))) return false;
    const job = optionFirst(read.value, request.option);
    let found = 0;
    const made = plan({
      job,
      catalogue: catalogue.value,
      now,
      spread: 'quick',
      onSpread: () => coat(++found),
      ...(prices?.ok ? { priceBook: prices.value } : {}),
      ...(sky?.ok ? { weather: sky.value } : {}),
    });
    const reader: Reader = {
      locale: request.locale,
      units: request.units ?? job.reader.units,
      ...(made.currency ? { currency: made.currency } : {}),
    };
    last = { plan: made, job, catalogue: catalogue.value, reader, option: request.option };
    return true;
  },
  papers: async (language) => (await make()).paperList(source(), language),
  async pdf(kind, language, size) {
    const bytes = await (await make()).paperPdf(source(), kind, language, size);
    return transfer(bytes, [bytes.buffer as ArrayBuffer]);
  },
};
