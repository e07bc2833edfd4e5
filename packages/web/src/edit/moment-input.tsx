import { useState } from 'react';
import { planWorker } from '../worker/client.ts';
import { useTarget } from './form-target.tsx';
import { words } from './words.ts';

interface MomentInputProps {
  readonly label: string;
  readonly value: string;
  readonly dayIsEnough: boolean;
  readonly describedBy: string | undefined;
  readonly invalid: boolean;
  readonly onEnter: (text: string) => void;
}

/** A day and a time on the site's own clock. A time that comes twice that night, or never, asks which. */
export function MomentInput({ label, value, dayIsEnough, describedBy, invalid, onEnter }: MomentInputProps) {
  const { zone } = useTarget();
  const [asked, setAsked] = useState<{ readonly is: 'two' | 'none'; readonly choices: readonly string[] } | null>(null);
  const day = value.slice(0, 10);
  const time = value.slice(11, 16);
  const enter = async (nextDay: string, nextTime: string): Promise<void> => {
    setAsked(null);
    const typed = nextTime ? `${nextDay}T${nextTime}` : nextDay;
    if (!nextDay || !nextTime || !zone) {
      onEnter(typed);
      return;
    }
    const found = await planWorker().local(`${typed}:00`, zone);
    if (found.kind === 'one') onEnter(found.instant);
    else {
      // What was typed is kept in the file until the question is answered.
      onEnter(typed);
      if (found.kind !== 'unreadable') setAsked({ is: found.kind, choices: found.choices });
    }
  };
  const shared = { 'aria-invalid': invalid, ...(describedBy ? { 'aria-describedby': describedBy } : {}) };
  return (
    <span className="moment">
      <input
        type="date"
        aria-label={`${label}, ${words.day}`}
        value={day}
        onChange={(event) => void enter(event.target.value, time)}
        {...shared}
      />
      {zone ? (
        <input
          type="time"
          aria-label={`${label}, ${words.time}`}
          value={time}
          required={!dayIsEnough}
          onChange={(event) => void enter(day, event.target.value)}
          {...shared}
        />
      ) : null}
      {asked ? (
        <span role="alert" className="wrong">
          {(asked.is === 'two' ? words.which : words.none)(time)}
          {asked.choices.map((choice) => (
            <button
              type="button"
              className="press"
              key={choice}
              onClick={() => {
                setAsked(null);
                onEnter(choice);
              }}
            >
              {`${choice.slice(11, 16)} ${choice.slice(19)}`}
            </button>
          ))}
        </span>
      ) : null}
    </span>
  );
}
