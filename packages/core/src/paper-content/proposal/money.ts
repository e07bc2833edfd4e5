import type { OptionPlan } from '../../plan.ts';
import { dashes, entry, heading, known, line, name, type PaperContext, said, say, saying, strong } from '../context.ts';
import type { Block, Content } from '../paper.ts';

const UNKNOWN: Content = say('proposal-price-not-known');

/** Words of a verdict: `@verdict-caution` and so on stand in the shared message file. */
const verdictSaid = (option: OptionPlan): Content => say(`verdict-${option.verdict.replaceAll(' ', '-')}`);

const cells = (ctx: PaperContext, of: (option: OptionPlan) => Content): readonly Content[] => ctx.plan.options.map(of);

function coatsOf(option: OptionPlan): Content {
  const fitted = known(option.system);
  return fitted ? name(fitted.layers.map((layer) => layer.name).join(', ')) : say('paper-not-known');
}

function dryOf(option: OptionPlan): Content {
  const [first, ...rest] = known(option.system)?.layers ?? [];
  if (!first) return say('paper-not-known');
  if (rest.length === 0) return entry(first.dry);
  const last = rest.at(-1) ?? first;
  return say('proposal-dry-first-last', { first: first.name, last: last.name }, { dry: first.dry, top: last.dry });
}

/** Options side by side, the accepted one named: like for like, no totals of stars. */
export function sideBySide(ctx: PaperContext): readonly Block[] {
  const { options } = ctx.plan;
  if (options.length < 2) return [];
  const price = (part: 'price' | 'perArea' | 'tax' | 'total' | 'deposit') => (option: OptionPlan) => {
    const id = known(option.price)?.[part];
    return id ? entry(id) : UNKNOWN;
  };
  const rows: readonly (readonly [string, readonly Content[]])[] = [
    ['proposal-side-state', cells(ctx, verdictSaid)],
    ['proposal-side-coats', cells(ctx, coatsOf)],
    ['proposal-side-dry', cells(ctx, dryOf)],
    ['proposal-side-left-out', cells(ctx, (option) => leftOut(ctx, option))],
    ['proposal-price', cells(ctx, price('price'))],
    ['proposal-per-area', cells(ctx, price('perArea'))],
    ['proposal-tax', cells(ctx, price('tax'))],
    ['proposal-total', cells(ctx, price('total'))],
    ['proposal-deposit', cells(ctx, price('deposit'))],
  ];
  return [
    heading('proposal-options'),
    {
      kind: 'table',
      columns: [
        { head: said('proposal-side-what') },
        ...options.map((option) => ({
          head: said(option.id === ctx.option.id ? 'proposal-side-this' : 'proposal-side-other', {
            option: option.name,
          }),
        })),
      ],
      rows: rows.map(([code, values]) => [say(code), ...values]),
    },
  ];
}

function leftOut(ctx: PaperContext, option: OptionPlan): Content {
  const out = ctx.job.options.find(({ id }) => id === option.id)?.leaveOut ?? [];
  return out.length > 0 ? name(out.join(', ')) : name('–');
}

/** Price per option and area, tax and deposit by place with its document, how long it holds. */
export function money(ctx: PaperContext): readonly Block[] {
  const priced = known(ctx.option.price);
  if (!priced?.price) return [heading('proposal-price-heading'), line(UNKNOWN)];
  const rows: { readonly label: Content; readonly value: Content }[] = [
    { label: say('proposal-price'), value: strong(priced.price) },
  ];
  if (priced.perArea) rows.push({ label: say('proposal-per-area'), value: entry(priced.perArea) });
  if (priced.tax) rows.push({ label: say('proposal-tax'), value: entry(priced.tax) });
  if (priced.total) rows.push({ label: say('proposal-total'), value: strong(priced.total) });
  if (priced.deposit) rows.push({ label: say('proposal-deposit'), value: entry(priced.deposit) });
  const legal = priced.notes.filter(({ code }) => /^price-(tax|deposit|valid)-/.test(code));
  const hasValid = legal.some(({ code }) => code === 'price-valid-for');
  return [
    heading('proposal-price-heading'),
    { kind: 'facts', rows },
    ...dashes([...legal.map(saying), ...(hasValid ? [] : [say('proposal-valid-own-entry')])]),
  ];
}

/** The usual surprises, priced before they happen: signed first, done then. */
export function changes(ctx: PaperContext): readonly Block[] {
  const priced = known(ctx.option.price);
  const listed = priced?.changes ?? [];
  if (listed.length === 0) return [];
  const each = new Set(
    (priced?.notes ?? []).flatMap(({ code, figures }) => (code === 'price-change-per-unit' ? [figures?.amount] : [])),
  );
  return [
    heading('proposal-changes'),
    {
      kind: 'facts',
      rows: listed.map((change) => ({
        label: name(change.name),
        value: say(change.deducts ? 'proposal-change-less' : 'proposal-change-more', {}, { amount: change.amount }),
        ...(change.trigger
          ? { note: name(change.trigger) }
          : each.has(change.amount)
            ? { note: say('proposal-change-each') }
            : {}),
      })),
    },
    line(say('proposal-changes-rule')),
  ];
}
