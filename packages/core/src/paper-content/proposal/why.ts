import type { Said } from '../../kernel/said.ts';
import { dashes, entry, heading, known, type PaperContext, said, say, saying } from '../context.ts';
import type { Block, Content } from '../paper.ts';

/** What the floor must stand, and what the sheets of this system show of it. */
function asked(ctx: PaperContext): readonly Block[] {
  const needs = known(ctx.option.needs)?.needs ?? [];
  if (needs.length === 0) return [];
  return [
    heading('proposal-why-asked'),
    {
      kind: 'table',
      columns: [
        { head: said('proposal-why-use'), width: 0.4 },
        { head: said('proposal-why-answer'), width: 0.15 },
        { head: said('proposal-why-by') },
      ],
      rows: needs.map((need): readonly Content[] => [
        saying(need.why),
        say(`proposal-why-sheet-${need.met.replace(' ', '-')}`),
        need.judged[0] ? saying(need.judged[0]) : say('paper-not-known'),
      ]),
    },
  ];
}

/** The bond in plain words: the weakest known link, and what a stickier product would be worth. */
function bond(ctx: PaperContext): readonly Block[] {
  const governs = known(ctx.option.governs);
  if (!governs) return [];
  const lines: readonly Said[] = governs.notes.filter(({ code }) => PLAIN.has(code));
  return lines.length === 0 ? [] : [heading('proposal-why-bond'), ...dashes(lines.map(saying))];
}

/** Of what the bond step has to say, the part a customer follows without the trade. */
const PLAIN: ReadonlySet<string> = new Set([
  'governs-headline-concrete',
  'governs-headline-interface',
  'governs-headline-coat',
  'governs-headline-estimate',
  'governs-chance-nearly-certain',
  'governs-chance-likely',
  'governs-chance-even',
  'governs-chance-unlikely',
  'governs-worth-nothing',
  'governs-worth',
  'governs-ordinary',
]);

/** The wettest reading beside what the system bears, method by method. */
function water(ctx: PaperContext): readonly Block[] {
  const limits = known(ctx.option.system)?.moistureLimit ?? [];
  const rows = (ctx.survey?.moisture.highest ?? []).flatMap(({ method, value }) => {
    const limit = limits.find((one) => one.method === method);
    return limit
      ? [
          { label: say('proposal-why-wettest', { method }), value: entry(value) },
          { label: say('proposal-why-bears', { method }), value: entry(limit.limit) },
        ]
      : [];
  });
  return rows.length === 0 ? [] : [heading('proposal-why-water'), { kind: 'facts', rows }];
}

/** What cracks and joints will show in the first cold season, those that show the same together. */
function winter(ctx: PaperContext): readonly Block[] {
  const lines = (known(ctx.option.cracks)?.notes ?? []).filter(({ code }) => code.startsWith('cracks-winter-'));
  return lines.length === 0 ? [] : [heading('proposal-why-winter'), ...dashes(lines.map(saying))];
}

/** One page in plain words on why this system suits this floor; empty while nothing can be said yet. */
export function why(ctx: PaperContext): readonly Block[] {
  // The longest part has a column of its own, so that the page stays one page.
  const left = [...bond(ctx), ...water(ctx)];
  const right = winter(ctx);
  const below: readonly Block[] =
    left.length > 0 && right.length > 0 ? [{ kind: 'columns', left, right }] : [...left, ...right];
  const blocks = [...asked(ctx), ...below];
  if (blocks.length === 0) return [];
  const under = said('proposal-why-under', { system: ctx.system.name });
  return [
    { kind: 'page-break' },
    { kind: 'headline', text: said('proposal-why-headline'), under },
    ...blocks,
    { kind: 'page-break' },
  ];
}
