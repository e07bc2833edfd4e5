import { useEffect, useId, useState } from 'react';
import { useActs, usePlan } from '../job/job-context.tsx';
import { words } from '../words.ts';
import { planWorker } from '../worker/client.ts';
import type { DayData, Start } from './day-data.ts';
import { clock, dateAt, instantAt, MINUTE, offsetOf } from './scale.ts';

/** Moves a start of the option looked at; the moves of one flag are one step of undo. */
export function useMoveStart(): (layer: string, instant: string) => void {
  const { change } = useActs();
  const { optionId } = usePlan();
  return (layer, instant) =>
    change((draft) => {
      const option = draft.options.find(({ id }) => id === optionId);
      if (!option) return;
      const start = option.starts?.find((one) => one.layer === layer);
      if (start) start.at = instant;
      // A start that was only proposed is chosen by moving it.
      else option.starts = [...(option.starts ?? []), { layer, at: instant }];
    }, `start-${optionId}-${layer}`);
}

/** The start to type, with a press either side of it. */
export function StartControl({ data }: { readonly data: DayData }) {
  const [index, choose] = useState(0);
  const start = data.starts.find((one) => one.index === index) ?? data.starts[0];
  const label = useId();
  if (!start) return null;
  return (
    <div className="start">
      {data.starts.length > 1 ? (
        <select
          className="quiet"
          id={label}
          aria-label={words.hours.gates}
          value={start.index}
          onChange={(event) => choose(Number(event.target.value))}
        >
          {data.starts.map((one) => (
            <option key={one.layer} value={one.index}>
              {words.hours.start(one.name)}
            </option>
          ))}
        </select>
      ) : (
        <span className="quiet" id={label}>
          {words.hours.start(start.name)}
        </span>
      )}
      <TimeField key={start.layer} start={start} offset={data.offset} />
    </div>
  );
}

interface Asked {
  readonly is: 'two' | 'none';
  readonly typed: string;
  readonly choices: readonly [string, string];
}

function TimeField({ start, offset }: { readonly start: Start; readonly offset: number }) {
  const { planned } = usePlan();
  const move = useMoveStart();
  const shown = clock(start.at, offset);
  const [text, setText] = useState(shown);
  const [asked, setAsked] = useState<Asked | null>(null);
  const [wrong, setWrong] = useState(false);
  useEffect(() => setText(shown), [shown]);
  const by = (minutes: number): void => move(start.layer, instantAt(start.at + minutes * MINUTE, offset));
  const enter = async (): Promise<void> => {
    if (text === shown || !planned) return;
    const time = /^(\d{1,2})[:.h ]?(\d{2})$/.exec(text.trim());
    const typed = time ? `${time[1]?.padStart(2, '0')}:${time[2]}` : '';
    // Leaving the field to answer what was asked does not ask again.
    if (asked?.typed === typed) return;
    const found = await planWorker().local(`${dateAt(start.at, offset)}T${typed}:00`, planned.zone);
    setWrong(found.kind === 'unreadable');
    if (found.kind === 'one') move(start.layer, found.instant);
    if (found.kind === 'two' || found.kind === 'none') setAsked({ is: found.kind, typed, choices: found.choices });
  };
  return (
    <>
      <div className="time">
        <button type="button" aria-label={words.day.earlier} onClick={() => by(-5)}>
          −
        </button>
        <input
          value={text}
          inputMode="numeric"
          aria-label={words.hours.start(start.name)}
          aria-invalid={wrong}
          onChange={(event) => setText(event.target.value)}
          onBlur={() => void enter()}
          onKeyDown={(event) => {
            if (event.key === 'Enter') void enter();
            if (event.key === 'Escape') setText(shown);
          }}
        />
        <button type="button" aria-label={words.day.later} onClick={() => by(5)}>
          +
        </button>
      </div>
      {wrong ? (
        <p className="wrong" role="alert">
          {words.day.unreadable}
        </p>
      ) : null}
      {asked ? (
        <p className="wrong" role="alert">
          {(asked.is === 'two' ? words.day.which : words.day.none)(
            asked.typed,
            ...(asked.choices.map((one) => `${one.slice(11, 16)} ${one.slice(19)}`) as [string, string]),
          )}
          {asked.choices.map((choice) => (
            <button
              type="button"
              className="press"
              key={choice}
              onClick={() => {
                setAsked(null);
                move(start.layer, instantAt(Date.parse(choice), offsetOf(choice)));
              }}
            >
              {`${choice.slice(11, 16)} ${choice.slice(19)}`}
            </button>
          ))}
        </p>
      ) : null}
    </>
  );
}
