import { useEffect, useRef, useState } from 'react';
import { Link } from 'wouter';
import { usePlan } from '../job/job-context.tsx';
import { isOfSpread, spreadWorker } from '../spread/client.ts';
import { momentText } from '../when.ts';
import { words } from '../words.ts';
import type { WorkingView } from '../worker/api.ts';
import { planWorker } from '../worker/client.ts';
import { CauseBars, RangeLine } from './drawings.tsx';
import { inputName } from './names.ts';
import { usePlaceName } from './use-place-name.ts';
import { WorkingLink, workingPath } from './working-link.tsx';

const w = words.working;

interface PanelProps {
  readonly id: string;
  readonly step: string;
  readonly trail: readonly string[];
  /** Another number was pressed already and is on its way. */
  readonly leaving: boolean;
}

/** What the plan and its worker say of one number, asked anew with every plan. */
function useWorking(id: string): WorkingView | null | undefined {
  const { planned } = usePlan();
  const [found, setFound] = useState<{ readonly id: string; readonly view: WorkingView | null }>();
  useEffect(() => {
    if (!planned) return;
    let left = false;
    const asked = isOfSpread(id) ? spreadWorker().spreadWorking(id) : planWorker().working(id);
    void asked.then((view) => {
      if (!left) setFound({ id, view });
    });
    return () => {
      left = true;
    };
  }, [id, planned]);
  return found?.id === id ? found.view : undefined;
}

/** The working of a number: sentence, equation with its numbers, what goes in, source, range, band, outside check. */
export function WorkingPanel({ id, step, trail, leaving }: PanelProps) {
  const { id: job, voice } = usePlan();
  const view = useWorking(id);
  const placeName = usePlaceName();
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (view?.id === id) head.current?.focus({ preventScroll: true });
  }, [view?.id, id]);
  if (view === undefined || !voice) return <section className="working" aria-label={w.label} aria-busy="true" />;
  const before = trail.at(-2);
  const shown = voice.has(id) ? voice.entry(id) : null;
  const title = view?.says ?? (shown?.where || (shown?.origin ? w.origin[shown.origin] : '')) ?? id;
  return (
    <section className="working" data-entry={id} aria-label={w.label} {...(leaving ? { 'aria-busy': true } : {})}>
      <div className="wh">
        <div>
          <h2 ref={head} tabIndex={-1}>
            {title}
          </h2>
          <p>{view ? placeName(id) : w.gone}</p>
        </div>
        <div className="val">
          {view ? (
            <>
              <b>{shown?.number ?? view.value}</b> <span>{shown?.unit}</span>
              {view.band ? <small>{`${w.or} ${view.band}`}</small> : null}
            </>
          ) : null}
        </div>
        <Link className="shut" href={`/job/${job}/${step}`}>
          {words.close}
        </Link>
      </div>
      {before ? (
        <p className="trail">
          <Link href={workingPath(job, step, before)}>{`‹ ${words.back}`}</Link>
        </p>
      ) : null}
      {view ? <Body view={view} /> : null}
    </section>
  );
}

const MOST_USES = 5;

function UsedBy({ view }: { readonly view: WorkingView }) {
  const { voice } = usePlan();
  const placeName = usePlaceName();
  const uses = view.usedBy.filter((id) => voice?.has(id));
  if (uses.length === 0) return null;
  return (
    <>
      <h3>{w.decides}</h3>
      <ul>
        {uses.slice(0, MOST_USES).map((id) => (
          <EntryRow key={id} id={id} name={placeName(id)} />
        ))}
      </ul>
      {uses.length > MOST_USES ? <p className="quiet">{w.more(uses.length - MOST_USES)}</p> : null}
    </>
  );
}

function EntryRow({ id, name }: { readonly id: string; readonly name: string }) {
  const { voice } = usePlan();
  const shown = voice?.has(id) ? voice.entry(id) : null;
  if (!shown) return null;
  const from = shown.says ?? originText(shown.origin, shown.where, shown.when);
  return (
    <li className={shown.kind === 'given' ? 'in' : 'top'}>
      <span>
        {name}
        <small>{from}</small>
      </span>
      <span className={`v${shown.origin === 'assumed' ? ' assumed' : ''}${shown.kind === 'list' ? ' many' : ''}`}>
        <WorkingLink id={id}>{shown.number}</WorkingLink>
      </span>
      <span className="u">
        {shown.unit}
        {shown.band ? <small>{shown.band}</small> : null}
      </span>
    </li>
  );
}

