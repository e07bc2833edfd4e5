import type { HoursPlan, PricePlan, QuantitiesPlan } from '@slabwright/core';
import {
  type Answer,
  answered,
  type OptionPlan,
  type Published,
  type Reason,
  type Said,
  type StepBase,
  severity,
  type VerdictWord,
  type Voice,
} from '@slabwright/core';
import type { Planned } from '../planned.ts';
import type { Terminal } from '../terminal.ts';
import { governsStep, needsStep, type StepRow } from './asked.ts';
import { columns, indent, padEnd, paint, wrap } from './lines.ts';
import { spreadStep } from './spread.ts';

/** Shape beside the word, so that a verdict reads without colour. */
const SHAPES: Record<VerdictWord, string> = { go: '●', caution: '▲', stop: '■', 'not known': '?' };
const WORDS: Record<VerdictWord, string> = { go: 'go', caution: 'with care', stop: 'STOP', 'not known': 'not known' };

const verdictText = (word: VerdictWord, terminal: Terminal): string =>
  paint(terminal, word, padEnd(`${SHAPES[word]} ${WORDS[word]}`, 11));

/**
 * The plan on about one screen: verdicts first, then what to watch, buy and pay. How numbers were counted and what was
 * assumed fills a second screen, for whoever asks for the notes.
 */
export function printPlan(done: Planned, terminal: Terminal, notes: 'notes' | 'short' = 'short'): string {
  const { plan, job, voice } = done;
  const width = Math.min(terminal.width, 110);
  const lines: string[] = [];
  const leading = plan.options.find((o) => o.accepted) ?? plan.options[0];
  lines.push(
    `${paint(terminal, 'bold', plan.title)}${job.number ? `  ${job.number}` : ''}   as of ${voice.plain(plan.now.slice(0, 16).replace('T', ', '))}`,
  );
  if (!leading) {
    lines.push('', `${verdictText(plan.verdict, terminal)} survey   ${surveyLine(plan.survey, voice)}`);
    lines.push(...reasonLines(plan.survey, voice, terminal, width));
    lines.push('', 'No option is drawn up yet: add one under "options" in the job, with a system of the catalogue.');
    return `${lines.join('\n')}\n`;
  }
  lines.push(
    '',
    `${paint(terminal, plan.verdict, `${SHAPES[plan.verdict]} ${WORDS[plan.verdict].toUpperCase()}`)}  ${leading.name}${leading.conditional ? '  (conditional)' : ''}`,
  );
  const steps: readonly StepRow[] = [
    ['survey', plan.survey, surveyLine(plan.survey, voice)],
    ...needsStep(leading, voice),
    ['preparation', leading.preparation, preparationLine(leading, voice)],
    ['system', leading.system, systemLine(leading, voice)],
    ...governsStep(leading, voice),
    ...cracksStep(leading, voice),
    ...thinnerStep(leading, voice),
    ['quantities', leading.quantities, quantitiesLine(leading.quantities, done)],
    ['hours', leading.hours, hoursLine(leading.hours, voice)],
    ...spreadStep(leading, voice),
    ['price', leading.price, priceLine(leading.price, voice)],
  ];
  lines.push('');
  for (const [name, step, says] of steps) {
    lines.push(`  ${verdictText(step.verdict.word, terminal)} ${padEnd(name, 12)} ${says}`);
  }
  for (const word of ['stop', 'not known', 'caution'] as const) {
    const reasons = reasonsOf(
      steps.map(([, step]) => step),
      word,
    );
    if (reasons.length === 0) continue;
    lines.push('', paint(terminal, word, word === 'caution' ? 'Watch' : word === 'stop' ? 'Stop' : 'Not known'));
    lines.push(...reasons.flatMap((reason) => saidLines(reason, SHAPES[word], voice, width)));
  }
  lines.push(
    ...missingLines(
      steps.map(([, step]) => step),
      voice,
      terminal,
      width,
    ),
  );
  const told = [...new Set(steps.flatMap(([, step]) => step.notes.map((note) => voice.say(note))))];
  if (notes === 'notes') lines.push(...noteLines(told, terminal, width));
  lines.push(...buyLines(leading.quantities, done, terminal));
  lines.push(...priceLines(leading.price, voice, terminal));
  lines.push(...otherOptions(plan.options, leading, done, terminal));
  if (notes === 'short' && told.length > 0) {
    lines.push(
      '',
      `Good to know: ${told.length} notes on how things were counted and what was assumed; --notes prints them.`,
    );
  }
  const example = answered(leading.quantities)
    ? leading.quantities.layers.at(-1)?.needed
    : plan.entries['survey.total']?.id;
  if (example) lines.push('', paint(terminal, 'quiet', `How a number came about: slabwright explain <job> ${example}`));
  return `${lines.join('\n')}\n`;
}

