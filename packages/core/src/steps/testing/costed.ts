import { type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type JobFile, jobFrom } from '../../job.ts';
import type { Entry } from '../../kernel/entry.ts';
import type { Result } from '../../kernel/issue.ts';
import type { Said } from '../../kernel/said.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { type PriceBookFile, priceBookFrom } from '../../price-book.ts';
import type { OptionContext } from '../context.ts';
import { cracks } from '../cracks/index.ts';
import { hoursAlone } from '../hours/index.ts';
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

/** Golden jobs by name, as their files were read. */
export type Golden<G extends string> = Readonly<
  Record<G, { readonly job: unknown; readonly catalogue: unknown; readonly priceBook: unknown }>
>;

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Runs an option of a golden job after a change to its files; `named` picks one other than the first. */
export const costing =
  <G extends string>(golden: Golden<G>) =>
  (which: G, change: (files: Files) => void = () => undefined, named?: string): Costed => {
    const files = JSON.parse(JSON.stringify(golden[which])) as Files;
    change(files);
    return run(files, named);
  };

function run(files: Files, named: string | undefined): Costed {
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
  const handled = { ...ctx, lines: cracks(ctx, surveyed, trace.within('cracks')).cracks };
  const prepared = preparation(handled, surveyed, trace.within('preparation'));
  const fitted = system(ctx, surveyed, trace.within('system'));
  const quantified = quantities(handled, surveyed, prepared, fitted, trace.within('quantities'));
  const timed = hoursAlone(handled, surveyed, prepared, fitted, quantified, trace.within('hours'));
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
