import type { Point } from './commands.ts';

/** A label that wants to stand beside its anchor. */
export interface Wanted {
  readonly anchor: Point;
  readonly height: number;
  /** From the top of the label to where its leader arrives: the middle of its first line. */
  readonly arrives: number;
}

export interface Placed {
  /** Index of the wish. */
  readonly index: number;
  readonly top: number;
  /** Anchor, turn onto the own track, end of the track, label. */
  readonly leader: readonly Point[];
}

export interface ColumnOf {
  /** Where tracks leave the floor. */
  readonly edge: number;
  /** Where labels begin. */
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
  /** Least space between tracks and between labels. */
  readonly track: number;
  readonly between: number;
}

interface Track {
  readonly index: number;
  readonly anchor: Point;
  readonly y: number;
}

/**
 * Gives every anchor a track of its own, running level to the right. Anchors closer in height than a track form a
 * group: the rightmost keeps the highest track, so a leader that steps down to its track never meets one above it.
 */
function tracksOf(anchors: readonly { index: number; anchor: Point }[], least: number): readonly Track[] {
  const groups: { members: { index: number; anchor: Point }[]; from: number }[] = [];
  const lastTrack = (group: { members: readonly unknown[]; from: number }): number =>
    group.from + (group.members.length - 1) * least;
  for (const item of [...anchors].sort((a, b) => a.anchor[1] - b.anchor[1])) {
    let next = { members: [item], from: item.anchor[1] };
    let before = groups[groups.length - 1];
    while (before && next.from < lastTrack(before) + least) {
      groups.pop();
      const members = [...before.members, ...next.members];
      next = { members, from: Math.max(...members.map(({ anchor }) => anchor[1])) };
      before = groups[groups.length - 1];
    }
    groups.push(next);
  }
  return groups.flatMap(({ members, from }) =>
    [...members]
      .sort((a, b) => b.anchor[0] - a.anchor[0])
      .map(({ index, anchor }, place) => ({ index, anchor, y: from + place * least })),
  );
}

/**
 * Tops of labels in their order, each as near its wish as its neighbours allow: labels that would overlap move as one
 * block to the mean of their wishes (least squares under an order, by pooling neighbours).
 */
function topsOf(
  labels: readonly { readonly wish: number; readonly height: number }[],
  { top, bottom, between }: ColumnOf,
): readonly number[] {
  const whole = labels.reduce((sum, one) => sum + one.height + between, -between);
  const lowest = Math.max(bottom, top + whole);
  const blocks: { wishes: number[]; height: number; count: number; at: number }[] = [];
  const settle = (wishes: readonly number[], height: number): number =>
    Math.max(top, Math.min(lowest - height, wishes.reduce((sum, wish) => sum + wish, 0) / wishes.length));
  for (const { wish, height } of labels) {
    let block = { wishes: [wish], height, count: 1, at: settle([wish], height) };
    let before = blocks[blocks.length - 1];
    while (before && before.at + before.height + between > block.at) {
      blocks.pop();
      const shift = before.height + between;
      const wishes = [...before.wishes, ...block.wishes.map((one) => one - shift)];
      const tall = shift + block.height;
      block = { wishes, height: tall, count: before.count + block.count, at: settle(wishes, tall) };
      before = blocks[blocks.length - 1];
    }
    blocks.push(block);
  }
  const tops: number[] = [];
  for (const block of blocks) {
    let at = block.at;
    for (let place = 0; place < block.count; place += 1) {
      tops.push(at);
      at += (labels[tops.length - 1]?.height ?? 0) + between;
    }
  }
  return tops;
}

/** Places labels in one column without overlap, in the order of their tracks, so that leaders never cross. */
export function placeLabels(wanted: readonly Wanted[], column: ColumnOf): readonly Placed[] {
  const tracks = tracksOf(
    wanted.map(({ anchor }, index) => ({ index, anchor })),
    column.track,
  );
  const tops = topsOf(
    tracks.map(({ index, y }) => {
      const { height, arrives } = wanted[index] ?? { height: 0, arrives: 0 };
      return { wish: y - arrives, height };
    }),
    column,
  );
  return tracks.map(({ index, anchor, y }, place) => {
    const top = tops[place] ?? column.top;
    const arrives = wanted[index]?.arrives ?? 0;
    const [x] = anchor;
    return {
      index,
      top,
      leader: [anchor, [x, y], [Math.max(x, column.edge), y], [column.left, top + arrives]],
    };
  });
}
