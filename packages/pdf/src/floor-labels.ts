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

/** Places labels in one column without overlap, in the order of their tracks, so that leaders never cross. */
export function placeLabels(wanted: readonly Wanted[], column: ColumnOf): readonly Placed[] {
  const tracks = tracksOf(
    wanted.map(({ anchor }, index) => ({ index, anchor })),
    column.track,
  );
  const tops: number[] = [];
  let free = column.top;
  for (const { index, y } of tracks) {
    const { height, arrives } = wanted[index] ?? { height: 0, arrives: 0 };
    const top = Math.max(free, y - arrives);
    tops.push(top);
    free = top + height + column.between;
  }
  // What was pushed past the foot moves up again as far as the labels above allow.
  let limit = Math.max(column.bottom, column.top + wanted.reduce((sum, one) => sum + one.height + column.between, 0));
  for (let place = tops.length - 1; place >= 0; place -= 1) {
    const height = wanted[tracks[place]?.index ?? 0]?.height ?? 0;
    const top = Math.min(tops[place] ?? 0, limit - height);
    tops[place] = top;
    limit = top - column.between;
  }
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
