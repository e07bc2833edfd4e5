import { lazy, Suspense } from 'react';
import type { FloorLabel, FloorLayer } from '../floor/floor.tsx';
import type { FloorFrame } from '../floor/geometry.ts';
import type { StepView } from '../steps/step-view.tsx';
import type { Dot } from '../worker/api.ts';
import { coatOn, coatsOf } from './coats.ts';
import { joinedDrawing } from './joined.ts';
import { weightOf } from './moments.ts';
import { PoursOver, PoursUnder } from './pours-drawing.tsx';
import { lookedCoat } from './store.ts';
import { words } from './words.ts';

const MOST_SEAMS = 3;

const Handles = lazy(async () => ({ default: (await import('./handles.tsx')).Handles }));
const DrawnPours = lazy(async () => ({ default: (await import('./drawn-layer.tsx')).DrawnPours }));

const middle = ([a, b]: readonly [Dot, Dot]): Dot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Pours on the floor; beside them the tightest edges and the way out. */
export function spreadLayer(view: StepView): FloorLayer {
  const { planned, voice } = view;
  const coat = coatOn(coatsOf(view), view.area?.id, lookedCoat());
  const joined = coat && joinedDrawing(coat, planned.areas, planned.units);
  const area = joined ?? view.area;
  const over = (frame: FloorFrame) => (
    <Suspense fallback={null}>
      <Handles view={view} coat={coat} frame={frame} />
      {coat ? <DrawnPours coat={coat} frame={frame} /> : null}
    </Suspense>
  );
  if (!coat || !area || coat.pours.length === 0) {
    return {
      title: words.floorTitle,
      note: coat ? coat.name : words.none,
      ...(joined ? { area: joined } : {}),
      over,
    };
  }
  const share = (id: string): number => voice.entry(id).value ?? 0;
  const seams = [...coat.seams]
    .sort((a, b) => share(b.share) - share(a.share))
    .slice(0, MOST_SEAMS)
    .flatMap((seam): FloorLabel[] => {
      const pour = coat.pours.find((one) => one.pour === seam.pours[0]);
      const [line] = [...(pour?.edge ?? [])].sort((a, b) => b.length - a.length);
      const [from, to] = line ?? [];
      if (!from || !to) return [];
      return [
        {
          key: seam.pours.join('-'),
          at: middle([from, to]),
          text: `${seam.pours.join('–')}: ${voice.show(seam.age)}, ${voice.show(seam.share)}`,
          note: words.seams[weightOf(share(seam.share))],
        },
      ];
    });
  const exits = area.exits
    .filter(({ name, shut }) => !shut && coat.wayOut.includes(name))
    .slice(0, 2)
    .map(
      ({ id, name, from, to }): FloorLabel => ({
        key: id,
        at: middle([from, to]),
        text: name,
        note: words.play.legend.way,
      }),
    );
  return {
    title: words.floorTitle,
    note: words.floorNote(coat.name),
    labels: [...seams, ...exits],
    ...(joined ? { area: joined } : {}),
    under: (frame) => <PoursUnder coat={coat} area={area} frame={frame} />,
    over: (frame) => (
      <>
        <PoursOver coat={coat} area={area} frame={frame} />
        {over(frame)}
      </>
    ),
  };
}
