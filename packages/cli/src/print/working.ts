import type { Display } from '../display.ts';
import type { Terminal } from '../terminal.ts';
import { columns, indent, paint, type Working, word, wrap } from './lines.ts';

/** One working as a block of text: value first, then how it came about, then where from. */
export function printWorking(working: Working, terminal: Terminal, display?: Display): string {
  const lines: string[] = [];
  const shown = display ? displayText(display) : '';
  const also = shown && !working.value.replaceAll('\u00a0', ' ').includes(shown) ? `  (${shown})` : '';
  lines.push(paint(terminal, 'bold', `${working.value}${working.band ? `  ${working.band}` : ''}`) + also);
  if (working.says) {
    lines.push(`  ${working.says}  ${paint(terminal, 'quiet', working.formula ?? '')}`);
    lines.push('', `  ${working.equation}`, `  ${working.numbers}`, '');
    lines.push(
      ...columns(
        working.inputs.map((i) => [i.name, i.value, i.holds ? `holds for ${i.holds}` : '']),
        { gap: 2, indent: 2 },
      ),
    );
  } else {
    const from = [working.origin, working.where, working.when].filter(Boolean).join(', ');
    lines.push(`  ${from}${working.typed ? `, typed "${working.typed}"` : ''}`);
  }
  for (const outside of working.outside) {
    lines.push(paint(terminal, 'caution', `  outside the range this law holds for: ${outside}`));
  }
  if (working.notes) lines.push('', ...wrap(working.notes, terminal.width - 2).map(indent(2)));
  const source = sourceText(working);
  if (source) lines.push('', ...wrap(`source: ${source}`, terminal.width - 2).map(indent(2)));
  return `${lines.join('\n')}\n`;
}

const displayText = ({ value, unit }: Display): string => {
  const numbers = (typeof value === 'number' ? [value] : value).map((v) => Number(v.toPrecision(6)).toString());
  return `${numbers.join(', ')}${unit === '1' ? '' : ` ${unit}`}`;
};

function sourceText(working: Working): string {
  const { source, sourceKey, locator } = working;
  if (!source) return sourceKey ?? '';
  const by = [source.author, source.publisher, source.year].filter(Boolean).join(', ');
  return `${source.title}${by ? ` (${by})` : ''}${locator ? `, ${locator}` : ''} [${word(source.mark)}]`;
}