const nameText = (name: string, voice: Voice): string => (name.startsWith('@') ? voice.word(name.slice(1)) : name);

const join = (...parts: readonly (string | undefined | false)[]): string => parts.filter(Boolean).join(' · ');

function surveyLine(survey: Planned['plan']['survey'], voice: Voice): string {
  if (!answered(survey)) return '';
  const highest = survey.moisture.highest[0];
  return join(
    voice.show(survey.total),
    highest && `${highest.method}: ${voice.show(highest.value)} at most`,
    survey.pullOff && `pull-off ${voice.show(survey.pullOff.mean)}, least ${voice.show(survey.pullOff.least)}`,
  );
}

function preparationLine({ preparation }: OptionPlan, voice: Voice): string {
  if (!answered(preparation)) return '';
  const [least, most] = [voice.show(preparation.target.least), voice.show(preparation.target.most)];
  const profile = `profile ${least === most ? least : `${least} to ${most}`}`;
  return join(
    preparation.chosen ? voice.word(`preparation-method-${preparation.chosen}`) : undefined,
    profile,
    `passes: ${voice.show(preparation.passes)}`,
  );
}

function systemLine({ system }: OptionPlan, voice: Voice): string {
  if (!answered(system)) return '';
  return join(...system.layers.map((layer) => `${layer.name} ${voice.show(layer.wet)} wet`));
}

/** Only where the floor has a crack or a joint. */
function cracksStep({ cracks }: OptionPlan, voice: Voice): readonly [string, Answer<StepBase>, string][] {
  if (!answered(cracks)) return [['cracks', cracks, '']];
  if (cracks.cracks.length === 0) return [];
  const counted = new Map<string, number>();
  for (const { handling } of cracks.cracks) counted.set(handling, (counted.get(handling) ?? 0) + 1);
  const handled = [...counted].map(([handling, count]) => `${count} to ${voice.word(handlingKey(handling))}`);
  const [widest] = cracks.cracks
    .flatMap(({ season }) => season ?? [])
    .sort((a, b) => numberOf(voice, b) - numberOf(voice, a));
  return [['cracks', cracks, join(...handled, widest && `opens by about ${voice.show(widest)} by the cold season`)]];
}

const handlingKey = (handling: string): string => `cracks-handling-${handling.replaceAll(' ', '-')}`;

const numberOf = (voice: Voice, id: string): number => {
  const entry = voice.entry(id);
  return 'value' in entry ? entry.value : 0;
};

/** Only where somebody thins a coat. */
function thinnerStep({ thinner }: OptionPlan, voice: Voice): readonly [string, Answer<StepBase>, string][] {
  if (!answered(thinner)) return [['thinner', thinner, '']];
  const thinned = thinner.coats.flatMap(({ name, ratio, wet }) =>
    ratio ? [`${name} ${voice.show(ratio)}, gauge ${voice.show(wet)}`] : [],
  );
  const about = thinner.verdict.reasons.length > 0;
  return thinned.length > 0 || about ? [['thinner', thinner, join(...thinned)]] : [];
}

function quantitiesLine(quantities: Answer<QuantitiesPlan>, done: Planned): string {
  if (!answered(quantities)) return '';
  return join(...quantities.buying.map((line) => `${line.name} ${packsText(line, done)}`));
}

function packsText(line: Published<QuantitiesPlan>['buying'][number], { catalogue, voice }: Planned): string {
  const product = catalogue.products.find((p) => p.id === line.item);
  const tinned = [...(catalogue.thinners ?? []), ...(catalogue.fillers ?? [])].find((one) => one.id === line.item);
  const media = catalogue.media?.find((m) => m.id === line.item);
  const nameOf = (id: string): string =>
    product?.packs.find((p) => p.id === id)?.name ??
    tinned?.packs.find((p) => p.id === id)?.name ??
    (media ? `bag of ${media.bag.typed}` : id);
  return line.packs.map(({ pack, count }) => `${voice.show(count)} × ${nameOf(pack)}`).join(' + ');
}

function hoursLine(hours: Answer<HoursPlan>, voice: Voice): string {
  if (!answered(hours)) return '';
  return join(hours.personTime && `${voice.show(hours.personTime)} of work`, `${voice.show(hours.paidTime)} paid`);
}