/** An equation that names its own result would say the result twice. */
const rightSide = (numbers: string): string => numbers.replace(/^[\p{L}\p{N}_ ]+ = /u, '');

function Body({ view }: { readonly view: WorkingView }) {
  return (
    <>
      {view.equation ? (
        <div className="eq">
          <div>{view.equation}</div>
          <div>
            {rightSide(view.numbers ?? '')} = <b>{view.value}</b>
          </div>
        </div>
      ) : null}
      <div className="wb">
        <div className="tree">
          {view.inputs.length > 0 ? <Inputs view={view} /> : <Origin view={view} />}
          <UsedBy view={view} />
        </div>
        <Side view={view} />
      </div>
    </>
  );
}

function Inputs({ view }: { readonly view: WorkingView }) {
  return (
    <>
      <h3>{w.inputs}</h3>
      <ul>
        {view.inputs.flatMap(({ name, ids }) =>
          ids.map((id, i) => (
            <EntryRow
              key={`${name}-${id}`}
              id={id}
              name={ids.length > 1 ? `${inputName(name)} ${i + 1}` : inputName(name)}
            />
          )),
        )}
      </ul>
    </>
  );
}

const whenText = (when: string): string => (when.length > 10 ? momentText(when) : when);

const originText = (origin?: string, where?: string, when?: string): string =>
  [origin ? w.origin[origin] : undefined, where, when ? whenText(when) : undefined].filter(Boolean).join(', ');

function Origin({ view }: { readonly view: WorkingView }) {
  if (!view.origin) return null;
  return (
    <>
      <h3>{w.from}</h3>
      <p>
        <b>{w.origin[view.origin] ?? view.origin}</b>
        {view.where ? `, ${view.where}` : ''}
        {view.when ? `, ${whenText(view.when)}` : ''}
      </p>
      {view.origin === 'assumed' ? <p>{w.assumedLong}</p> : null}
      {view.typed ? (
        <p>
          {w.typed}: <b>{view.typed}</b>
        </p>
      ) : null}
    </>
  );
}

function Side({ view }: { readonly view: WorkingView }) {
  const { source, sourceKey, locator, notes, ranges, causes, checked, outside } = view;
  return (
    <div className="side">
      {source || sourceKey ? (
        <section>
          <h3>{w.source}</h3>
          {source ? (
            <>
              {[source.author, source.title, source.publisher, source.year].filter(Boolean).join(', ')}
              {locator ? `, ${locator}` : ''}
              <small>{w.marks[source.mark] ?? source.mark}</small>
            </>
          ) : (
            sourceKey
          )}
          {notes ? <small>{notes}</small> : null}
        </section>
      ) : null}
      {ranges.length > 0 ? (
        <section>
          <h3>{w.holds}</h3>
          {ranges.map((range) => (
            <RangeLine key={range.name} range={range} />
          ))}
        </section>
      ) : null}
      {outside.length > 0 ? (
        <section className="beyond-note">
          <h3>{w.outsideRange}</h3>
          {outside.join(', ')}
        </section>
      ) : null}
      {view.formula ? (
        <section>
          <h3>{w.band}</h3>
          {causes.length > 0 ? <CauseBars causes={causes} /> : w.noBand}
        </section>
      ) : null}
      {checked ? (
        <section>
          <h3>{w.checked}</h3>
          <ul>
            {checked.read > 0 ? <li>{w.read(checked.read)}</li> : null}
            {checked.memory > 0 ? <li>{w.memory(checked.memory)}</li> : null}
            {checked.own > 0 ? <li>{w.own(checked.own)}</li> : null}
            {checked.none ? <li>{checked.none}</li> : null}
            {checked.read + checked.memory + checked.own === 0 && !checked.none ? <li>{w.unchecked}</li> : null}
          </ul>
        </section>
      ) : null}
    </div>
  );
}
