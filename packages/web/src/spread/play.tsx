import { useEffect, useId, useMemo, useState } from 'react';
import { Floor } from '../floor/floor.tsx';
import { usePlan } from '../job/job-context.tsx';
import { useStep } from '../steps/step-view.tsx';
import { clockText } from '../when.ts';
import { type Coat, cellsFor } from './coats.ts';
import { spreadLayer } from './floor-layer.tsx';
import { momentOf, squaresDown, turnAfter, turnBefore, turns, typedMoment } from './moments.ts';
import { lookAt, useMoment } from './store.ts';
import { words } from './words.ts';

const w = words.play;
const MINUTE = 60_000;
/** A minute of the floor in a tenth of a second. */
const FRAME_MS = 100;

/** `16:43` of a moment, in the offset the coat's own times are written in. */
function clockAt(at: number, like: string): string {
  const found = /([+-])(\d{2}):(\d{2})$/.exec(like);
  const minutes = found ? Number(found[2]) * 60 + Number(found[3]) : 0;
  return new Date(at + (found?.[1] === '-' ? -1 : 1) * minutes * MINUTE).toISOString().slice(11, 16);
}

/** A slider, presses and a typed time that play the coat's day on the floor. */
export function Play({ coat }: { readonly coat: Coat }) {
  const at = useMoment(coat.pours);
  const [runs, setRuns] = useState(false);
  const label = useId();
  const { pours } = coat;
  const first = pours[0];
  const last = pours.at(-1);
  const from = first ? Date.parse(first.mixFrom) : 0;
  const until = last ? Date.parse(last.end) : 0;
  const now = at === null ? from : Math.min(Math.max(at, from), until);
  useEffect(() => {
    if (!runs) return;
    if (now >= until) {
      setRuns(false);
      return;
    }
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    const next = calm ? (turnAfter(turns(pours), now) ?? until) : now + MINUTE;
    const waits = setTimeout(() => lookAt({ at: Math.min(next, until) }), calm ? 1500 : FRAME_MS);
    return () => clearTimeout(waits);
  }, [runs, now, until, pours]);
  if (!first || !last) return null;
  const go = (to: number | null): void => {
    setRuns(false);
    if (to !== null) lookAt({ at: to });
  };
  const all = turns(pours);
  const clock = clockAt(now, first.mixFrom);
  return (
    <section className="play" aria-label={w.title}>
      <div className="play-head">
        <h3 id={label}>{w.title}</h3>
        <TypedTime key={clock} clock={clock} from={first.mixFrom} until={last.end} onEnter={(to) => go(to)} />
      </div>
      <input
        type="range"
        aria-label={w.slider}
        aria-valuetext={`${clock}, ${said(coat, now)}`}
        min={from}
        max={until}
        step={MINUTE}
        value={now}
        onChange={(event) => go(Number(event.target.value))}
      />
      <div className="play-presses">
        <button type="button" className="press" onClick={() => go(turnBefore(all, now) ?? from)}>
          {w.before}
        </button>
        <button
          type="button"
          className="press"
          onClick={() => {
            if (!runs && (at === null || now >= until)) lookAt({ at: from });
            setRuns(!runs);
          }}
        >
          {runs ? w.pause : w.start}
        </button>
        <button type="button" className="press" onClick={() => go(turnAfter(all, now) ?? until)}>
          {w.after}
        </button>
        <button
          type="button"
          className="press"
          disabled={at === null}
          onClick={() => {
            setRuns(false);
            lookAt({ at: null });
          }}
        >
          {w.whole}
        </button>
      </div>
      {at === null ? null : <Now coat={coat} at={now} />}
      <PhoneFloor coat={coat} />
    </section>
  );
}

/** What goes on at a moment, in words. */
function said({ pours }: Coat, at: number): string {
  const { spreading, mixing, next, done } = momentOf(pours, at);
  if (done) return w.done;
  const parts = [
    ...(spreading === null ? [] : [w.spreading(spreading + 1)]),
    ...(mixing === null ? [] : [w.mixing(mixing + 1)]),
  ];
  if (parts.length > 0) return parts.join(', ');
  return next === 0 ? w.ready : w.walking((next ?? 0) + 1);
}

