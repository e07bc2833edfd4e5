import { type Catalogue, type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type Job, type JobFile, jobFrom } from '../../job.ts';
import type { Entry } from '../../kernel/entry.ts';
import type { Result } from '../../kernel/issue.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import { type PriceBookFile, priceBookFrom } from '../../price-book.ts';
import { givenCount, givenFact, type OptionContext } from '../context.ts';
import { quantities } from '../quantities/index.ts';
import type { PreparationPlan, QuantitiesPlan, SurveyPlan, SystemPlan } from '../results.ts';
import { survey } from '../survey/index.ts';
import { system } from '../system/index.ts';

/** For tests of the system and quantities steps: one option run with a preparation that only passes the profile on. */
export interface Scenario {
  readonly ctx: OptionContext;
  readonly surveyed: SurveyPlan;
  readonly fitted: SystemPlan;
  readonly quantities: QuantitiesPlan;
  readonly entries: ReadonlyMap<string, Entry>;
  /** Value of an entry of the option by the end of its id. */
  value(id: string): number;
}

export interface ScenarioFiles {
  readonly job: JobFile;
  readonly catalogue: CatalogueFile;
  readonly priceBook?: PriceBookFile;
  readonly option?: string;
  readonly now?: string;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

export function scenario(files: ScenarioFiles): Scenario {
  const job: Job = must(jobFrom(files.job));
  const catalogue: Catalogue = must(catalogueFrom(files.catalogue));
  const option = job.options.find((one) => one.id === (files.option ?? job.options[0]?.id));
  const chosen = catalogue.systems.find((one) => one.id === option?.system);
  if (!option || !chosen) throw new Error('the scenario names no option or system');
  const now = files.now ?? '2026-10-12T08:00:00Z';
  const step = {
    job,
    catalogue,
    now,
    seed: 1,
    ...(files.priceBook ? { priceBook: must(priceBookFrom(files.priceBook)) } : {}),
  };
  const ctx: OptionContext = {
    ...step,
    option,
    system: chosen,
    products: new Map(catalogue.products.map((one) => [one.id, one])),
  };
  const ledger = new Ledger();
  const root = new Trace(ledger);
  const surveyed = survey(step, root.within('survey'));
  const trace = root.within(option.id);
  const prepared = profileOnly(ctx, trace.within('preparation'));
  const fitted = system(ctx, surveyed, trace.within('system'));
  const result = quantities(ctx, surveyed, prepared, fitted, trace.within('quantities'));
  return {
    ctx,
    surveyed,
    fitted,
    quantities: result,
    entries: ledger.entries,
    value: (id) => {
      const entry = ledger.entries.get(`${option.id}.${id}`);
      if (entry?.kind !== 'given' && entry?.kind !== 'figure') throw new Error(`no number ${option.id}.${id}`);
      return entry.value;
    },
  };
}

function profileOnly(ctx: OptionContext, trace: Trace): PreparationPlan {
  const profileDepth = Object.fromEntries(
    ctx.job.areas.flatMap((area) =>
      area.profileDepth ? [[area.id, givenFact(trace, `${area.id}.profile-depth`, area.profileDepth)]] : [],
    ),
  );
  return {
    verdict: { word: 'go', reasons: [] },
    missing: [],
    notes: [],
    target: {
      least: givenCount(trace, 'least', 2, 'chosen'),
      most: givenCount(trace, 'most', 3, 'chosen'),
      from: 'data sheet',
    },
    methods: [],
    passes: givenCount(trace, 'passes', 1, 'chosen'),
    tasks: [],
    profileDepth,
    tooling: [],
    gate: { word: 'go', reasons: [] },
    dust: [],
  };
}
