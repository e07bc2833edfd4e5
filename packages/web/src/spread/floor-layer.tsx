import { lazy, Suspense } from 'react';
import type { FloorLabel, FloorLayer } from '../floor/floor.tsx';
import type { FloorFrame } from '../floor/geometry.ts';
import type { StepView } from '../steps/step-view.tsx';
import type { Dot } from '../worker/api.ts';
import { coatOn, coatsOf } from './coats.ts';
import { weightOf } from './moments.ts';
import { PoursOver, PoursUnder } from './pours-drawing.tsx';
import { lookedCoat } from './store.ts';
import { words } from './words.ts';

const MOST_SEAMS = 3;

const TapeHandles = lazy(async () => ({ default: (await import('./tape-handles.tsx')).TapeHandles }));

const middle = ([a, b]: readonly [Dot, Dot]): Dot => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Pours on the floor; beside them the tightest edges and the way out. */
export function spreadLayer(view: StepView): FloorLayer {
  const { area, voice } = view;
  const coat = coatOn(coatsOf(view), area?.id, lookedCoat());
  if (!coat || !area || coat.pours.length === 0) {
    return {
      title: words.floorTitle,
      note: coat ? coat.name : words.none,
      over: (frame) => <Tapes view={view} frame={frame} />,
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
    under: (frame) => <PoursUnder coat={coat} area={area} frame={frame} />,
    over: (frame) => (
      <>
        <PoursOver coat={coat} area={area} frame={frame} />
        <Tapes view={view} frame={frame} />
      </>
    ),
  };
}

function Tapes({ view, frame }: { readonly view: StepView; readonly frame: FloorFrame }) {
  const { area, planned } = view;
  if (!area) return null;
  return (
    <Suspense fallback={null}>
      <TapeHandles area={area} frame={frame} units={planned.units} />
    </Suspense>
  );
}
