import { listAt, type Path, type Raw, textAt, valueAt } from '../edit/path.ts';
import type { AreaDrawing, Dot, Units } from '../worker/api.ts';
import { dotOf, dotsOf, lengthText, metres } from './lengths.ts';

/** The drawing of one area straight from what is typed, before the plan has caught up. */
export function draftDrawing(area: Raw, units: Units, solved: readonly Dot[]): AreaDrawing {
  const items = (key: string): readonly Raw[] => listAt(area, [key]);
  const id = (item: Raw): string => textAt(item, ['id']);
  const at = (item: Raw, path: Path): Raw => valueAt(item, path);
  const typed = dotsOf(at(area, ['outline']));
  const outline = typed.length > 0 || !at(area, ['tape']) ? typed : solved;
  const reach = (axis: 0 | 1): string => {
    const along = outline.map((corner) => corner[axis]);
    return along.length === 0 ? '' : lengthText(Math.max(...along) - Math.min(...along), units);
  };
  const lines = (key: string) =>
    items(key).map((item) => ({ id: id(item), kind: textAt(item, ['kind']), along: dotsOf(at(item, ['along'])) }));
  return {
    id: id(area),
    name: textAt(area, ['name']),
    outline,
    holes: items('holes').map((hole) => dotsOf(at(hole, ['outline']))),
    exits: items('exits').flatMap((item) => {
      const [from, to] = [dotOf(at(item, ['from'])), dotOf(at(item, ['to']))];
      const name = textAt(item, ['name']) || id(item);
      const [shut, outside] = [at(item, ['shut']) === true, at(item, ['outside']) === true];
      return from && to ? [{ id: id(item), name, from, to, shut, outside }] : [];
    }),
    joints: lines('joints'),
    cracks: lines('cracks'),
    spots: items('spots').flatMap((item) => {
      const place = dotOf(at(item, ['at']));
      return place ? [{ id: id(item), kind: textAt(item, ['kind']), at: place, area: spotArea(item) }] : [];
    }),
    points: items('points').flatMap((item) => {
      const place = dotOf(at(item, ['at']));
      return place ? [{ id: id(item), name: textAt(item, ['name']) || id(item), at: place }] : [];
    }),
    sun: [],
    width: reach(0),
    depth: reach(1),
  };
}

/** Only for how large the mark is drawn; the plan reads the extent itself. */
function spotArea(spot: Raw): number {
  const text = textAt(spot, ['area']) || textAt(spot, ['area', 'value']);
  const size = /^\s*([\d.]+)\s*(m²|m2|ft²|ft2|sq ?ft)/.exec(text);
  if (!size?.[1]) return 0;
  const unit = metres(size[2]?.startsWith('m') ? '1 m' : '1 ft') ?? 0;
  return Number(size[1]) * unit * unit;
}
