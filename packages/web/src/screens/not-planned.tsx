import { Link } from 'wouter';
import { useJob, usePlan } from '../job/job-context.tsx';
import { isUnfinished, unfinishedRooms } from '../job/unfinished.ts';
import { words } from '../words.ts';

/** Why the newest version cannot be planned, and what looks odd. The last plan stays below, marked as older. */
export function NotPlanned() {
  const { issues, trouble } = useJob();
  const { planned } = usePlan();
  const { file, id } = useJob();
  const warnings = planned?.warnings ?? [];
  const wrong = issues.filter((issue) => !isUnfinished(issue));
  const open = unfinishedRooms(issues).map((at) => file.areas[at]?.name ?? '');
  return (
    <>
      {planned || issues.length > 0 || trouble ? null : (
        <p className="planning" role="status">
          {words.planning}
        </p>
      )}
      {wrong.length === 0 && open.length > 0 ? (
        <section className="line">
          <h3>{words.whole.first}</h3>
          <p>{planned ? words.whole.unfinished(open) : words.floor.emptyTeach}</p>
          <Link className="press main" href={`/job/${id}/survey/enter/floor`}>
            {words.floor.draw}
          </Link>
        </section>
      ) : null}
      {wrong.length > 0 ? (
        <section className="issues" role="alert">
          <h3>{words.whole.title}</h3>
          <ul>
            {wrong.map(({ text, file, path }) => (
              <li key={`${file}-${path.join('.')}-${text}`}>
                {file === 'job' ? '' : `${words.whole.file[file]}: `}
                {text}
              </li>
            ))}
          </ul>
          <p>{planned ? words.whole.keep : words.whole.none}</p>
        </section>
      ) : null}
      {trouble ? (
        <section className="issues" role="alert">
          <h3>{words.broken.title}</h3>
          <p>{words.broken.text}</p>
          <pre>{trouble}</pre>
        </section>
      ) : null}
      {warnings.length > 0 ? (
        <section className="notes">
          <h3>{words.whole.warnings}</h3>
          <ul>
            {warnings.map(({ text }) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      ) : null}
    </>
  );
}
