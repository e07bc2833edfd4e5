import type { Area } from '../../drawing.ts';
import type { Field } from '../../fields.ts';
import type { Issue } from '../../kernel/issue.ts';
import {
  areaOf,
  boxOf,
  cornerAt,
  holdsPoint,
  holeOutside,
  holesOverlap,
  type Point,
  type Ring,
  selfCrossing,
} from '../../science/shape/index.ts';
import { formatQuantity, parseQuantity } from '../../units/index.ts';
import type { Path } from './ids.ts';

type Typed = readonly (readonly [Field<'m'>, Field<'m'>])[];
type Units = 'imperial' | 'metric';

export const ringOf = (typed: Typed): Ring => typed.map(([x, y]) => [x.value, y.value] as const);

/** Sizes of a room beyond which a mistyped unit is likelier than the room. Common sense, no source. */
const SIDE = { least: 0.6, most: 500 } as const;
const AREA = { least: 0.5, most: 50_000 } as const;
/** An exit drawn this far from the wall is on no wall; nearer, the tape is to blame. */
export const OFF_THE_WALL = 0.05;

/** Length or area as this reader writes it; a limit reads better in whole digits. */
export const sized = (value: number, unit: 'm' | 'm²', units: Units): string =>
  formatQuantity(value, unit, { system: units, locale: 'en-US', kind: unit === 'm' ? 'length' : 'area' }).text;

const OTHER_UNITS: Readonly<Record<string, readonly string[]>> = {
  in: ['ft', 'm'],
  mm: ['cm', 'm'],
  cm: ['m'],
  mil: ['in', 'ft'],
  µm: ['mm', 'm'],
  ft: ['m', 'in'],
  m: ['ft', 'cm'],
  km: ['m'],
  yd: ['ft'],
  mi: ['ft'],
};

/** What a length typed in the wrong unit likely meant: the same number in a unit that makes a room of it. */
export function likelyMeaning(typed: string): readonly string[] {
  const match = /^(.*?[\d.\s/])\s*("|''|[a-zµ]+)$/i.exec(typed.trim());
  if (!match?.[1] || !match[2]) return [];
  const unit = match[2] === '"' || match[2] === "''" ? 'in' : match[2].toLowerCase();
  const number = match[1].trim();
  return (OTHER_UNITS[unit] ?? []).flatMap((other) => {
    const text = `${number} ${other}`;
    const parsed = parseQuantity(text, 'm');
    return parsed.ok && parsed.quantity.value >= SIDE.least && parsed.quantity.value <= SIDE.most ? [text] : [];
  });
}

/** The typed coordinate that reaches furthest along one axis. */
function reaching(typed: Typed, axis: 0 | 1): { readonly index: number; readonly text: string } {
  let index = 0;
  typed.forEach((point, i) => {
    if (Math.abs(point[axis].value) > Math.abs((typed[index] as Typed[number])[axis].value)) index = i;
  });
  return { index, text: (typed[index] as Typed[number])[axis].typed };
}

/** A room narrower than a door or wider than a street: says the value, the range and what was likely meant. */
function sizeIssues(typed: Typed, ring: Ring, path: Path, units: Units): readonly Issue[] {
  const box = boxOf(ring);
  const spans = [box.right - box.left, box.top - box.bottom] as const;
  const issues = ([0, 1] as const).flatMap((axis): readonly Issue[] => {
    const span = spans[axis];
    if (span >= SIDE.least && span <= SIDE.most) return [];
    const { index, text } = reaching(typed, axis);
    const likely = likelyMeaning(text);
    return [
      {
        code: likely.length > 0 ? 'check-room-size-unit' : 'check-room-size',
        path: [...path, index, axis],
        value: text,
        limits: [sized(SIDE.least, 'm', units), sized(SIDE.most, 'm', units)],
        names: { size: sized(span, 'm', units), likely: likely.join(' / ') },
      },
    ];
  });
  if (issues.length > 0) return issues;
  const area = areaOf(ring);
  if (area >= AREA.least && area <= AREA.most) return [];
  return [
    {
      code: 'check-room-area',
      path,
      value: sized(area, 'm²', units),
      limits: [sized(AREA.least, 'm²', units), sized(AREA.most, 'm²', units)],
    },
  ];
}

const crossingIssue = (ring: Ring, path: Path): readonly Issue[] => {
  const crossing = selfCrossing(ring);
  if (!crossing) return [];
  const wall = (i: number): string => `${i + 1}–${((i + 1) % ring.length) + 1}`;
  const same = crossing.first === crossing.second;
  return [
    {
      code: same ? 'check-corner-twice' : 'check-outline-crosses',
      path,
      names: { first: wall(crossing.first), second: wall(crossing.second) },
    },
  ];
};

function distanceTo(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square));
  return Math.hypot(p[0] - a[0] - along * dx, p[1] - a[1] - along * dy);
}

