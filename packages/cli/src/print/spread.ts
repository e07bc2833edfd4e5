import {
  type Answer,
  answered,
  type CoatSpread,
  type OptionPlan,
  type Published,
  type SpreadsPlan,
  severity,
  type Voice,
} from '@slabwright/core';
import type { Planned } from '../planned.ts';
import type { Terminal } from '../terminal.ts';
import type { StepRow } from './asked.ts';
import { columns, indent, paint, wrap } from './lines.ts';

type Coat = Published<CoatSpread>;

/** Pours of each coat and how long its oldest edge waits; `slabwright spread` draws them. */
export function spreadStep({ spread }: OptionPlan, voice: Voice): readonly StepRow[] {
  if (!spread) return [];
  if (!answered(spread)) return [['spread', spread, '']];
  const coats = spread.coats.map(({ name, pours, largestAge }) =>
    largestAge ? `${name} ${pours.length} pours, oldest edge ${voice.show(largestAge)}` : `${name} no order of pours`,
  );
  return [['spread', spread, coats.join(' · ')]];
}

const clock = (at: string): string => at.slice(11, 16);

/** Each coat as a map of numbered pours and a table of batches. */
export function printSpreads(
  { plan, voice }: Planned,
  option: OptionPlan,
  spread: Answer<SpreadsPlan>,
  terminal: Terminal,
): string {
  const width = Math.min(terminal.width, 110);
  const lines = [`${paint(terminal, 'bold', plan.title)}   ${option.name}`];
  const say = (mark: string, text: string, by = 2): void => {
    const [first = '', ...rest] = wrap(text, width - by - 4);
    lines.push(`${' '.repeat(by)}${mark} ${first}`, ...rest.map(indent(by + 2)));
  };
  const reasons = [...spread.verdict.reasons].sort((a, b) => severity(a.verdict) - severity(b.verdict));
  for (const reason of reasons) {
    say({ go: '●', caution: '▲', stop: '■', 'not known': '?' }[reason.verdict], voice.say(reason));
    if (reason.lift) say('→', voice.say(reason.lift), 4);
  }
  if (answered(spread)) {
    for (const coat of spread.coats) lines.push('', ...coatLines(coat, { voice }, terminal));
    const notes = [...new Set(spread.notes.map((note) => voice.say(note)))];
    if (notes.length > 0) lines.push('', paint(terminal, 'bold', 'Good to know'));
    for (const note of notes) say('·', note);
  }
  return `${lines.join('\n')}\n`;
}

function coatLines(coat: Coat, { voice }: Pick<Planned, 'voice'>, terminal: Terminal): readonly string[] {
  const begins = coat.start ? `   ${coat.start.slice(0, 16).replace('T', ' ')}` : '';
  const day = coat.day ? `, day ${coat.day.number} of ${coat.day.of}` : '';
  const title = `${paint(terminal, 'bold', `${coat.name}${day}`)}${begins}${coat.laid ? ` to ${clock(coat.laid)}` : ''}`;
  if (coat.state !== 'planned') return [title, '  no order of pours'];
  const rows = coat.pours.map((pour) => [
    pour.pour,
    voice.show(pour.volume),
    [
      ...pour.parts.map(({ name, volume, mass }) => `${name} ${voice.show(mass ?? volume)}`),
      ...(pour.thinner ? [`thinner ${voice.show(pour.thinner)}`] : []),
    ].join(' + '),
    voice.show(pour.area),
    `mix ${clock(pour.mixFrom)}`,
    `place by ${clock(pour.placeBy)}`,
    voice.say(pour.ends),
  ]);
  const { openTime, workingTime, largestAge, ageShare, worstPour } = coat;
  return [
    title,
    ...coat.map.map((row) => `    ${[...row].join(' ')}`),
    '',
    ...columns(rows, { gap: 2, indent: 2, right: [0, 1, 3] }),
    '',
    ...(coat.day?.says ?? []).flatMap((said) => {
      const [first = '', ...rest] = wrap(voice.say(said), Math.min(terminal.width, 110) - 4);
      return [`  · ${first}`, ...rest.map(indent(4))];
    }),
    ...(largestAge && ageShare && openTime
      ? [
          `  oldest wet edge ${voice.show(largestAge)} of ${voice.show(openTime)} open (${voice.show(ageShare)}, ${coat.openFrom})`,
        ]
      : []),
    ...(worstPour && workingTime
      ? [`  slowest pour ${worstPour.pour}: ${voice.show(worstPour.time)} of ${voice.show(workingTime)} working time`]
      : []),
    ...(coat.seamLength && coat.walk && coat.leftOver
      ? [
          `  seams ${voice.show(coat.seamLength)} · walking ${voice.show(coat.walk)} · left over ${voice.show(coat.leftOver)} · out by ${coat.wayOut.join(', ')}`,
        ]
      : []),
    ...coat.bailOuts.map(
      ({ pour, at, tape, joints }) =>
        `  if something goes wrong in pour ${pour}: stop at ${clock(at)}${joints.length > 0 ? ` on ${joints.join(', ')}` : ''}, ${voice.show(tape)} of tape`,
    ),
  ];
}
