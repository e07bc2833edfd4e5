import type { SystemRanked, SystemsRanked, Voice } from '@slabwright/core';
import type { Terminal } from '../terminal.ts';
import { columns, indent, paint, wrap } from './lines.ts';

/** The front as a table, then what it beats, what one fact decides, and what does not fit with the change that admits it. */
export function printFits(ranked: SystemsRanked, voice: Voice, terminal: Terminal): string {
  const width = Math.min(terminal.width, 110);
  const front = ranked.systems.filter((one) => one.front);
  const beaten = ranked.systems.filter((one) => one.beatenBy !== undefined);
  const nameOf = (id: string | undefined): string => ranked.systems.find(({ system }) => system === id)?.name ?? '';
  const lines = [paint(terminal, 'bold', `Systems of the catalogue on this floor, tried with option ${ranked.option}`)];
  if (ranked.common.length > 0) {
    lines.push('', paint(terminal, 'stop', 'Against every system alike'));
    lines.push(...ranked.common.flatMap((reason) => hanging(voice.say(reason), '–', width)));
  }
  lines.push('', paint(terminal, 'bold', 'Worth a look'));
  if (front.length === 0) lines.push('  None fits as things stand.');
  else {
    const head = ['', 'system', 'price', 'work', `until ${voice.word(`fits-use-${ranked.use}`)}`, 'weakest margin'];
    lines.push(...columns([head, ...front.map((one) => row(one, voice))], { gap: 3, indent: 2, right: [2, 3, 4] }));
    lines.push(...front.flatMap((one) => unknowns(one, voice, width)));
    lines.push(...wrap(voice.word('fits-front'), width - 4).map(indent(2)));
    for (const key of ['fits-hours-alike', `fits-times-${ranked.timesFrom}`, 'fits-margin-rule'])
      lines.push(...wrap(voice.word(key), width - 4).map(indent(2)));
  }
  if (beaten.length > 0) {
    lines.push('', paint(terminal, 'bold', 'Fits, but another is at least as good in everything'));
    const rows = beaten.map((one) => [...row(one, voice), `beaten by ${nameOf(one.beatenBy)}`]);
    lines.push(...columns(rows, { gap: 3, indent: 2, right: [2, 3, 4] }));
    lines.push(...beaten.flatMap((one) => unknowns(one, voice, width)));
  }
  const not = ranked.systems.filter(({ fits }) => fits === 'no');
  if (not.length > 0) lines.push('', paint(terminal, 'stop', 'Does not fit'));
  for (const { name, reason, also } of not) {
    const more = also.length > 0 ? `  (and ${also.length} more)` : '';
    lines.push(`  ■ ${name}${more}`);
    if (!reason) continue;
    lines.push(...wrap(voice.say(reason), width - 8).map(indent(6)));
    if (reason.lift) lines.push(...wrap(`→ ${voice.say(reason.lift)}`, width - 8).map(indent(6)));
  }
  return `${lines.join('\n')}\n`;
}

const hanging = (text: string, mark: string, width: number): string[] => {
  const [first = '', ...rest] = wrap(text, width - 6);
  return [`  ${mark} ${first}`, ...rest.map(indent(4))];
};

const MARKS = { yes: '●', 'not known': '?', no: '■' } as const;

function row(one: SystemRanked, voice: Voice): string[] {
  const { weakest } = one;
  return [
    one.fits === 'yes' && one.cautions.length > 0 ? '▲' : MARKS[one.fits],
    one.name,
    one.price ? voice.show(one.price.id) : 'not known',
    one.hours ? voice.show(one.hours.id) : 'not known',
    one.untilUse ? voice.show(one.untilUse.id) : 'not known',
    weakest ? `${voice.show(weakest.margin.id)} ${voice.word(weakest.word)}` : 'not known',
  ];
}

/** What is not known of a system that may still be laid, and why. */
function unknowns(one: SystemRanked, voice: Voice, width: number): string[] {
  const said = [one.fits === 'not known' ? one.reason : undefined, one.priceWhy, one.untilUseWhy].filter(
    (why) => why !== undefined,
  );
  return said.flatMap((why) => hanging(`${one.name}: ${voice.say(why)}`, '?', width));
}
