import type { Entry } from '../kernel/entry.ts';
import { entry, name, type PaperContext, paper, said, say } from './context.ts';
import type { Block, Content, Issued } from './paper.ts';

/** Steps in the order of the job; each is a heading of the annex. */
const STEPS = ['survey', 'preparation', 'system', 'quantities', 'coats', 'hours', 'safety', 'price'] as const;

const prefixOf = (ctx: PaperContext, step: (typeof STEPS)[number]): string =>
  step === 'survey' ? 'survey.' : `${ctx.option.id}.${step}.`;

/** Givens in one table: value, where it comes from, place and day. The figures below lean on them. */
function givens(entries: readonly Entry[], prefix: string): readonly Block[] {
  const rows = entries.flatMap((one): readonly (readonly Content[])[] =>
    one.kind === 'given'
      ? [
          [
            name(one.id.slice(prefix.length)),
            entry(one.id),
            say(`annex-origin-${one.origin.replaceAll(' ', '-').replaceAll("'", '')}`),
            name([one.where ?? one.source, one.when?.slice(0, 10)].filter(Boolean).join(', ')),
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

function step(ctx: PaperContext, which: (typeof STEPS)[number]): readonly Block[] {
  const prefix = prefixOf(ctx, which);
  const entries = Object.values(ctx.plan.entries).filter(({ id }) => id.startsWith(prefix));
  if (entries.length === 0) return [];
  return [
    { kind: 'heading', text: said(`annex-step-${which}`) },
    ...givens(entries, prefix),
    ...entries.flatMap((one): readonly Block[] => (one.kind === 'given' ? [] : [{ kind: 'working', entry: one.id }])),
  ];
}

/** Every figure of the option with its equation, its inputs and its source. */
export function annex(ctx: PaperContext): Issued {
  return {
    ok: true,
    paper: paper(ctx, 'working-annex', 'en', [
      { kind: 'headline', text: said('annex-headline', { option: ctx.option.name }), under: said('annex-under') },
      ...STEPS.flatMap((which) => step(ctx, which)),
    ]),
  };
}