/** Distance from a point to the nearest wall of a ring, m. */
export const distanceToWalls = (ring: Ring, p: Point): number =>
  Math.min(...ring.map((corner, i) => distanceTo(p, corner, cornerAt(ring, i + 1))));

/** Whether the outline, its holes, exits and what is drawn on the floor agree with each other. */
export function outlineIssues(area: Area, path: Path, units: Units): readonly Issue[] {
  if (!area.outline) {
    return area.tape ? [] : [{ code: 'check-area-without-shape', path: [...path, 'outline'], value: area.name }];
  }
  const ring = ringOf(area.outline);
  const at = [...path, 'outline'];
  // The loops of a crossing outline cancel out, so its area means nothing.
  const crossing = crossingIssue(ring, at);
  const wrong = crossing.length > 0 ? crossing : sizeIssues(area.outline, ring, at, units);
  if (wrong.length > 0) return wrong;
  const holes = (area.holes ?? []).map(({ outline }) => ringOf(outline));
  const crossed = holes.flatMap((hole, i) => crossingIssue(hole, [...path, 'holes', i, 'outline']));
  if (crossed.length > 0) return crossed;
  const issues: Issue[] = [];
  const outside = holeOutside(ring, holes);
  const id = (i: number): string => area.holes?.[i]?.id ?? '';
  if (outside !== undefined) {
    issues.push({ code: 'check-hole-outside', path: [...path, 'holes', outside, 'outline'], value: id(outside) });
  }
  const overlap = holesOverlap(holes);
  if (overlap) {
    const [one, other] = overlap;
    const names = { other: id(one) };
    issues.push({ code: 'check-holes-overlap', path: [...path, 'holes', other, 'outline'], value: id(other), names });
  }
  return [...issues, ...exitIssues(area, ring, path, units), ...drawnIssues(area, ring, path, units)];
}

function exitIssues(area: Area, ring: Ring, path: Path, units: Units): readonly Issue[] {
  return (area.exits ?? []).flatMap((exit, i) => {
    const ends = [
      ['from', exit.from],
      ['to', exit.to],
    ] as const;
    const issues = ends.flatMap(([end, [x, y]]): readonly Issue[] => {
      const away = distanceToWalls(ring, [x.value, y.value]);
      if (away <= OFF_THE_WALL) return [];
      return [
        {
          code: 'exit-off-the-wall',
          path: [...path, 'exits', i, end],
          value: `${x.typed}, ${y.typed}`,
          limits: [sized(0, 'm', units), sized(OFF_THE_WALL, 'm', units)],
          names: { exit: exit.name ?? exit.id, distance: sized(away, 'm', units) },
        },
      ];
    });
    const [a, b] = [exit.from, exit.to];
    const none = Math.hypot(a[0].value - b[0].value, a[1].value - b[1].value) < OFF_THE_WALL;
    const width: Issue = { code: 'check-exit-without-width', path: [...path, 'exits', i], value: exit.name ?? exit.id };
    return none ? [...issues, width] : issues;
  });
}

/** Cracks, joints, spots and test points drawn off the floor. A line may run a tape's slack over the wall. */
function drawnIssues(area: Area, ring: Ring, path: Path, units: Units): readonly Issue[] {
  const off = (x: Field<'m'>, y: Field<'m'>, at: Path, id: string): readonly Issue[] => {
    const p = [x.value, y.value] as const;
    if (holdsPoint(ring, p) || distanceToWalls(ring, p) <= OFF_THE_WALL) return [];
    const names = { id, distance: sized(distanceToWalls(ring, p), 'm', units) };
    return [{ code: 'check-off-the-floor', path: [...path, ...at], value: `${x.typed}, ${y.typed}`, names }];
  };
  const lines = (['cracks', 'joints'] as const).flatMap((kind) =>
    (area[kind] ?? []).flatMap((line, i) =>
      line.along.flatMap(([x, y], k) => off(x, y, [kind, i, 'along', k], line.id)),
    ),
  );
  const points = (['spots', 'points'] as const).flatMap((kind) =>
    (area[kind] ?? []).flatMap(({ id, at: [x, y] }, i) => off(x, y, [kind, i, 'at'], id)),
  );
  return [...lines, ...points];
}
