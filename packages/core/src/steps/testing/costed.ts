import garageCatalogue from '../../../../../jobs/garage/catalogue.json' with { type: 'json' };
import garageJob from '../../../../../jobs/garage/job.json' with { type: 'json' };
import garagePrices from '../../../../../jobs/garage/price-book.json' with { type: 'json' };
import workshopCatalogue from '../../../../../jobs/workshop/catalogue.json' with { type: 'json' };
import workshopJob from '../../../../../jobs/workshop/job.json' with { type: 'json' };
import workshopPrices from '../../../../../jobs/workshop/price-book.json' with { type: 'json' };
import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import type { Entry } from '../../kernel/entry.ts';
import type { Result } from '../../kernel/issue.ts';
import type { Said } from '../../kernel/said.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { type PriceBookFile, priceBookFrom } from '../../price-book.ts';
import type { OptionContext } from '../context.ts';
import { hours } from '../hours/index.ts';
import { preparation } from '../preparation/index.ts';
import { price } from '../price/index.ts';
import { quantities } from '../quantities/index.ts';
import type { HoursPlan, PricePlan, SurveyPlan, Task } from '../results.ts';
import { survey } from '../survey/index.ts';
import { system } from '../system/index.ts';

/** For tests of hours and price: one option of a golden job run through all steps, after a change to its files. */
export interface Files {
  job: JobFile;
  catalogue: CatalogueFile;
  priceBook: PriceBookFile | undefined;
}

export interface Costed {
  readonly ctx: OptionContext;
  readonly surveyed: SurveyPlan;
  readonly hours: HoursPlan;
  readonly price: PricePlan;
  readonly entries: ReadonlyMap<string, Entry>;
  /** Everything both steps say: reasons, what lifts them, what is missing, notes. */
  said(): readonly Said[];
  task(id: string): Task;
  /** Codes of the reasons of a coat's gate. */
  gate(layer: string): readonly string[];
}

const GOLDEN: Readonly<Record<'garage' | 'workshop', () => Files>> = {
  garage: () =>
    structuredClone({ job: garageJob, catalogue: garageCatalogue, priceBook: garagePrices }) as unknown as Files,
  workshop: () =>
    structuredClone({ job: workshopJob, catalogue: workshopCatalogue, priceBook: workshopPrices }) as unknown as Files,
};

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** The option of the changed files; `named` picks one other than the first. */
export function costed(
  which: 'garage' | 'workshop',
  change: (files: Files) => void = () => undefined,
  named?: string,
): Costed {
  const files = GOLDEN[which]();
  change(files);
  const job = must(jobFrom(files.job));
  const catalogue = must(catalogueFrom(files.catalogue));
  const option = job.options.find(({ id }) => named === undefined || id === named);
  const chosen = catalogue.systems.find(({ id }) => id === option?.system);
  if (!option || !chosen) throw new Error('the job names no option or system');
  const step = {
    job,
    catalogue,
    now: '2026-10-12T08:00:00Z',
    seed: 1,
    ...(files.priceBook ? { priceBook: must(priceBookFrom(files.priceBook)) } : {}),
  };
  const products = new Map(catalogue.products.map((one) => [one.id, one]));
  const ctx: OptionContext = { ...step, option, system: chosen, products };
  const ledger = new Ledger();
  const root = new Trace(ledger);
  const surveyed = survey(step, root.within('survey'));
  const trace = root.within(option.id);
  const prepared = preparation(ctx, surveyed, trace.within('preparation'));
  const fitted = system(ctx, surveyed, trace.within('system'));
  const quantified = quantities(ctx, surveyed, prepared, fitted, trace.within('quantities'));
  const timed = hours(ctx, surveyed, prepared, fitted, quantified, trace.within('hours'));
  const priced = price(ctx, surveyed, quantified, timed, trace.within('price'));
  const plans = [timed, priced];
  return {
    ctx,
    surveyed,
    hours: timed,
    price: priced,
    entries: ledger.entries,
    said: () =>
      plans.flatMap(({ verdict, missing, notes }): readonly Said[] => [
        ...verdict.reasons,
        ...verdict.reasons.flatMap(({ lift }) => lift ?? []),
        ...missing.flatMap(({ fact, changes }) => [fact, changes]),
        ...notes,
      ]),
    task: (id) => {
      const found = timed.tasks.find((one) => one.id === id);
      if (!found) throw new Error(`no task ${id} among ${timed.tasks.map((one) => one.id).join(', ')}`);
      return found;
    },
    gate: (layer) => timed.gates.find((one) => one.layer === layer)?.verdict.reasons.map(({ code }) => code) ?? [],
  };
}
