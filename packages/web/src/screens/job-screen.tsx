import { lazy, memo, Suspense, useDeferredValue, useEffect, useState } from 'react';
import { Redirect, useLocation } from 'wouter';
import { Day } from '../day/day.tsx';
import { type DayData, dayStands, useDayData } from '../day/day-data.ts';
import { instantAt } from '../day/scale.ts';
import { StartControl, useMoveStart } from '../day/start-control.tsx';
import { EnterLinks } from '../edit/enter-links.tsx';
import { FloorView } from '../floor/floor-view.tsx';
import { JobProvider, useActs, useJob, useOpened, usePlan } from '../job/job-context.tsx';
import { Patterns } from '../marks/patterns.tsx';
import { stepOf } from '../steps/index.tsx';
import type { Step } from '../steps/step.ts';
import { type StepView, useStepView } from '../steps/step-view.tsx';
import { words } from '../words.ts';
import { StepInHand } from '../working/working-link.tsx';
import { WorkingPanel } from '../working/working-panel.tsx';
import { AbsentJob } from './absent-job.tsx';
import { Glance } from './glance.tsx';
import { Header } from './header.tsx';
import { NotPlanned } from './not-planned.tsx';
import { StepHead, StepList } from './step-list.tsx';
import { useTrail } from './trail.ts';
import { Troubles } from './troubles.tsx';

interface JobScreenProps {
  readonly id: string;
  readonly step: string | undefined;
  readonly working?: string;
  /** Part of the job that is being entered. */
  readonly part?: string;
}

const Entering = lazy(() => import('../edit/entering.tsx').then(({ Entering: part }) => ({ default: part })));

/** Another job is opened from nothing: what stood there of the one before is never shown under its name. */
export function JobScreen(props: JobScreenProps) {
  return <JobOf key={props.id} {...props} />;
}

function JobOf({ id, step: stepId, working, part }: JobScreenProps) {
  const opening = useOpened(id);
  const step = stepOf(stepId);
  if (step.id !== stepId) return <Redirect to={`/job/${id}/${step.id}`} replace />;
  if (opening.is === 'absent') return <AbsentJob />;
  if (opening.is === 'opening') return <main className="sheet" aria-busy="true" />;
  return (
    <JobProvider opened={opening} key={id}>
      <Patterns />
      <Sheet step={step} {...(working ? { working } : {})} {...(part ? { part } : {})} />
    </JobProvider>
  );
}

/** What is there sooner is not marked as older. */
const MARKED_AFTER_MS = 200;

function useLate(stale: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    if (!stale) return;
    const waits = setTimeout(() => setLate(true), MARKED_AFTER_MS);
    return () => {
      clearTimeout(waits);
      setLate(false);
    };
  }, [stale]);
  return late;
}

