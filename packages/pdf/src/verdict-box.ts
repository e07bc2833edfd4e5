import type { Block, VerdictWord } from '@slabwright/core';
import { type Box, besideMark, stack, wholeWhenShort } from './box.ts';
import { verdictMark } from './marks.ts';
import { type Pen, type Tag, tag } from './pen.ts';
import type { Setting } from './setting.ts';
import { run } from './text.ts';
import { textBox } from './text-box.ts';

const WORD: Readonly<Record<VerdictWord, string>> = {
  go: 'verdict-go',
  caution: 'verdict-caution',
  stop: 'verdict-stop',
  'not known': 'verdict-not-known',
};

const upper = (text: string): string => text.charAt(0).toLocaleUpperCase() + text.slice(1);

/** Mark and word, what it is about, and why. The mark never stands without its word. */
export function verdictBox(
  block: Extract<Block, { kind: 'verdict' }>,
  width: number,
  parent: Tag,
  setting: Setting,
): Box {
  const { scale, measure, voice } = setting;
  const size = scale.lead * 1.05;
  const indent = size + scale.body * 0.8;
  const inside = width - indent;
  const word = voice.word(WORD[block.word]);
  const title = voice.say(block.title);
  const head = [
    run(upper(word), { size: scale.lead, weight: 'bold' }),
    // A title that only repeats the word is left out.
    ...(title.toLowerCase() === word.toLowerCase()
      ? []
      : [run(`\u00a0\u00a0 ${title}`, { size: scale.body, weight: 'bold' })]),
  ];
  const words = stack([
    textBox(head, measure, { tag: tag('P', parent), width: inside, leading: 1.2, keepNext: true }),
    ...block.lines.map((said) =>
      textBox([run(voice.say(said), { size: scale.body })], measure, {
        tag: tag('P', parent),
        width: inside,
        leading: scale.leading,
        gap: scale.body * 0.2,
      }),
    ),
  ]);
  const mark = (pen: Pen, x: number, y: number): void =>
    pen.artifact(() => pen.paint(verdictMark(block.word, [x, y + (scale.lead * 1.2 - size) / 2], size)));
  return wholeWhenShort(besideMark(words, indent, scale.body, mark), 150);
}