function priceLine(price: Answer<PricePlan>, voice: Voice): string {
  if (!answered(price) || !price.price) return '';
  return join(
    voice.show(price.total ?? price.price),
    price.perArea && voice.show(price.perArea),
    price.deposit && `deposit ${voice.show(price.deposit)}`,
  );
}

function reasonsOf(steps: readonly StepBase[], word: VerdictWord): readonly Reason[] {
  return steps.flatMap((step) => step.verdict.reasons.filter((reason) => reason.verdict === word));
}

function saidLines(said: Said & { readonly lift?: Said }, mark: string, voice: Voice, width: number): string[] {
  const [first = '', ...rest] = wrap(voice.say(said), width - 6);
  const lines = [`  ${mark} ${first}`, ...rest.map(indent(4))];
  if (said.lift) lines.push(...wrap(`→ ${voice.say(said.lift)}`, width - 8).map(indent(4)));
  return lines;
}

function reasonLines(step: StepBase, voice: Voice, terminal: Terminal, width: number): string[] {
  const sorted = [...step.verdict.reasons].sort((a, b) => severity(a.verdict) - severity(b.verdict));
  return sorted.flatMap((reason) =>
    saidLines(reason, paint(terminal, reason.verdict, SHAPES[reason.verdict]), voice, width),
  );
}

function missingLines(steps: readonly StepBase[], voice: Voice, terminal: Terminal, width: number): string[] {
  const said = new Set(steps.flatMap((step) => step.verdict.reasons.map((reason) => voice.say(reason))));
  const missing = steps.flatMap((step) => step.missing).filter(({ fact }) => !said.has(voice.say(fact)));
  if (missing.length === 0) return [];
  const lines = ['', paint(terminal, 'bold', 'Missing, and what it changes')];
  for (const { fact, changes, meanwhile } of missing) {
    const held = meanwhile === 'held' ? 'until then nothing says go' : 'assumed meanwhile';
    lines.push(...saidLines(fact, '–', voice, width));
    lines.push(...wrap(`${voice.say(changes)} (${held})`, width - 8).map(indent(4)));
  }
  return lines;
}

/** What is worth knowing beside the verdicts: how numbers were counted, what was assumed. */
function noteLines(notes: readonly string[], terminal: Terminal, width: number): string[] {
  if (notes.length === 0) return [];
  return [
    '',
    paint(terminal, 'bold', 'Good to know'),
    ...notes.flatMap((note) => {
      const [first = '', ...rest] = wrap(note, width - 6);
      return [`  · ${first}`, ...rest.map(indent(4))];
    }),
  ];
}

function buyLines(quantities: Answer<QuantitiesPlan>, done: Planned, terminal: Terminal): string[] {
  const { voice } = done;
  if (!answered(quantities) || quantities.buying.length === 0) return [];
  const rows = quantities.buying.map((line) => [
    line.name,
    packsText(line, done),
    `need ${voice.show(line.needed)}`,
    `left ${voice.show(line.left)}`,
    line.turns ? voice.say(line.turns) : '',
  ]);
  return ['', paint(terminal, 'bold', 'Buy'), ...columns(rows, { gap: 3, indent: 2 })];
}

function priceLines(price: Answer<PricePlan>, voice: Voice, terminal: Terminal): string[] {
  if (!answered(price) || price.lines.length === 0) return [];
  const rows = price.lines.map((line) => [
    nameText(line.name, voice),
    voice.show(line.quantity),
    voice.show(line.rate),
    voice.show(line.amount),
  ]);
  const add = (name: string, id: string | undefined): void => {
    if (id) rows.push([name, '', '', voice.show(id)]);
  };
  add('direct cost', price.direct);
  add('overhead', price.overhead);
  add('profit', price.profit);
  add('price', price.price);
  add('tax', price.tax);
  add('total', price.total);
  return ['', paint(terminal, 'bold', 'Price'), ...columns(rows, { gap: 3, indent: 2, right: [1, 2, 3] })];
}

function otherOptions(
  options: readonly OptionPlan[],
  leading: OptionPlan,
  done: Planned,
  terminal: Terminal,
): string[] {
  const others = options.filter((o) => o !== leading);
  if (others.length === 0) return [];
  const rows = others.map((o) => [
    `${SHAPES[o.verdict]} ${WORDS[o.verdict]}`,
    o.name,
    quantitiesLine(o.quantities, done),
    priceLine(o.price, done.voice),
  ]);
  return ['', paint(terminal, 'bold', 'Beside it'), ...columns(rows, { gap: 3, indent: 2 })];
}