/** Two things always in sight: the floor to scale and the day as a ribbon. Beside them the step in hand. */
function Sheet({
  step,
  working: pressed,
  part: entered,
}: {
  readonly step: Step;
  readonly working?: string;
  readonly part?: string;
}) {
  const { file, stale, id, undo, redo } = useJob();
  const [areaId, setArea] = useState<string | null>(null);
  const view = useStepView(areaId);
  // The press is answered at once in the list of steps; the facts and the drawing follow without holding it up.
  const drawn = useDeferredValue(step);
  const working = useDeferredValue(pressed);
  const part = useDeferredValue(entered);
  // When a job is opened its facts come first, the drawings a moment after them.
  const sight = useDeferredValue(view, null);
  const day = useDayData(sight, file);
  const late = useLate(stale);
  const trail = useTrail(working);
  const [, navigate] = useLocation();
  useEffect(() => {
    document.title = `${file.title}: ${step.title} · ${words.program}`;
  }, [file.title, step.title]);
  useEffect(() => {
    const keys = (event: KeyboardEvent): void => {
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !typing) {
        event.preventDefault();
        if (event.shiftKey) redo();
        else undo();
      }
      if (event.key === 'Escape' && pressed) navigate(`/job/${id}/${step.id}`);
    };
    window.addEventListener('keydown', keys);
    return () => window.removeEventListener('keydown', keys);
  }, [undo, redo, navigate, pressed, id, step.id]);
  return (
    <StepInHand value={drawn.id}>
      <main
        className={`sheet${working ? ' opened' : ''}${part ? ' enters' : ''}${stale ? ' stale' : ''}${late ? ' late' : ''}`}
      >
        <button type="button" className="skip" onClick={() => document.getElementById('facts')?.focus()}>
          {words.skip}
        </button>
        <Header />
        <StepList view={view} step={step} />
        {part ? (
          <Suspense fallback={<section className="floor" aria-busy="true" />}>
            <Entering
              step={step.id}
              section={part}
              floor={<FloorSection view={sight} step={drawn} area={areaId} onArea={setArea} />}
            />
          </Suspense>
        ) : (
          <FloorSection view={sight} step={drawn} area={areaId} onArea={setArea} />
        )}
        {part ? null : working ? (
          <WorkingPanel id={working} step={step.id} trail={trail} leaving={working !== pressed} />
        ) : (
          <section className="facts" id="facts" aria-label={step.title} tabIndex={-1}>
            <Troubles />
            <StepHead step={step} />
            <EnterLinks step={step.id} />
            <OptionChoice view={view} />
            <NotPlanned />
            {view ? <PanelOf key={drawn.id} step={drawn} /> : null}
          </section>
        )}
        <DaySection view={sight} data={day} />
        <Glance view={sight} step={drawn} data={day} area={areaId} onArea={setArea} />
      </main>
    </StepInHand>
  );
}

/** Drawn again when the plan changed, not with every key or every pixel of a drag. */
const PanelOf = memo(function PanelOf({ step }: { readonly step: Step }) {
  return <step.Panel />;
});

interface FloorSectionProps {
  readonly view: StepView | null;
  readonly step: Step;
  readonly area: string | null;
  readonly onArea: (id: string) => void;
}

function FloorSection({ view, step, area, onArea }: FloorSectionProps) {
  const { issues } = useJob();
  return (
    <section className="floor" aria-label={words.survey.area}>
      <FloorView view={view} step={step} area={area} onArea={onArea} empty={!view && issues.length > 0} />
    </section>
  );
}

const DAY_GUTTER = 216;

interface DaySectionProps {
  readonly view: StepView | null;
  readonly data: DayData | null;
}

const DaySection = memo(function DaySection({ view, data }: DaySectionProps) {
  const move = useMoveStart();
  return (
    <section className="day" aria-label={words.day.title}>
      <div className="day-head">
        <b>{words.day.title}</b>
        {data ? <small>{dayStands(view)}</small> : null}
        {data ? <StartControl data={data} /> : null}
      </div>
      {view && data ? (
        <Day
          data={data}
          axis={view.planned.axis}
          gutter={DAY_GUTTER}
          onMove={(layer, at) => move(layer, instantAt(at, data.offset))}
        />
      ) : (
        <EmptyDay asked={view !== null} />
      )}
    </section>
  );
});

/** Nothing is said while the first plan is being made. */
function EmptyDay({ asked }: { readonly asked: boolean }) {
  const { issues } = useJob();
  if (!asked && issues.length === 0) return null;
  return (
    <p className="day-empty">
      <b>{words.day.empty}</b>
      <span>{words.day.emptyTeach}</span>
    </p>
  );
}

function OptionChoice({ view }: { readonly view: StepView | null }) {
  const { chooseOption } = useActs();
  const { optionId } = usePlan();
  const options = view?.plan.options ?? [];
  if (options.length < 2) return null;
  return (
    <label className="option">
      <span>{words.option}</span>
      <select value={optionId ?? ''} onChange={(event) => chooseOption(event.target.value)}>
        {options.map(({ id, name, accepted }) => (
          <option key={id} value={id}>
            {accepted ? `${name} (${words.accepted})` : name}
          </option>
        ))}
      </select>
    </label>
  );
}
