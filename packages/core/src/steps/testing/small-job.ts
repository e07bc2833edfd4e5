import { type Catalogue, type CatalogueFile, catalogueFrom } from '../../catalogue.ts';
import { type Job, type JobFile, jobFrom } from '../../job.ts';
import type { Entry } from '../../kernel/entry.ts';
import type { Result } from '../../kernel/issue.ts';
import { Ledger, Trace } from '../../kernel/trace.ts';
import type { OptionContext } from '../context.ts';
import { preparation } from '../preparation/index.ts';
import type { PreparationPlan, SurveyPlan } from '../results.ts';
import { survey } from '../survey/index.ts';

/** For tests: a complete job of one 10 m × 5 m room on which nothing is wrong, to be changed one fact at a time. */
export const NOW = '2026-06-10T12:00:00+00:00';

type Writable<T> = T extends object ? { -readonly [K in keyof T]: Writable<T[K]> } : T;
export type JobDraft = Writable<JobFile>;
export type CatalogueDraft = Writable<CatalogueFile>;

const probe = (id: string, humidity: string) => ({
  id,
  method: 'ASTM F2170' as const,
  edition: '2019a',
  where: id,
  on: '2026-06-01T09:00:00+00:00',
  depthShare: '40 %',
  wait: '24 h',
  serviceConditionsFor: '48 h',
  humidity,
});

const pull = (id: string, stress: string) => ({
  id,
  where: id,
  on: '2026-06-08',
  after: 'preparation' as const,
  stress,
  mode: 'A' as const,
});

export function smallJob(change: (job: JobDraft) => void = () => {}): JobDraft {
  const job: JobDraft = {
    schema: 'slabwright.job/1',
    id: 'small',
    title: 'A small room',
    place: { zone: 'UTC' },
    reader: { units: 'metric', paper: 'a4' },
    use: { traffic: 'light' },
    areas: [
      {
        id: 'room',
        name: 'Room',
        outline: [
          ['0 m', '0 m'],
          ['10 m', '0 m'],
          ['10 m', '5 m'],
          ['0 m', '5 m'],
        ],
        exits: [{ id: 'door', name: 'door', from: ['4 m', '0 m'], to: ['5 m', '0 m'] }],
      },
    ],
    survey: {
      on: '2026-06-01',
      by: 'A. Surveyor',
      building: {
        year: 2015,
        roomEmptied: 'yes',
        access: 'level',
        occupiedBeside: 'no',
        airReturns: 'no',
        power: { phases: 3, voltage: '400 V', current: '32 A' },
        water: 'yes',
        height: '3 m',
      },
      onFloor: [{ id: 'bare', what: 'bare concrete' }],
      services: { heatingPipes: 'no', tendons: 'no', cables: 'no', drains: 'no' },
      slab: { cast: '2015-03-01', thickness: '150 mm', grade: 'on ground', scratch: 4.5, falls: 'level' },
      moisture: {
        tests: [probe('p1', '70 %'), probe('p2', '74 %'), probe('p3', '72 %')],
        signs: { seepage: 'no', saltLine: 'no', oldFilmBlisters: 'no' },
      },
      pullOffs: [pull('d1', '2.0 MPa'), pull('d2', '2.2 MPa'), pull('d3', '2.4 MPa')],
      afterPreparation: {
        waterDrops: ['a', 'b', 'c'].map((where) => ({ where, result: 'soaks in' as const })),
        dustTape: 'clean',
        profiles: [{ where: 'a', profile: 2 }],
      },
      climate: [{ at: '2026-06-10T09:00:00+00:00', air: '20 °C', humidity: '50 %', slab: '18 °C' }],
    },
    options: [
      { id: 'one', name: 'One', system: 'two-coat', areas: ['room'], people: 2, preparation: { method: 'grind' } },
    ],
  };
  change(job);
  return job;
}

export function smallCatalogue(change: (catalogue: CatalogueDraft) => void = () => {}): CatalogueDraft {
  const catalogue: CatalogueDraft = {
    schema: 'slabwright.catalogue/1',
    id: 'small',
    products: [
      {
        id: 'resin',
        name: 'Resin',
        sheet: { name: 'Resin, sheet 1' },
        chemistry: 'epoxy',
        components: [{ id: 'a', name: 'part A' }],
        mix: [{ component: 'a', parts: 1 }],
        packs: [{ id: 'pail', parts: [{ component: 'a', volume: '10 L' }] }],
        volumeSolids: '100 %',
      },
    ],
    systems: [
      {
        id: 'two-coat',
        name: 'Two coats',
        profile: { least: 2, most: 2 },
        layers: [
          { id: 'base', product: 'resin', wetFilm: '0.25 mm', onConcrete: true },
          { id: 'top', product: 'resin', wetFilm: '0.25 mm' },
        ],
      },
    ],
    tools: [{ id: 'grinder', name: 'grinder', method: 'grind', mass: '180 kg' }],
  };
  change(catalogue);
  return catalogue;
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

export const jobOf = (change?: (job: JobDraft) => void): Job => must(jobFrom(smallJob(change)));
export const catalogueOf = (change?: (catalogue: CatalogueDraft) => void): Catalogue =>
  must(catalogueFrom(smallCatalogue(change)));

export interface Surveyed {
  readonly plan: SurveyPlan;
  readonly entries: ReadonlyMap<string, Entry>;
  readonly codes: readonly string[];
}

/** The survey of a job read from its file form. */
export function surveyOf(job: Job, catalogue: Catalogue = catalogueOf(), now = NOW): Surveyed {
  const ledger = new Ledger();
  const plan = survey({ job, catalogue, now, seed: 1 }, new Trace(ledger).within('survey'));
  return { plan, entries: ledger.entries, codes: plan.verdict.reasons.map(({ code }) => code) };
}

export interface Prepared {
  readonly plan: PreparationPlan;
  readonly surveyed: SurveyPlan;
  readonly entries: ReadonlyMap<string, Entry>;
  readonly codes: readonly string[];
  /** Person-hours of a task, by the start of its id. */
  hours(work: string): number | undefined;
}

/** Survey and preparation of the first option of a job. */
export function prepare(job: Job, catalogue: Catalogue = catalogueOf(), now = NOW): Prepared {
  const option = job.options[0];
  const system = catalogue.systems.find(({ id }) => id === option?.system);
  if (!option || !system) throw new Error('the job has no option with a known system');
  const ledger = new Ledger();
  const root = new Trace(ledger);
  const products = new Map(catalogue.products.map((product) => [product.id, product]));
  const ctx: OptionContext = { job, catalogue, now, seed: 1, option, system, products };
  const surveyed = survey(ctx, root.within('survey'));
  const plan = preparation(ctx, surveyed, root.within(option.id).within('preparation'));
  return {
    plan,
    surveyed,
    entries: ledger.entries,
    codes: plan.verdict.reasons.map(({ code }) => code),
    hours: (work) => {
      const task = plan.tasks.find(({ id }) => id.startsWith(`${work}/`));
      return task ? task.time.value / 3600 : undefined;
    },
  };
}
