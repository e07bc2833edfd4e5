import type { SectionLayer } from '@slabwright/core';
import { type Command, line, type Point, polygon, rectangle } from './commands.ts';
import { HAIRLINE, INK, PAPER, QUIET, RULE, SLAB, SLAB_DEEP } from './look.ts';

/** A layer with the height its words need. */
export interface SectionPart {
  readonly kind: SectionLayer['kind'];
  readonly height: number;
}

/** Stones of the concrete, as shares of its width and height: place, half axes. Drawn by hand once. */
const STONES: readonly (readonly [x: number, y: number, rx: number, ry: number])[] = [
  [0.1, 0.2, 0.055, 0.09],
  [0.24, 0.24, 0.035, 0.06],
  [0.35, 0.16, 0.06, 0.1],
  [0.5, 0.3, 0.04, 0.065],
  [0.63, 0.18, 0.045, 0.07],
  [0.78, 0.28, 0.035, 0.055],
  [0.9, 0.17, 0.045, 0.08],
  [0.17, 0.48, 0.03, 0.05],
  [0.07, 0.62, 0.05, 0.085],
  [0.3, 0.52, 0.045, 0.075],
  [0.43, 0.6, 0.03, 0.05],
  [0.56, 0.54, 0.065, 0.105],
  [0.72, 0.58, 0.04, 0.06],
  [0.87, 0.5, 0.055, 0.09],
  [0.14, 0.84, 0.04, 0.065],
  [0.26, 0.8, 0.035, 0.055],
  [0.38, 0.86, 0.065, 0.09],
  [0.53, 0.82, 0.035, 0.06],
  [0.66, 0.86, 0.05, 0.08],
  [0.8, 0.78, 0.04, 0.065],
  [0.93, 0.84, 0.04, 0.07],
];

const TOOTH = 6;
const DEPTH = 3;

/** Ground surface: teeth of one height, so that the next layer is seen to key into it. */
function groundEdge(left: number, right: number, y: number): readonly Point[] {
  const count = Math.max(2, Math.round((right - left) / TOOTH));
  return Array.from(
    { length: count * 2 + 1 },
    (_, index): Point => [left + ((right - left) * index) / (count * 2), y + (index % 2 === 0 ? DEPTH : -DEPTH)],
  );
}

/** Flakes or grit: short dashes at places that repeat only over a long way. */
function grains(x: number, y: number, width: number, height: number): readonly Command[] {
  const inks = [INK, QUIET, RULE];
  const rows = Math.max(2, Math.floor(height / 5));
  const step = 13;
  const found: Command[] = [];
  for (let row = 0; row < rows; row += 1) {
    const level = y + ((row + 0.5) * height) / rows;
    for (let index = 0; index * step < width - 10; index += 1) {
      const turn = (row * 7 + index * 11) % 5;
      const from = x + 4 + index * step + ((row * 5 + index * 3) % 4);
      const tilt = (turn - 2) * 0.6;
      const length = 6 + (turn % 3);
      if (from + length > x + width - 2) continue;
      found.push(
        line([from, level - tilt], [from + length, level + tilt], {
          width: 1.7,
          ink: inks[(index + row * 2) % 3] ?? INK,
        }),
      );
    }
  }
  return found;
}

/** The cut through the floor: concrete at the foot, layers above it in the order they are laid. */
export function sectionCommands(parts: readonly SectionPart[], width: number): readonly Command[] {
  const total = parts.reduce((sum, part) => sum + part.height, 0);
  const fine = { width: HAIRLINE, ink: INK };
  const commands: Command[] = [];
  let bottom = total;
  let films = 0;
  parts.forEach((part, index) => {
    const top = bottom - part.height;
    if (part.kind === 'concrete') {
      const edge =
        index === parts.length - 1
          ? ([
              [0, top],
              [width, top],
            ] as const)
          : groundEdge(0, width, top);
      commands.push(polygon([...edge, [width, bottom], [0, bottom]], { fill: SLAB }));
      for (const [x, y, rx, ry] of STONES) {
        const radii = [rx * width, Math.min(ry * part.height, rx * width * 0.85)] as const;
        const at: Point = [x * width, top + DEPTH + y * (part.height - DEPTH)];
        commands.push({ draw: 'ellipse', at, radii, stroke: { width: HAIRLINE, ink: QUIET } });
      }
    } else {
      const below = parts[index - 1];
      const foot =
        below?.kind === 'concrete' ? groundEdge(0, width, bottom) : [[0, bottom] as const, [width, bottom] as const];
      const fill = part.kind === 'film' && films % 2 === 0 ? SLAB_DEEP : PAPER;
      if (part.kind === 'film') films += 1;
      commands.push(polygon([[0, top], [width, top], ...[...foot].reverse()], { fill }));
      if (part.kind === 'broadcast') commands.push(...grains(0, top + 1, width, part.height - 2));
      if (below?.kind === 'concrete') {
        commands.push({ draw: 'lines', rings: [foot], closed: false, stroke: { width: 1.6, ink: INK } });
      } else commands.push(line([0, bottom], [width, bottom], fine));
    }
    bottom = top;
  });
  commands.push(rectangle(0, 0, width, total, { stroke: { width: 1.2, ink: INK } }));
  return commands;
}
