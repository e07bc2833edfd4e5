import type { Voice } from '../words/say.ts';
import { showBand } from '../words/show.ts';
import type { Block, Content, Paper } from './paper.ts';

/** A paper as plain text: what a terminal prints and what regression tests keep. */

const contentText = (content: Content, voice: Voice): string => {
  if ('name' in content) return voice.plain(content.name);
  if ('say' in content) return voice.say(content.say);
  const band = content.band ? showBand(voice.entry(content.entry), voice.reader) : '';
  return band ? `${voice.show(content.entry)} (${band})` : voice.show(content.entry);
};

const MARKS = { stop: '■', dash: '-', box: '[ ]' } as const;
const indented = (lines: readonly string[]): readonly string[] => lines.map((line) => `  ${line}`);

function floorText({ drawing, beside = [] }: Extract<Block, { kind: 'floor' }>, voice: Voice): readonly string[] {
  const marks = drawing.marks.map((mark) => {
    const label = mark.label ? contentText(mark.label, voice) : '';
    return `${mark.kind}${mark.kind === 'exit' && mark.shut ? ', shut' : ''}: ${label}`;
  });
  return [
    `[${drawing.name}, ${voice.show(drawing.net)}]`,
    ...indented(marks),
    ...beside.flatMap((block) => blockText(block, voice)),
  ];
}

function tableText({ columns, rows, total }: Extract<Block, { kind: 'table' }>, voice: Voice): readonly string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(columns.map(({ head }) => voice.say(head))),
    ...rows.map((row) => line(row.map((cell) => contentText(cell, voice)))),
    ...(total ? [line(total.map((cell) => contentText(cell, voice)))] : []),
  ];
}

function blockText(block: Block, voice: Voice): readonly string[] {
  const say = voice.say;
  switch (block.kind) {
    case 'headline':
      return [say(block.text), ...(block.under ? [say(block.under)] : []), ''];
    case 'heading':
      return ['', say(block.text)];
    case 'paragraph':
      return [block.content.map((one) => contentText(one, voice)).join(' ')];
    case 'boxed':
      return block.lines.map((line) => `# ${say(line)}`);
    case 'verdict':
      return ['', `<${block.word}> ${say(block.title)}`, ...indented(block.lines.map(say))];
    case 'facts':
      return block.rows.map(({ label, value, note }) => {
        const said = note ? ` (${contentText(note, voice)})` : '';
        return `  ${contentText(label, voice)}: ${contentText(value, voice)}${said}`;
      });
    case 'big-figures':
      return block.figures.map(
        ({ label, value, under }) => `* ${say(label)}: ${contentText(value, voice)}${under ? `, ${say(under)}` : ''}`,
      );
    case 'table':
      return tableText(block, voice);
    case 'list':
      return block.lines.map((line) => `  ${MARKS[block.marks]} ${contentText(line, voice)}`);
    case 'floor':
      return floorText(block, voice);
    case 'section':
      return [...block.layers].reverse().map(({ kind, title, note }) => {
        const said = note ? `, ${contentText(note, voice)}` : '';
        return `  (${kind}) ${contentText(title, voice)}${said}`;
      });
    case 'frame':
      return ['', say(block.title), say(block.text), ...Array<string>(block.lines).fill('  ________')];
    case 'signatures':
      return ['', ...block.fields.map((field) => `${say(field)}: ________`)];
    case 'columns':
      return [...block.left, ...block.right].flatMap((one) => blockText(one, voice));
    case 'working':
      return block.entries.map((id) => `  = ${id}: ${voice.show(id)}`);
    case 'page-break':
      return ['', '---', ''];
  }
}

/** The whole paper in reading order, head and foot once. */
export function paperText(paper: Paper, voice: Voice): string {
  const right = paper.head.right.map((one) => contentText(one, voice));
  return `${[
    voice.say(paper.title),
    [...paper.head.left.map(voice.plain), ...right].join(' · '),
    ...paper.overrides.map((one) => `! ${voice.say(one)}`),
    '',
    ...paper.blocks.flatMap((block) => blockText(block, voice)),
    '',
    voice.say(paper.foot),
  ]
    .join('\n')
    .replaceAll('\u00a0', ' ')}\n`;
}
