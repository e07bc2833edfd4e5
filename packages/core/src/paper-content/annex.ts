import type { Entry, Given } from '../kernel/entry.ts';
import type { Said } from '../kernel/said.ts';
import { citedInFull, citedShort } from '../words/cited.ts';
import { dashes, entry, heading, name, type PaperContext, paper, said, say, saying } from './context.ts';
import type { Block, Content, Issued } from './paper.ts';

/** Steps in the order of the job; each is a heading of the annex. What belongs to none of them stands last. */
const STEPS = [
  'survey',
  'preparation',
  'system',
  'thinner',
  'cracks',
  'quantities',
  'coats',
  'hours',
  'windows',
  'spread',
  'safety',
  'price',
] as const;
type Step = (typeof STEPS)[number] | 'other';

function stepOf(ctx: PaperContext, id: string): Step | undefined {
  if (id.startsWith('survey.')) return 'survey';
  const prefix = `${ctx.option.id}.`;
  if (!id.startsWith(prefix)) return undefined;
  const first = id.slice(prefix.length).split('.')[0] ?? '';
  return STEPS.find((step) => step === first) ?? 'other';
}

/** Where and when a given was read; of a table, which. */
function whereOf({ where, when, source }: Given): Content {
  const cited = source === undefined ? undefined : citedShort(source, where);
  return cited ? saying(cited) : name([where, when?.slice(0, 10)].filter(Boolean).join(', '));
}

/** Givens in one table: value, where it comes from, place and day. The figures below lean on them. */
function givens(entries: readonly Entry[]): readonly Block[] {
  const rows = entries.flatMap((one): readonly (readonly Content[])[] =>
    one.kind === 'given'
      ? [
          [
            name(one.id),
            entry(one.id),
            say(`annex-origin-${one.origin.replaceAll(' ', '-').replaceAll("'", '')}`),
            whereOf(one),
          ],
        ]
      : [],
  );
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      columns: [
        { head: said('annex-given') },
        { head: said('annex-value'), align: 'right' },
        { head: said('annex-from') },
        { head: said('annex-where') },
      ],
      rows,
    },
  ];
}

/** Figures by their formula, each formula where its first figure stands. */
function workings(entries: readonly Entry[]): readonly Block[] {
  const byFormula = new Map<string, [string, ...string[]]>();
  for (const one of entries) {
    if (one.kind === 'given') continue;
    const ids = byFormula.get(one.formula);
    if (ids) ids.push(one.id);
    else byFormula.set(one.formula, [one.id]);
  }
  return [...byFormula.values()].map((ids) => ({ kind: 'working', entries: ids }));
}

/** Every source the figures cite, in the order of the alphabet. */
function sources(entries: readonly Entry[]): readonly Block[] {
  const keys = new Set(entries.flatMap(({ source }) => source ?? []));
  const said = [...keys].flatMap((key) => citedInFull(key) ?? []);
  const called = (one: Said): string => one.names?.cited ?? '';
  said.sort((a, b) => (called(a) < called(b) ? -1 : 1));
  return said.length > 0 ? [heading('annex-sources'), ...dashes(said.map(saying))] : [];
}

function blocksOf(step: Step, entries: readonly Entry[]): readonly Block[] {
  if (entries.length === 0) return [];
  return [{ kind: 'heading', text: said(`annex-step-${step}`) }, ...givens(entries), ...workings(entries)];
}

/** Every figure of the option with its equation, its inputs and its source. */
export function annex(ctx: PaperContext): Issued {
  const steps: readonly Step[] = [...STEPS, 'other'];
  const byStep = new Map<Step, Entry[]>(steps.map((step) => [step, []]));
  for (const one of Object.values(ctx.plan.entries)) {
    const step = stepOf(ctx, one.id);
    if (step) byStep.get(step)?.push(one);
  }
  return {
    ok: true,
    paper: paper(ctx, 'working-annex', 'en', [
      { kind: 'headline', text: said('annex-headline', { option: ctx.option.name }), under: said('annex-under') },
      ...steps.flatMap((step) => blocksOf(step, byStep.get(step) ?? [])),
      ...sources([...byStep.values()].flat()),
    ]),
  };
}
