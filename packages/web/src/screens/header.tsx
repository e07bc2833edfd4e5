import { Link } from 'wouter';
import { useJob, useKeeping, usePlan } from '../job/job-context.tsx';
import { prefer, usePreferences } from '../job/preferences.ts';
import { useDeviceNotes } from '../keep/use-device.ts';
import { dayText, momentText, sinceText } from '../when.ts';
import { words } from '../words.ts';

export function Wordmark() {
  return (
    <Link className="word" href="/" aria-label={`${words.program}: ${words.allJobs}`}>
      <svg width="22" height="16" viewBox="0 0 22 16" aria-hidden="true">
        <path d="M0 4h22v12H0z" fill="var(--ink)" />
        <path d="M0 1.5h22" stroke="var(--chalk)" strokeWidth="2.4" />
      </svg>
      <span>{words.program}</span>
    </Link>
  );
}

/** How this person reads: units and ground. */
export function ReaderChoices({ own }: { readonly own: 'imperial' | 'metric' }) {
  const { units = own, theme } = usePreferences();
  const otherUnits = units === 'imperial' ? 'metric' : 'imperial';
  const otherTheme = theme === 'sun' ? 'night' : 'sun';
  return (
    <span className="reader">
      <button
        type="button"
        onClick={() => prefer({ units: otherUnits })}
        aria-label={`${words.units.label}: ${words.units[units]}`}
      >
        {words.units[units]}
      </button>
      <button
        type="button"
        onClick={() => prefer({ theme: otherTheme })}
        aria-label={`${words.theme.label}: ${words.theme[theme]}`}
      >
        {words.theme[theme]}
      </button>
    </span>
  );
}

export function Header() {
  const { file, document, undo, redo, id } = useJob();
  const { planned, plan, optionId } = usePlan();
  const keeping = useKeeping();
  const option = plan?.options.find((one) => one.id === optionId);
  const first = file.options.find((one) => one.id === optionId)?.starts?.[0]?.at;
  const notes = useDeviceNotes(keeping.revision);
  const exported = notes?.exportedAt?.[id] ?? notes?.backupAt;
  return (
    <header>
      <Wordmark />
      <h1>
        <span>{file.title}</span>
        <small>{option?.name}</small>
      </h1>
      <span className="where">
        <span className="about">
          {document.asOf ? words.asOf(momentText(document.asOf)) : first ? dayText(first) : ''}
        </span>
        <span className="kept" role="status">
          {keeping.keeping === 'failed' ? (
            <b>{words.kept.failed}</b>
          ) : keeping.keeping === 'writing' ? (
            words.kept.writing
          ) : (
            `${words.kept.here} · ${exported ? words.kept.saved(sinceText(exported)) : words.kept.never}`
          )}
        </span>
      </span>
      <span className="acts">
        <button type="button" onClick={undo} disabled={!keeping.canUndo}>
          {words.undo}
        </button>
        <button type="button" onClick={redo} disabled={!keeping.canRedo}>
          {words.redo}
        </button>
        <ReaderChoices own={planned?.units ?? file.reader.units} />
      </span>
    </header>
  );
}
