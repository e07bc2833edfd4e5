import type { Catalogue, Product, System } from '../catalogue.ts';
import type { Area } from '../drawing.ts';
import type { Job, JobOption } from '../job.ts';
import { epochOf, type Instant, instantIn } from '../kernel/instant.ts';
import type { Said } from '../kernel/said.ts';
import type { Reason } from '../kernel/verdict.ts';
import { type Answer, answered, type OptionPlan, type Plan, type Published } from '../plan.ts';
import type { AreaMeasure, StepBase, SurveyPlan } from '../steps/results.ts';
import type { Language } from '../words/messages.ts';
import type { Block, Content, Paper, PaperKind } from './paper.ts';

/** Everything a paper is written from: the plan of one option, the job it answers and the catalogue behind it. */
export interface PaperContext {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly option: OptionPlan;
  readonly chosen: JobOption;
  readonly system: System;
  readonly survey?: Published<SurveyPlan>;
  readonly language: Language;
  readonly issue: string;
  readonly mark: string;
}

export const said = (
  code: string,
  names?: Readonly<Record<string, string>>,
  figures?: Readonly<Record<string, string>>,
): Said => ({ code, ...(names ? { names } : {}), ...(figures ? { figures } : {}) });

export const say = (
  code: string,
  names?: Readonly<Record<string, string>>,
  figures?: Readonly<Record<string, string>>,
): Content => ({ say: said(code, names, figures) });

export const name = (text: string): Content => ({ name: text });
export const bold = (text: string): Content => ({ name: text, strong: true });
export const entry = (id: string): Content => ({ entry: id });
export const strong = (id: string): Content => ({ entry: id, strong: true });
export const banded = (id: string): Content => ({ entry: id, band: true, strong: true });
export const saying = (one: Said): Content => ({ say: one });
export const heading = (code: string, names?: Readonly<Record<string, string>>): Block => ({
  kind: 'heading',
  text: said(code, names),
});
export const line = (...content: readonly Content[]): Block => ({ kind: 'paragraph', content });
export const dashes = (lines: readonly Content[]): readonly Block[] =>
  lines.length > 0 ? [{ kind: 'list', marks: 'dash', lines }] : [];

/** A step's answer, or nothing where it could not answer. */
export const known = <T extends object>(answer: Answer<T>): Published<T> | undefined =>
  answered(answer as object as T) ? (answer as Published<T>) : undefined;

/** `2026-05-13 11:45` in the zone of the job; a plain date stays as it is. */
export const moment = (ctx: PaperContext, at: Instant): string =>
  at.length === 10 ? at : instantIn(epochOf(at), ctx.job.place.zone).slice(0, 16).replace('T', ' ');
export const day = (ctx: PaperContext, at: Instant): string => moment(ctx, at).slice(0, 10);

export const productOf = (ctx: PaperContext, id: string): Product => {
  const found = ctx.catalogue.products.find((one) => one.id === id);
  if (!found) throw new Error(`the plan names a product that the catalogue does not hold: ${id}`);
  return found;
};

export const areasOf = (ctx: PaperContext): readonly Published<AreaMeasure>[] =>
  (ctx.survey?.areas ?? []).filter(({ id }) => ctx.chosen.areas.includes(id));

export const drawnArea = (ctx: PaperContext, id: string): Area | undefined =>
  ctx.job.areas.find((area) => area.id === id);

const isStep = (value: unknown): value is StepBase =>
  typeof value === 'object' && value !== null && 'verdict' in value && 'missing' in value && 'notes' in value;

/** Steps that decide whether the floor may be coated: all of them but the price. */
export const technical = (ctx: PaperContext): readonly StepBase[] => [
  ctx.plan.survey as StepBase,
  ...Object.entries(ctx.option).flatMap(([step, answer]) => (step !== 'price' && isStep(answer) ? [answer] : [])),
];

/** One sentence for a range of profiles, another where both ends are one. */
export function profileSaid(
  ctx: PaperContext,
  code: string,
  { least, most }: { readonly least: string; readonly most: string },
  more: { readonly names?: Readonly<Record<string, string>>; readonly figures?: Readonly<Record<string, string>> } = {},
): Content {
  const ends = [least, most].map((id) => {
    const found = ctx.plan.entries[id];
    return found?.kind === 'given' || found?.kind === 'figure' ? found.value : undefined;
  });
  return say(ends[0] === ends[1] ? `${code}-one` : code, more.names, { ...more.figures, least, most });
}

/** Sentences without those that were already said. */
export function once<T extends Said>(all: readonly T[]): readonly T[] {
  const seen = new Set<string>();
  return all.filter(({ code, figures, names }) => {
    const key = JSON.stringify([code, figures, names]);
    const fresh = !seen.has(key);
    seen.add(key);
    return fresh;
  });
}

/** Reasons of one verdict over some steps, each sentence once. */
export const reasonsOf = (steps: readonly StepBase[], word: Reason['verdict']): readonly Reason[] =>
  once(steps.flatMap(({ verdict }) => verdict.reasons.filter((reason) => reason.verdict === word)));

/** A reason and, behind it, the smallest change that would lift it. */
export const withLift = (reason: Reason): readonly Said[] => (reason.lift ? [reason, reason.lift] : [reason]);

/** Stops somebody decided to go past: the reason itself, then whose word the floor is laid on. */
export function overridesSaid(ctx: PaperContext): readonly Said[] {
  const seen = new Set<string>();
  return technical(ctx).flatMap(({ verdict }) =>
    (verdict.overrides ?? []).flatMap((override) => {
      if (seen.has(override.code)) return [];
      seen.add(override.code);
      const reasons = verdict.reasons.filter(({ code, verdict: word }) => code === override.code && word === 'stop');
      return [...reasons, said('paper-on-the-word-of', { by: override.by, on: override.on, why: override.why })];
    }),
  );
}

/** Stops that nobody took on his word. */
export const openStops = (ctx: PaperContext): readonly Reason[] => {
  const taken = new Set(technical(ctx).flatMap(({ verdict }) => (verdict.overrides ?? []).map(({ code }) => code)));
  return reasonsOf(technical(ctx), 'stop').filter(({ code }) => !taken.has(code));
};

const compact = (parts: readonly (string | undefined)[]): readonly string[] =>
  parts.filter((part): part is string => part !== undefined && part !== '');

/** A paper with the head, foot and marks that all papers share. */
export function paper(ctx: PaperContext, kind: PaperKind, language: Language, blocks: readonly Block[]): Paper {
  const { job, plan } = ctx;
  const date = day(ctx, plan.now);
  const numbered = job.number ? say('paper-number', { number: job.number, date }) : say('paper-date', { date });
  const site = job.customer?.site ?? job.customer?.address;
  return {
    kind,
    language,
    title: said(`paper-title-${kind}`, { job: job.title }),
    head: {
      left: compact([job.firm?.name, job.firm?.by, job.firm?.contact]),
      right: [numbered, ...compact([job.customer?.name, site]).map(name)],
    },
    // Apart, so that the date of a paper always keeps its year.
    foot: said(`paper-foot-${kind}`, {
      issue: ctx.issue,
      at: moment(ctx, plan.now).replace(' ', ', '),
      mark: ctx.mark,
    }),
    blocks,
    mark: ctx.mark,
    at: plan.now,
    overrides: overridesSaid(ctx),
  };
}
