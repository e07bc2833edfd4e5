import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { DrawPanel } from '../draw/draw-panel.tsx';
import { useJob } from '../job/job-context.tsx';
import { isUnfinished, unfinishedRooms } from '../job/unfinished.ts';
import { Troubles } from '../screens/troubles.tsx';
import { WeatherPanel } from '../weather/weather-panel.tsx';
import { words as screenWords } from '../words.ts';
import { Form } from './form.tsx';
import { useTarget } from './form-target.tsx';
import { GoodsPanel } from './goods-panel.tsx';
import { goodsWords } from './goods-words.ts';
import { OPTIONS } from './option-section.ts';
import type { Section } from './spec.ts';
import { SURVEY_SECTIONS } from './survey-sections.ts';
import { words } from './words.ts';

const FLOOR: Section = { id: 'floor', title: words.draw, parts: [] };
const GOODS: Section = { id: 'goods', title: goodsWords.title, parts: [] };
const WEATHER: Section = { id: 'weather', title: screenWords.weather.title, parts: [] };

/** Everything a person enters about a job, in the order somebody walks the site. */
export const SECTIONS: readonly Section[] = [FLOOR, ...SURVEY_SECTIONS, WEATHER, GOODS, OPTIONS];

export function EditPanel({ step, section: wanted }: { readonly step: string; readonly section: string }) {
  const { id } = useJob();
  const section = SECTIONS.find((one) => one.id === wanted) ?? FLOOR;
  const head = useRef<HTMLHeadingElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another part begins at its head
  useEffect(() => {
    head.current?.scrollIntoView({ block: 'nearest' });
    head.current?.focus({ preventScroll: true });
  }, [section.id]);
  return (
    <section className="facts entering" id="facts" aria-label={section.title}>
      <Troubles />
      <div className="entering-head">
        <h2 ref={head} tabIndex={-1}>
          {section.title}
        </h2>
        <Link className="press" href={`/job/${id}/${step}`}>
          {words.done}
        </Link>
      </div>
      <SectionChoice step={step} section={section} />
      <WrongCount />
      {section.note ? <p className="quiet">{section.note}</p> : null}
      {section.id === FLOOR.id ? (
        <DrawPanel />
      ) : section.id === WEATHER.id ? (
        <WeatherPanel />
      ) : section.id === GOODS.id ? (
        <GoodsPanel />
      ) : (
        <Form key={section.id} parts={section.parts} />
      )}
      <NextPart step={step} section={section} />
    </section>
  );
}

function SectionChoice({ step, section }: { readonly step: string; readonly section: Section }) {
  const { id } = useJob();
  const { issues } = useTarget();
  const strip = useRef<HTMLUListElement>(null);
  // On a phone the parts stand in one line; the one looked at is brought into sight.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another part is the reason to look for it
  useEffect(() => {
    const list = strip.current;
    const here = list?.querySelector<HTMLElement>('[aria-current]');
    if (list && here) list.scrollLeft = here.offsetLeft - list.offsetLeft - (list.clientWidth - here.offsetWidth) / 2;
  }, [section.id]);
  return (
    <nav className="parts" aria-label={words.sections}>
      <ul ref={strip}>
        {SECTIONS.map((one) => (
          <li key={one.id}>
            <Link href={`/job/${id}/${step}/enter/${one.id}`} aria-current={one.id === section.id ? 'page' : undefined}>
              {one.title}
              {one.id === section.id && issues.some((issue) => !issue.odd && !isUnfinished(issue)) ? ' ·' : ''}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function WrongCount() {
  const { issues } = useTarget();
  const { file } = useJob();
  const wrong = issues.filter((issue) => !issue.odd && !isUnfinished(issue));
  const open = unfinishedRooms(issues);
  return (
    <div role="status">
      {wrong.length === 0 && open.length > 0 ? (
        <p className="quiet">{screenWords.whole.unfinished(open.map((at) => file.areas[at]?.name ?? ''))}</p>
      ) : null}
      {wrong.length > 0 ? (
        <div className="waits">
          <p>
            <b>{words.wrong(wrong.length)}.</b> {words.wrongNote}
          </p>
          <ul>
            {[...new Set(wrong.map(({ text }) => text))].slice(0, 5).map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </div>
      ) : null}
    </div>
  );
}

function NextPart({ step, section }: { readonly step: string; readonly section: Section }) {
  const { id } = useJob();
  const next = SECTIONS[SECTIONS.indexOf(section) + 1];
  return (
    <p className="next-part">
      {next ? (
        <Link className="press main" href={`/job/${id}/${step}/enter/${next.id}`}>
          {next.title}
        </Link>
      ) : (
        <Link className="press main" href={`/job/${id}/${step}`}>
          {words.done}
        </Link>
      )}
    </p>
  );
}
