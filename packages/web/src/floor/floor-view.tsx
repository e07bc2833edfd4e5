import { memo, useMemo } from 'react';
import { useLookedCoat } from '../spread/store.ts';
import type { Step } from '../steps/step.ts';
import type { StepView } from '../steps/step-view.tsx';
import { words } from '../words.ts';
import { Floor } from './floor.tsx';
import { FloorTogether } from './together.tsx';

/** Every room together, where doors join them. */
export const ALL_ROOMS = '*';

interface FloorViewProps {
  readonly view: StepView | null;
  readonly step: Step;
  /** The room chosen, or all of them; nothing chosen shows what there is. */
  readonly area: string | null;
  /** The small drawing of the strip. */
  readonly small?: boolean;
  readonly onArea?: (id: string) => void;
  /** Nothing can be planned yet: the first corner stands for the floor. */
  readonly empty?: boolean;
}

/** The floor as the step draws it: one room, or all that doors join, and the choice between them. */
export const FloorView = memo(function FloorView({
  view,
  step,
  area,
  small = false,
  onArea,
  empty = false,
}: FloorViewProps) {
  const areas = view?.planned.areas ?? [];
  const together = view?.planned.together ?? null;
  const wanted = together !== null && (area === null || area === ALL_ROOMS);
  // The coat looked at decides what is drawn; the minute that is played redraws only itself.
  const looked = useLookedCoat();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a step reads the coat looked at when it draws
  const layer = useMemo(
    () => (view ? (step.floor?.(view) ?? { title: words.survey.area }) : null),
    [view, step, looked],
  );
  // A step that works rooms as one floor draws them itself.
  const all = wanted && !layer?.area;
  return (
    <>
      {onArea && areas.length > 1 ? (
        <select
          className="areas"
          aria-label={words.floor.areas}
          value={wanted ? ALL_ROOMS : (view?.area?.id ?? '')}
          onChange={(event) => onArea(event.target.value)}
        >
          {together ? <option value={ALL_ROOMS}>{words.floor.together}</option> : null}
          {areas.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      ) : null}
      {view && all && together ? (
        <FloorTogether key={looked} view={view} step={step} together={together} small={small} />
      ) : view ? (
        <Floor area={view.area} layer={layer} units={view.planned.units} small={small} />
      ) : empty ? (
        <Floor area={null} layer={null} units="metric" small={small} />
      ) : null}
    </>
  );
});
