import type { DayFrame } from './frame.ts';

/** What the rows of the ribbon share. */

export const rowName = (frame: DayFrame, name: string, y: number) =>
  frame.small || frame.gutter < 40 ? null : (
    <text x={frame.scale.left - 8} y={y} textAnchor="end" className="n">
      {name}
    </text>
  );

/** Widest letter of the small text, near enough to know what fits. */
const LETTER = 6.1;

/** As many words as fit into a width, an ellipsis for the rest; nothing where not even one fits. */
export function fitting(text: string, width: number): string {
  const most = Math.floor(width / LETTER);
  if (text.length <= most) return text;
  const cut = text.slice(0, Math.max(most - 1, 0));
  const whole = cut.slice(0, Math.max(cut.lastIndexOf(' '), 0)).replace(/[\s,;:.]+$/, '');
  return whole.length > 3 ? `${whole}…` : '';
}

/** The part of a stretch that the ribbon shows, null when it shows none. */
export function shownPart(
  { scale }: DayFrame,
  from: number,
  until: number,
): { readonly x: number; readonly width: number } | null {
  const [x, end] = [Math.max(scale.x(from), scale.left), Math.min(scale.x(until), scale.right)];
  return end - x > 0.5 ? { x, width: end - x } : null;
}