function Now({ coat, at }: { readonly coat: Coat; readonly at: number }) {
  const { spreading } = usePlan();
  const { planned } = useStep();
  const cells = cellsFor(spreading.cells, coat);
  const share = cells && cells.x.length > 0 ? squaresDown(cells, at) / cells.x.length : null;
  const { spreading: now, mixing } = momentOf(coat.pours, at);
  const bail = coat.bailOuts.find(({ pour }) => pour === `${(now ?? mixing ?? -1) + 1}`);
  const percent = new Intl.NumberFormat(planned.units === 'imperial' ? 'en-US' : 'en-GB', {
    style: 'percent',
    maximumFractionDigits: 0,
  });
  return (
    <p className="play-now">
      <b>{said(coat, at)}</b>
      {share === null ? null : <span>{w.wet(percent.format(share).replace('%', '\u00a0%'))}</span>}
      {bail ? <span>{w.stop(clockText(bail.at))}</span> : null}
      <span className="legend" aria-hidden="true">
        <svg width="18" height="14" aria-hidden="true">
          <rect width="18" height="14" fill="var(--slab)" />
          <rect width="18" height="14" fill="url(#wet)" />
        </svg>
        {w.legend.wet}
        <svg width="18" height="14" aria-hidden="true">
          <rect width="18" height="14" fill="var(--chalk-soft)" stroke="var(--stroke)" />
        </svg>
        {w.legend.now}
        <svg width="18" height="14" aria-hidden="true">
          <circle cx="9" cy="7" r="6" fill="var(--chalk)" />
        </svg>
        {w.legend.crew}
        <svg width="18" height="14" aria-hidden="true">
          <path d="M0 7H18" stroke="var(--chalk)" strokeWidth="4" />
        </svg>
        {w.legend.edge}
        <svg width="18" height="14" aria-hidden="true">
          <path d="M0 7H18" stroke="var(--ink)" strokeWidth="2" strokeDasharray="2 5" />
        </svg>
        {w.legend.way}
      </span>
    </p>
  );
}

interface TypedProps {
  readonly clock: string;
  readonly from: string;
  readonly until: string;
  readonly onEnter: (at: number) => void;
}

function TypedTime({ clock, from, until, onEnter }: TypedProps) {
  const [text, setText] = useState(clock);
  const [wrong, setWrong] = useState(false);
  const id = useId();
  const enter = (): void => {
    if (text === clock) return;
    const found = typedMoment(text, from);
    const good = found !== null && found >= Date.parse(from) && found <= Date.parse(until);
    setWrong(!good);
    if (good) onEnter(found);
  };
  return (
    <div className="play-time">
      <label htmlFor={id}>{w.time}</label>
      <input
        id={id}
        inputMode="numeric"
        autoComplete="off"
        value={text}
        aria-invalid={wrong}
        {...(wrong ? { 'aria-describedby': `${id}-wrong` } : {})}
        onChange={(event) => setText(event.target.value)}
        onBlur={enter}
        onKeyDown={(event) => {
          if (event.key === 'Enter') enter();
        }}
      />
      {wrong ? (
        <span id={`${id}-wrong`} role="alert" className="wrong">
          {w.beyond(from.slice(11, 16), until.slice(11, 16))}
        </span>
      ) : null}
    </div>
  );
}

/** On a phone the floor stands right under the presses that play it, and under those one draws with. */
export function PhoneFloor({ coat }: { readonly coat: Coat }) {
  const view = useStep();
  const area = view.planned.areas.find(({ id }) => coat.areas.includes(id)) ?? null;
  const layer = useMemo(() => ({ ...spreadLayer({ ...view, area }), labels: [] }), [view, area]);
  return (
    <div className="phone play-floor">
      <Floor area={area} layer={layer} units={view.planned.units} />
    </div>
  );
}
