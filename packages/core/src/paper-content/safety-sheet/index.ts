import {
  dashes,
  heading,
  known,
  line,
  name,
  openStops,
  type PaperContext,
  paper,
  said,
  say,
  saying,
  strong,
} from '../context.ts';
import type { Block, Content, Issued } from '../paper.ts';
import { roomBlocks, slabBlocks } from './room.ts';
import { vapourBlocks } from './vapour.ts';

const lines = (code: string, what: readonly string[]): readonly Content[] => what.map((one) => say(`${code}-${one}`));

function dust(ctx: PaperContext): readonly Block[] {
  const prepared = known(ctx.option.preparation);
  return [
    heading('safety-dust'),
    ...dashes([
      ...(prepared?.dust ?? []).map(saying),
      ...(prepared ? [] : [say('safety-dust-not-known')]),
      ...lines('safety-dust', ['no-sweeping', 'plan']),
    ]),
  ];
}

/** What the resin does to skin and eyes, product by product. */
function skin(ctx: PaperContext): readonly Block[] {
  const safety = known(ctx.option.safety);
  const holds = (code: string, products: readonly string[]): readonly Content[] =>
    products.length > 0 ? [say(code, { products: products.join(', ') })] : [];
  return [
    heading('safety-skin'),
    ...dashes([
      ...holds('safety-isocyanate', safety?.isocyanate ?? []),
      ...holds('safety-amine', safety?.amine ?? []),
      ...lines('safety-skin', ['gloves', 'sleeves', 'no-solvent', 'eyes', 'respirator']),
    ]),
  ];
}

function lifting(ctx: PaperContext): readonly Block[] {
  const kits = known(ctx.option.safety)?.kits ?? [];
  const machines = (known(ctx.option.preparation)?.tooling ?? []).filter(({ code }) =>
    code.startsWith('preparation-tool-mass'),
  );
  return [
    heading('safety-lifting'),
    ...(kits.length > 0
      ? [
          {
            kind: 'facts',
            rows: kits.map((kit) => ({
              label: name(`${kit.name}, ${kit.pack}`),
              value: strong(kit.mass),
              note: say('safety-kit-note'),
            })),
          } as const,
        ]
      : [line(say('safety-kit-not-known'))]),
    ...dashes([...machines.map(saying), ...lines('safety-lifting', ['two', 'ramp'])]),
  ];
}

/** Numbers somebody calls with one hand: left for the firm, because no sheet in the catalogue states them. */
function numbers(ctx: PaperContext): readonly Block[] {
  // By sheet, not by product: another hardener may come with a sheet of its own.
  const sheets = [...new Map((known(ctx.option.coats)?.coats ?? []).map((coat) => [coat.sheet, coat])).values()];
  return [
    heading('safety-numbers'),
    {
      kind: 'table',
      columns: [{ head: said('safety-sheet-of') }, { head: said('safety-number'), blank: true }],
      rows: [
        ...sheets.map((coat): readonly Content[] => [name(coat.sheet), name('')]),
        ...['fire', 'poison', 'doctor', 'firm'].map((who): readonly Content[] => [say(`safety-call-${who}`), name('')]),
      ],
    },
  ];
}

/**
 * What the crew should know of the dangers of this job. It informs and defers: no figure carries a verdict, and a
 * limit of law stands here only with its document, or as a line for the firm's own entry.
 */
export function safetySheet(ctx: PaperContext): Issued {
  const safety = known(ctx.option.safety);
  return {
    ok: true,
    paper: paper(ctx, 'safety-sheet', ctx.language, [
      { kind: 'headline', text: said('safety-headline', { job: ctx.job.title }) },
      { kind: 'boxed', lines: [said('safety-defers'), said('safety-no-verdict')] },
      ...(openStops(ctx).length > 0 || ctx.option.conditional ? [line(say('safety-not-to-start'))] : []),
      ...(safety ? vapourBlocks(ctx, safety) : [heading('safety-vapour'), line(say('safety-vapour-not-known'))]),
      ...roomBlocks(ctx),
      heading('safety-monoxide'),
      ...dashes(lines('safety-monoxide', ['engines', 'heaters', 'alarm'])),
      ...dust(ctx),
      ...skin(ctx),
      ...slabBlocks(ctx),
      ...lifting(ctx),
      heading('safety-slips'),
      ...dashes(lines('safety-slips', ['spikes', 'flake', 'line'])),
      heading('safety-power'),
      ...dashes(lines('safety-power', ['circuit', 'ground-fault', 'electrician'])),
      heading('safety-body'),
      ...dashes(lines('safety-body', ['noise', 'heat'])),
      heading('safety-waste'),
      ...dashes(lines('safety-waste', ['pails', 'rags', 'dust', 'wash'])),
      heading('safety-permit'),
      ...dashes([...(safety?.permit ?? []).map(saying), say('safety-permit-ask')]),
      ...numbers(ctx),
      { kind: 'signatures', fields: [said('safety-sign-read'), said('safety-sign-lead')] },
    ]),
  };
}
