import { useState } from 'react';
import { usePlan } from '../job/job-context.tsx';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { clockText } from '../when.ts';
import type { JudgedOrder } from './api.ts';
import { spreadWorker } from './client.ts';
import { askedOf, type Coat, cellsFor } from './coats.ts';
import { words } from './words.ts';

const w = words.own;

/** The pours in an order somebody prefers, judged by the checker that judges the planner's own. */
export function OwnOrder({ coat }: { readonly coat: Coat }) {
  const { spreading } = usePlan();
  const planned = coat.pours.map((_, k) => k + 1);
  const [order, setOrder] = useState<readonly number[]>(planned);
  const [found, setFound] = useState<{ readonly for: string; readonly judged: JudgedOrder | null } | null>(null);
  const cells = cellsFor(spreading.cells, coat);
  // A new plan has other pours: an order of the old ones says nothing of them.
  const fits = order.length === planned.length;
  const shown = fits ? order : planned;
  const mark = `${shown.join()} ${cells?.begun ?? ''} ${cells?.x.length ?? ''}`;
  const judged = found?.for === mark ? found.judged : null;
  const move = (place: number, by: -1 | 1): void => {
    const next = [...shown];
    const [one] = next.splice(place, 1);
    if (one !== undefined) next.splice(place + by, 0, one);
    setOrder(next);
  };
  const judge = async (): Promise<void> => {
    const judged = await spreadWorker().judgeOrder(askedOf(coat), shown);
    setFound({ for: mark, judged });
  };
  if (planned.length < 2) return null;
  const same = shown.join() === planned.join();
  return (
    <section className="own-order">
      <h3>{w.title}</h3>
      <p className="quiet">{w.note}</p>
      <ol>
        {shown.map((number, place) => (
          <li key={number}>
            <b>{number}</b>
            <span>{`${words.pour(number)}, ${w.planned(clockText(coat.pours[number - 1]?.start ?? ''))}`}</span>
            <button type="button" disabled={place === 0} aria-label={w.up(number)} onClick={() => move(place, -1)}>
              ↑
            </button>
            <button
              type="button"
              disabled={place === shown.length - 1}
              aria-label={w.down(number)}
              onClick={() => move(place, 1)}
            >
              ↓
            </button>
          </li>
        ))}
      </ol>
      <p className="own-presses">
        <button type="button" className="press" disabled={spreading.stale} onClick={() => void judge()}>
          {w.judge}
        </button>
        {same ? null : (
          <button type="button" className="press" onClick={() => setOrder(planned)}>
            {w.back}
          </button>
        )}
      </p>
      <div role="status">{judged ? <JudgedView judged={judged} good={w.good} bad={w.bad} /> : null}</div>
    </section>
  );
}

interface JudgedProps {
  readonly judged: JudgedOrder;
  readonly good: string;
  bad(count: number): string;
}

/** The checker's word, and each thing that breaks. */
export function JudgedView({ judged, good, bad }: JudgedProps) {
  return (
    <div className="judged">
      <p>
        <VerdictMark verdict={judged.ok ? 'go' : 'stop'} /> <b>{judged.ok ? good : bad(judged.breaks.length)}</b>
      </p>
      <ul>
        {judged.breaks.map(({ text }) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p className="quiet">{judged.figures.map(([name, text]) => `${name} ${text}`).join(' · ')}</p>
    </div>
  );
}
