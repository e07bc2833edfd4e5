import { useEffect, useRef, useState } from 'react';
import { SaidList } from '../facts/said-list.tsx';
import { useJob } from '../job/job-context.tsx';
import { usePreferences } from '../job/preferences.ts';
import { localeHere } from '../job/use-planning.ts';
import { useStoredWeather } from '../keep/weather.ts';
import { VerdictMark } from '../marks/verdict-mark.tsx';
import { spreadWorker } from '../spread/client.ts';
import type { CompareView } from './api.ts';
import { Bar } from './bars.tsx';
import { Section } from './section.tsx';
import { letterOf, SystemsTable, Table, verdictOf } from './systems-table.tsx';
import './compare.css';
import { words } from './words.ts';

interface Found {
  readonly is: 'working' | 'made' | 'failed';
  readonly view: CompareView | null;
  /** The job it was made from. */
  readonly file: unknown;
}

/** Every system of the catalogue on this slab, and the sheets of a few products, asked of the worker when opened. */
export function ComparePanel() {
  const { file, document, catalogue, priceBook, device } = useJob();
  const { units } = usePreferences();
  const weather = useStoredWeather(device.store, document.weather);
  const [products, choose] = useState<readonly string[]>([]);
  const [found, setFound] = useState<Found>({ is: 'working', view: null, file });
  const [asked, ask] = useState(0);
  const now = useRef({ file, document, catalogue, priceBook });
  now.current = { file, document, catalogue, priceBook };
  // biome-ignore lint/correctness/useExhaustiveDependencies: another press asks the same question again
  useEffect(() => {
    if (weather === undefined) return;
    let left = false;
    const { file: job, document: kept, catalogue: sheets, priceBook: book } = now.current;
    setFound(({ view }) => ({ is: 'working', view, file: job }));
    spreadWorker()
      .compare({
        job,
        catalogue: sheets.get().body,
        priceBook: book?.get().body ?? null,
        weather,
        now: kept.asOf ?? Date.now(),
        locale: localeHere(),
        products,
        ...(units ? { units } : {}),
      })
      .then(
        (view) => left || setFound({ is: 'made', view, file: job }),
        () => left || setFound({ is: 'failed', view: null, file: job }),
      );
    return () => {
      left = true;
    };
  }, [products, units, asked, weather]);
  const { view } = found;
  const old = found.is === 'made' && found.file !== file;
  return (
    <div className="compare" aria-busy={found.is === 'working'}>
      <div role="status">
        {found.is === 'working' && !view ? <p>{`${words.working}.`}</p> : null}
        {found.is === 'failed' ? <p>{words.failed}</p> : null}
        {found.is === 'made' && !view ? <p>{words.none}</p> : null}
        {old ? <p className="spread-stale">{words.old}</p> : null}
      </div>
      {old || found.is === 'failed' ? (
        <button type="button" className="press" onClick={() => ask((n) => n + 1)}>
          {words.again}
        </button>
      ) : null}
      {view ? <View view={view} products={products} choose={choose} /> : null}
    </div>
  );
}

interface ViewProps {
  readonly view: CompareView;
  readonly products: readonly string[];
  readonly choose: (products: readonly string[]) => void;
}

function View({ view, products, choose }: ViewProps) {
  const fit = view.systems.filter(({ fits, front }) => fits === 'yes' && front);
  // Of several the mark is that of the one with the fewest words against it.
  const only = fit.find(({ cautions }) => cautions.length === 0) ?? fit[0];
  return (
    <>
      <p className="compare-head">
        <VerdictMark verdict={only ? verdictOf(only) : 'not known'} size={24} />
        <strong>{words.headline(only, fit.length)}</strong>
      </p>
      {view.common.length > 0 ? <SaidList className="compare-lines" title={words.against} lines={view.common} /> : null}
      <SystemsTable view={view} />
      {view.about.map((line) => (
        <p key={line} className="quiet">
          {line}
        </p>
      ))}
      <Section />
      <Misfits view={view} />
      <Sheets view={view} products={products} choose={choose} />
    </>
  );
}

/** What cannot be laid: the one reason, and the change that would admit it. */
function Misfits({ view }: { readonly view: CompareView }) {
  const not = view.systems.filter(({ fits }) => fits === 'no');
  if (not.length === 0) return null;
  return (
    <section className="compare-lines">
      <h3>{words.weak}</h3>
      <ul>
        {not.map(({ id, name, reason, lift, also }) => (
          <li key={id}>
            <VerdictMark verdict="stop" /> <b>{name}</b>
            {also.length > 0 ? <span className="quiet"> {words.more(also.length)}</span> : null}
            <p>{reason}</p>
            {lift ? (
              <p>
                <b>{words.admit}:</b> {lift}
              </p>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Sheets({ view, products, choose }: ViewProps) {
  const { offered, rows, doubts, asks } = view;
  const chosen = products.length > 0 ? products : view.products.map(({ id }) => id);
  const stated = offered.filter(({ states }) => states > 0);
  const toggle = (id: string): void => {
    const next = chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id];
    if (next.length >= 2 && next.length <= 4) choose(next);
  };
  return (
    <section className="compare-sheets">
      <h3>{words.sheets}</h3>
      {stated.length < 2 ? (
        <p>{words.noSheets}</p>
      ) : (
        <>
          <p className="quiet">{words.sheetsNote}</p>
          <fieldset className="compare-choice">
            <legend>{words.choose}</legend>
            {stated.map(({ id, name, states }) => (
              <label key={id}>
                <input
                  type="checkbox"
                  checked={chosen.includes(id)}
                  disabled={chosen.includes(id) ? chosen.length <= 2 : chosen.length >= 4}
                  onChange={() => toggle(id)}
                />
                {name} <small>{words.states(states)}</small>
              </label>
            ))}
          </fieldset>
          <Table
            title={words.property}
            heads={view.products.map(({ name }, i) => [letterOf(i), name] as const)}
            rows={rows.map(({ key, name, better, cells }) => ({
              key,
              name,
              note: better,
              cells: cells.map((cell) => (
                <span key={cell.product}>
                  <Bar bar={cell.bar} hatched={!cell.comparable} />
                  <b>{cell.text}</b>
                  <small>{cell.note}</small>
                </span>
              )),
            }))}
          />
          <p className="compare-legend">
            <span className="swatch" aria-hidden="true" /> {words.legend.same}
            <br />
            <span className="swatch none" aria-hidden="true" /> {words.legend.other}
          </p>
          <SaidList
            className="compare-lines"
            title={words.stand}
            lines={rows.flatMap(({ name, says }) => says.map((one) => `${name}: ${one}`))}
          />
          {doubts.length > 0 ? <SaidList className="compare-lines" title={words.doubts} lines={doubts} /> : null}
          {asks.map(({ name, wanted }) => (
            <SaidList className="compare-lines" key={name} title={`${words.asks}: ${name}`} lines={wanted} />
          ))}
        </>
      )}
    </section>
  );
}
