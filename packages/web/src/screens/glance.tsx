import { memo, useEffect, useRef, useState } from 'react';
import { Day } from '../day/day.tsx';
import { type DayData, dayStands } from '../day/day-data.ts';
import { instantAt } from '../day/scale.ts';
import { StartControl, useMoveStart } from '../day/start-control.tsx';
import { FloorView } from '../floor/floor-view.tsx';
import type { Step } from '../steps/step.ts';
import type { StepView } from '../steps/step-view.tsx';
import { words } from '../words.ts';

type Opened = 'floor' | 'day' | null;

interface GlanceProps {
  readonly view: StepView | null;
  readonly step: Step;
  readonly data: DayData | null;
  readonly area: string | null;
  readonly onArea: (id: string) => void;
}

/** On a phone the floor and the day fold to a strip at the foot; a tap opens either to the full screen. */
export const Glance = memo(function Glance({ view, step, data, area, onArea }: GlanceProps) {
  const [opened, open] = useState<Opened>(null);
  return (
    <section className="phone glance" aria-label={`${words.survey.area}, ${words.day.title}`}>
      {data && data.starts.length > 0 ? <StartControl data={data} /> : null}
      <div className="strip">
        <button type="button" aria-label={words.floor.open} onClick={() => open('floor')}>
          <FloorView view={view} step={step} area={area} small />
        </button>
        <button type="button" aria-label={words.day.open} onClick={() => open('day')}>
          {view && data ? (
            <Day data={data} axis={view.planned.axis} gutter={0} small />
          ) : (
            <span className="quiet">{words.day.empty}</span>
          )}
        </button>
      </div>
      {opened && view ? (
        <Whole what={opened} view={view} step={step} data={data} area={area} onArea={onArea} close={() => open(null)} />
      ) : null}
    </section>
  );
});

interface WholeProps {
  readonly what: 'floor' | 'day';
  readonly view: StepView;
  readonly step: Step;
  readonly data: DayData | null;
  readonly area: string | null;
  readonly onArea: (id: string) => void;
  readonly close: () => void;
}

function Whole({ what, view, step, data, area, onArea, close }: WholeProps) {
  const shell = useRef<HTMLDialogElement>(null);
  const move = useMoveStart();
  useEffect(() => {
    shell.current?.showModal();
  }, []);
  return (
    <dialog
      className="whole"
      ref={shell}
      onClose={close}
      aria-label={what === 'floor' ? words.survey.area : words.day.title}
    >
      <button type="button" className="shut" onClick={() => shell.current?.close()}>
        {words.close}
      </button>
      {what === 'floor' ? (
        <FloorView view={view} step={step} area={area} onArea={onArea} />
      ) : data ? (
        <>
          <p className="quiet">{dayStands(view)}</p>
          <StartControl data={data} />
          <Day
            data={data}
            axis={view.planned.axis}
            gutter={72}
            onMove={(layer, at) => move(layer, instantAt(at, data.offset))}
          />
        </>
      ) : (
        <p className="day-empty">
          <b>{words.day.empty}</b>
          <span>{words.day.emptyTeach}</span>
        </p>
      )}
    </dialog>
  );
}
