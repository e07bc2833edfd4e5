import type { FloorMark } from '@slabwright/core';
import { type Command, disc, line, type Point, polygon } from './commands.ts';
import type { FloorFrame } from './floor-plan.ts';
import { INK, PAPER, POUR_DEEP, POUR_LIGHT, QUIET } from './look.ts';
import { run } from './text.ts';

type Pour = Extract<FloorMark, { kind: 'pour' }>;
type Arrow = Extract<FloorMark, { kind: 'arrow' }>;

/** Size of a pour's number, and of the disc it stands on. */
const NUMBER = 18;
export const POUR_DISC = 13;
/** Bold figures are this wide for their size. */
const FIGURE = 0.58;

/** The floor of a batch in its tint. */
export function pourFloor(mark: Pour, frame: FloorFrame): Command {
  return {
    draw: 'lines',
    rings: mark.outlines.map((ring) => ring.map(frame.at)),
    closed: true,
    fill: mark.tint === 'deep' ? POUR_DEEP : POUR_LIGHT,
  };
}

/** Its number, over everything else on the floor. */
export function pourNumber(mark: Pour, frame: FloorFrame): readonly Command[] {
  const [x, y] = frame.at(mark.at);
  const crowded = frame.scale < 16 ? 0.75 : 1;
  const size = NUMBER * crowded;
  const one = run(mark.number, { size, weight: 'bold', ink: INK });
  const width = mark.number.length * size * FIGURE;
  return [
    disc([x, y], POUR_DISC * crowded, { fill: PAPER, stroke: { width: 1, ink: INK } }),
    { draw: 'text', at: [x - width / 2, y + size * 0.35], run: one },
  ];
}

/** An arrow along the lanes with a filled head. */
export function laneArrow(mark: Arrow, frame: FloorFrame): readonly Command[] {
  const from = frame.at(mark.from);
  const to = frame.at(mark.to);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 6) return [];
  const [ux, uy]: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const head = Math.min(9, length / 2);
  const neck: Point = [to[0] - ux * head, to[1] - uy * head];
  return [
    line(from, neck, { width: 1.6, ink: QUIET }),
    polygon(
      [
        to,
        [neck[0] - uy * head * 0.45, neck[1] + ux * head * 0.45],
        [neck[0] + uy * head * 0.45, neck[1] - ux * head * 0.45],
      ],
      {
        fill: QUIET,
      },
    ),
  ];
}
