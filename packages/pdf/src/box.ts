import type { Pen } from './pen.ts';

/** Something of a known height that is drawn at a place, and may let itself be cut between two pages. */
export interface Box {
  readonly height: number;
  /** Space above it, dropped at the top of a page. */
  readonly gap: number;
  /** Stays on the page of what follows: a heading with its first lines. */
  readonly keepNext?: boolean;
  /** Drawn in the gap, and so not at the top of a page: the rule between two parts. */
  readonly between?: (pen: Pen, x: number, y: number) => void;
  draw(pen: Pen, x: number, y: number): void;
  /** The part that fits into `room` and the rest; nothing when no useful part fits. */
  split?(room: number): Split | undefined;
}

export interface Split {
  readonly first: Box;
  readonly rest?: Box;
}

const heightOf = (boxes: readonly Box[]): number =>
  boxes.reduce((sum, box, index) => sum + box.height + (index === 0 ? 0 : box.gap), 0);

/** A heading whose content does not follow on the page goes over with it. */
function withoutLooseEnds(taken: Box[], rest: Box[]): void {
  while (taken.length > 1 && taken[taken.length - 1]?.keepNext && rest.length > 0) {
    const last = taken.pop();
    if (last) rest.unshift(last);
  }
  const only = taken[0];
  if (taken.length === 1 && only?.keepNext && rest.length > 0) {
    taken.pop();
    rest.unshift(only);
  }
}

/** As many boxes as the room holds, the last perhaps cut, and what is left. */
function takeBoxes(
  boxes: readonly Box[],
  room: number,
): { readonly first: readonly Box[]; readonly rest: readonly Box[] } {
  const taken: Box[] = [];
  let rest: Box[] = [...boxes];
  let used = 0;
  for (const [index, box] of boxes.entries()) {
    const space = index === 0 ? 0 : box.gap;
    if (used + space + box.height <= room + 0.01) {
      taken.push(box);
      rest = boxes.slice(index + 1);
      used += space + box.height;
      continue;
    }
    const cut = box.split?.(room - used - space);
    if (cut) {
      taken.push(cut.first);
      rest = [...(cut.rest ? [cut.rest] : []), ...boxes.slice(index + 1)];
    }
    break;
  }
  withoutLooseEnds(taken, rest);
  return { first: taken, rest };
}

/** Boxes above each other. */
export function stack(boxes: readonly Box[], gap = 0): Box {
  return {
    height: heightOf(boxes),
    gap,
    draw(pen, x, y) {
      let at = y;
      boxes.forEach((box, index) => {
        if (index > 0) {
          box.between?.(pen, x, at + box.gap);
          at += box.gap;
        }
        box.draw(pen, x, at);
        at += box.height;
      });
    },
    split(room) {
      const { first, rest } = takeBoxes(boxes, room);
      if (first.length === 0) return undefined;
      return { first: stack(first, gap), ...(rest.length > 0 ? { rest: stack(rest, gap) } : {}) };
    },
  };
}

/** How many rows the room holds; the last row never goes over alone when it can take one with it. */
export function rowsThatFit(rows: readonly Box[], room: number): number {
  let used = 0;
  let count = 0;
  for (const row of rows) {
    if (used + row.height > room + 0.01) break;
    used += row.height;
    count += 1;
  }
  return count === rows.length - 1 && count > 2 ? count - 1 : count;
}

/** Rows that stand close above each other; a break leaves at least two on each side where it can. */
export function rowsStack(rows: readonly Box[], gap: number): Box {
  const whole = stack(rows, gap);
  if (rows.length <= 3) return wholeWhenShort(whole);
  return {
    height: whole.height,
    gap,
    draw: whole.draw,
    split(room) {
      const count = rowsThatFit(rows, room);
      const [row, ...others] = rows;
      const cut = count === 0 ? row?.split?.(room) : undefined;
      if (cut?.rest) return { first: cut.first, rest: rowsStack([cut.rest, ...others], gap) };
      if (count === 0 || count === rows.length || (count === 1 && rows.length > 2)) return undefined;
      return { first: stack(rows.slice(0, count), gap), rest: rowsStack(rows.slice(count), gap) };
    },
  };
}

/** About a third of a page: what is shorter is not cut, however well it could be. */
const SHORT = 230;

/** What a person takes in at one look stays on one page. */
export const wholeWhenShort = (box: Box, short = SHORT): Box =>
  box.height <= short ? { height: box.height, gap: box.gap, draw: box.draw } : box;

export interface Side {
  readonly x: number;
  readonly box: Box;
}

/** Boxes beside each other; on a page break each goes on in its own column. */
export function beside(sides: readonly Side[], gap: number): Box {
  return {
    height: Math.max(0, ...sides.map(({ box }) => box.height)),
    gap,
    draw(pen, x, y) {
      for (const side of sides) side.box.draw(pen, x + side.x, y);
    },
    split(room) {
      const cuts = sides.map(({ x, box }) => {
        if (box.height <= room) return { x, first: box };
        const cut = box.split?.(room);
        return cut ? { x, ...cut } : undefined;
      });
      const firsts: Side[] = [];
      const rests: Side[] = [];
      for (const cut of cuts) {
        // A side that cannot begin here takes the other with it: what belongs together starts together.
        if (!cut) return undefined;
        firsts.push({ x: cut.x, box: cut.first });
        if ('rest' in cut && cut.rest) rests.push({ x: cut.x, box: cut.rest });
      }
      return { first: beside(firsts, gap), ...(rests.length > 0 ? { rest: beside(rests, gap) } : {}) };
    },
  };
}

/** What begins a page when a heading and what follows it do not fit together: as much as fits, one box at least. */
function forced(boxes: readonly Box[], room: number): number {
  let count = 1;
  while (count < boxes.length && stack(boxes.slice(0, count + 1)).height <= room) count += 1;
  return count;
}

/** Words beside a mark; what goes over to the next page goes without it. */
export const besideMark = (
  words: Box,
  indent: number,
  gap: number,
  mark?: (pen: Pen, x: number, y: number) => void,
): Box => ({
  height: words.height,
  gap,
  draw(pen, x, y) {
    mark?.(pen, x, y);
    words.draw(pen, x + indent, y);
  },
  split(room) {
    const cut = words.split?.(room);
    if (!cut?.rest) return undefined;
    return { first: besideMark(cut.first, indent, gap, mark), rest: besideMark(cut.rest, indent, gap) };
  },
});

/** Shares boxes out over pages. `roomOf` gives the height of the page with this index. */
export function pagesOf(whole: readonly Box[], roomOf: (index: number) => number): readonly Box[] {
  const pages: Box[] = [];
  let boxes = whole;
  while (boxes.length > 0) {
    const room = roomOf(pages.length);
    const rest = stack(boxes);
    if (rest.height <= room) return [...pages, rest];
    const taken = takeBoxes(boxes, room);
    if (taken.first.length > 0) {
      pages.push(stack(taken.first));
      boxes = taken.rest;
    } else {
      const count = forced(boxes, room);
      pages.push(stack(boxes.slice(0, count)));
      boxes = boxes.slice(count);
    }
  }
  return pages;
}
