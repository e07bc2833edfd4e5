import { useState } from 'react';
import { useJob } from '../../job/job-context.tsx';
import { hand } from '../../keep/hand.ts';
import { words } from '../../words.ts';
import { planWorker } from '../../worker/client.ts';

const w = words.hours;

/** The hours as a calendar file, made on this device. */
export function Calendar({ option }: { readonly option: string }) {
  const { id, stale } = useJob();
  const [failed, setFailed] = useState<string | null>(null);
  const save = async (): Promise<void> => {
    try {
      hand(await planWorker().calendar(option), `${id}-${option}.ics`, 'text/calendar');
      setFailed(null);
    } catch (trouble) {
      setFailed(String(trouble));
    }
  };
  return (
    <div className="making">
      <p>{w.calendarNote}</p>
      <button type="button" className="press" disabled={stale} onClick={() => void save()}>
        {w.calendar}
      </button>
      {failed ? (
        <p className="wrong" role="alert">
          {w.calendarFailed} <small>{failed}</small>
        </p>
      ) : null}
    </div>
  );
}
