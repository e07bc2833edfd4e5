import { freshId, insertAt, listAt, type Path, type Raw } from '../edit/path.ts';
import type { Dot, Units } from '../worker/api.ts';
import { dotsOf, typedDot } from './lengths.ts';
import { onWall } from './snap.ts';

/** What a press on the drawing puts down. */
export const TOOLS = ['corner', 'exit', 'door', 'hole', 'joint', 'crack', 'spot', 'point'] as const;
export type Tool = (typeof TOOLS)[number];

interface Places {
  /** Places it needs before it can be put down; more may follow where `open`. */
  readonly places: number;
  readonly open: boolean;
}

interface ToolRule extends Places {
  readonly list: string;
  readonly make: (id: string, places: readonly (readonly [string, string])[]) => Raw;
}

/** Only what was drawn goes in. What nobody said yet, as the extent of a spot, is asked for at its field. */
const RULES: Readonly<Record<Exclude<Tool, 'corner' | 'door'>, ToolRule>> = {
  exit: { places: 2, open: false, list: 'exits', make: (id, [from, to]) => ({ id, from, to }) },
  hole: { places: 3, open: true, list: 'holes', make: (id, outline) => ({ id, outline }) },
  joint: { places: 2, open: false, list: 'joints', make: (id, along) => ({ id, kind: 'contraction', along }) },
  crack: { places: 2, open: true, list: 'cracks', make: (id, along) => ({ id, along, widths: [] }) },
  spot: { places: 1, open: false, list: 'spots', make: (id, [at]) => ({ id, kind: 'oil', at }) },
  point: { places: 1, open: false, list: 'points', make: (id, [at]) => ({ id, at }) },
};

/** A door is put down by its two ends in each of two rooms. */
const DOOR: Places = { places: 2, open: false };

export const placesOf = (tool: Exclude<Tool, 'corner'>): Places => (tool === 'door' ? DOOR : RULES[tool]);

const STEMS: Partial<Record<Tool, string>> = { point: 'p' };

/** Puts what was drawn into the area of a draft; gives the path of the new item. */
export function putDown(
  draft: Raw,
  area: Path,
  tool: Exclude<Tool, 'corner' | 'door'>,
  places: readonly Dot[],
  units: Units,
): Path {
  const rule = RULES[tool];
  const path = [...area, rule.list];
  const items = listAt(draft, path);
  const ring = dotsOf(listAt(draft, [...area, 'outline']));
  const put = tool === 'exit' && ring.length > 2 ? places.map((place) => onWall(place, ring)) : places;
  const id = freshId(STEMS[tool] ?? tool, items);
  insertAt(
    draft,
    path,
    rule.make(
      id,
      put.map((place) => typedDot(place, units)),
    ),
  );
  return [...path, items.length];
}
