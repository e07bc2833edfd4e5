import { Link } from 'wouter';
import { useMoveStart } from '../../day/start-control.tsx';
import { usePlan } from '../../job/job-context.tsx';
import { VerdictMark } from '../../marks/verdict-mark.tsx';
import { clockText, dayText, momentText } from '../../when.ts';
import { words } from '../../words.ts';
import { WorkingLink } from '../../working/working-link.tsx';
import { useStep } from '../step-view.tsx';
import { dayOf } from './forecast-facts.ts';

const w = words.hours;
/** Starts offered for one coat. */
const OFFERED = 3;

/** Other starts, each a press with the margin it would have and the verdict it would earn. */
export function OtherStarts() {
  const view = useStep();
  const move = useMoveStart();
  const day = dayOf(view);
  const ways = (day?.coats ?? []).flatMap(({ layer, name, best, start }) =>
    best
      .filter(({ at }) => at !== start?.at)
      .slice(0, OFFERED)
      .map((one) => ({ ...one, layer, name, sameDay: start?.at.slice(0, 10) === one.at.slice(0, 10) })),
  );
  if (ways.length === 0) return null;
  return (
    <section className="starts">
      <h3>{w.otherStarts}</h3>
      <ul>
        {ways.map(({ layer, name, at, word, margin, sameDay }) => (
          <li key={`${layer}-${at}`}>
            <button type="button" onClick={() => move(layer, at)}>
              {w.startAt(name, sameDay ? clockText(at) : momentText(at))}
            </button>
            <span>
              <WorkingLink id={margin} /> <VerdictMark verdict={word} /> {words.verdict[word]}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the customer was told, in words with its conditions. */
export function Promises() {
  const view = useStep();
  const promises = dayOf(view)?.promises ?? [];
  if (promises.length === 0) return null;
  return (
    <section className="notes">
      <h3>{w.promises}</h3>
      <ul>
        {promises.map(({ what, says, basis }) => (
          <li key={what}>{`${view.voice.say(says)} ${view.voice.say(basis)}`}</li>
        ))}
      </ul>
    </section>
  );
}

const DAY = 86_400_000;

/** The windows of each coat in words, around the days of the coats. */
export function Windows() {
  const view = useStep();
  const day = dayOf(view);
  const starts = (day?.coats ?? []).flatMap(({ start }) => (start ? [Date.parse(start.at)] : []));
  if (!day || starts.length === 0) return null;
  const [from, until] = [Math.min(...starts) - DAY / 2, Math.max(...starts) + DAY];
  return (
    <section className="reasons">
      <h3>{w.windows}</h3>
      {day.coats.map(({ layer, name, starts: stretches }) => (
        <details key={layer}>
          <summary>{name}</summary>
          <ul>
            {stretches
              .filter((one) => Date.parse(one.until) >= from && Date.parse(one.from) <= until)
              .map((one) => (
                <li key={one.from}>
                  <VerdictMark verdict={one.word} />
                  <span>
                    <b>{`${dayText(one.from)} ${clockText(one.from)}–${clockText(one.until)} ${words.day.window[one.word]}`}</b>
                    {one.limiting ? ` ${view.voice.say(one.limiting)}` : ''}
                    {one.limiting?.lift ? ` ${view.voice.say(one.limiting.lift)}` : ''}
                  </span>
                </li>
              ))}
          </ul>
        </details>
      ))}
    </section>
  );
}

/** When the last coat bears what, with the band and the condition. */
export function GivenBack() {
  const view = useStep();
  const last = dayOf(view)?.coats.findLast(({ start }) => start);
  const stages = (last?.milestones ?? []).flatMap(({ what, last: span, holds }) =>
    what === 'foot' || what === 'light' || what === 'vehicle' || what === 'full' ? [{ what, span, holds }] : [],
  );
  if (stages.length === 0) return null;
  return (
    <section className="notes">
      <h3>{w.givenBack}</h3>
      <ul>
        {stages.map(({ what, span, holds }) => (
          <li key={what}>
            <b>{`${words.day.given_back[what]} ${momentText(span.at)}`}</b>
            {`, ${span.high ? w.between(momentText(span.low), momentText(span.high)) : words.day.orLater(momentText(span.low))}. `}
            {[...new Set(holds.map((said) => view.voice.say(said)))].join(' ')}
          </li>
        ))}
      </ul>
    </section>
  );
}

const HOUR = 3_600_000;

/** Where the weather comes from and how old it is. */
export function WeatherUsed() {
  const { id } = usePlan();
  const { planned, plan } = useStep();
  const { weather } = planned;
  const age = weather?.issued
    ? Math.max(0, Math.round((Date.parse(plan.now) - Date.parse(weather.issued)) / HOUR))
    : null;
  return (
    <section className="notes">
      <h3>{words.weather.title}</h3>
      <p>
        {weather
          ? `${words.weather.now(weather.source, momentText(weather.from), momentText(weather.until))} `
          : `${words.weather.none} `}
        {weather
          ? weather.issued && age !== null
            ? `${words.weather.issued(momentText(weather.issued), words.weather.age(age))}.`
            : `${words.weather.notIssued}.`
          : null}
      </p>
      <Link className="press" href={`/job/${id}/hours/enter/weather`}>
        {words.weather.enter}
      </Link>
    </section>
  );
}
