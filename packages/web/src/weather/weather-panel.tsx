import { type ReactNode, useEffect, useId, useState } from 'react';
import { useJob, usePlan } from '../job/job-context.tsx';
import { deviceNotes, noteOnDevice } from '../keep/device.ts';
import { momentText } from '../when.ts';
import { words } from '../words.ts';
import type { TypedNumbers } from '../worker/weather-api.ts';
import { FIELDS, guessColumns, UNITS } from './columns.ts';
import { ExampleWeather } from './example-weather.tsx';
import { type Given, useGiving } from './use-giving.ts';

const w = words.weather;
const MOST_BYTES = 20 * 1024 * 1024;

/** Gives the job its weather: a file, five numbers, or a forecast service where this device may ask one. */
export function WeatherPanel() {
  const { document, changeDocument } = useJob();
  const { planned } = usePlan();
  const told = document.weather ? planned?.weather : null;
  return (
    <>
      <p className="quiet">{w.intro}</p>
      <p>
        <b>{told ? w.now(told.source, momentText(told.from), momentText(told.until)) : w.none}</b>
      </p>
      {document.weather ? (
        <button
          type="button"
          className="press"
          onClick={() =>
            changeDocument((draft) => {
              delete (draft as { weather?: string }).weather;
            })
          }
        >
          {w.takeAway}
        </button>
      ) : null}
      <ExampleWeather />
      <FromFile />
      <ByHand />
      <FromService />
    </>
  );
}

function Group({
  title,
  note,
  children,
}: {
  readonly title: string;
  readonly note?: string;
  readonly children: ReactNode;
}) {
  return (
    <section className="group" aria-label={title}>
      <h3>{title}</h3>
      {note ? <p className="quiet">{note}</p> : null}
      {children}
    </section>
  );
}

function Outcome({ given }: { readonly given: Given | null }) {
  const text =
    !given || given.headings.length > 0
      ? null
      : given.taken
        ? given.issues.length > 0
          ? w.takenWith
          : w.taken
        : w.notTaken;
  return (
    <div role="status" className={given && !given.taken && given.headings.length === 0 ? 'wrong' : undefined}>
      {text ? <p>{text}</p> : null}
      {given && given.issues.length > 0 ? (
        <ul>
          {given.issues.map((issue) => (
            <li key={issue}>{issue}</li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

interface Pasted {
  readonly name: string;
  readonly text: string;
}

function FromFile() {
  const { give, given, busy } = useGiving();
  const [pasted, setPasted] = useState<Pasted>({ name: '', text: '' });
  const [large, setLarge] = useState(false);
  const id = useId();
  const take = (next: Pasted): void => {
    setPasted(next);
    void give({ is: 'file', ...next });
  };
  return (
    <Group title={w.fromFile} note={w.fileNote}>
      <div className="fields">
        <div className="field wide">
          <label htmlFor={`${id}-file`}>{w.choose}</label>
          <input
            id={`${id}-file`}
            type="file"
            accept=".json,.csv,.txt,.tsv,.epw,application/json,text/csv"
            onChange={async (event) => {
              const file = event.target.files?.[0];
              if (!file) return;
              setLarge(file.size > MOST_BYTES);
              if (file.size <= MOST_BYTES) take({ name: file.name, text: await file.text() });
            }}
          />
        </div>
        <div className="field wide">
          <label htmlFor={`${id}-text`}>{w.paste}</label>
          <textarea
            id={`${id}-text`}
            rows={4}
            spellCheck={false}
            onChange={(event) => setPasted({ name: w.paste, text: event.target.value })}
          />
        </div>
      </div>
      <button
        type="button"
        className="press"
        disabled={busy || pasted.text.trim() === ''}
        onClick={() => take({ name: pasted.name === w.paste ? w.title : pasted.name, text: pasted.text })}
      >
        {w.use}
      </button>
      {large ? (
        <p className="wrong" role="alert">
          {w.tooLarge}
        </p>
      ) : null}
      {given && given.headings.length > 0 ? (
        <Columns
          key={given.headings.join()}
          headings={given.headings}
          busy={busy}
          use={(columns) => void give({ is: 'file', ...pasted, columns })}
        />
      ) : null}
      <Outcome given={given} />
    </Group>
  );
}

type Chosen = ReturnType<typeof guessColumns> & { readonly zone: string };

function Columns({
  headings,
  busy,
  use,
}: {
  readonly headings: readonly string[];
  readonly busy: boolean;
  readonly use: (chosen: Chosen) => void;
}) {
  const { file } = useJob();
  const [chosen, setChosen] = useState<Chosen>(() => ({ ...guessColumns(headings), zone: file.place.zone }));
  const columnOptions = headings.map((heading) => (
    <option key={heading} value={heading}>
      {heading}
    </option>
  ));
  const setField = (field: string, column: string, unit: string): void => {
    const { [field]: _, ...rest } = chosen.fields;
    setChosen({ ...chosen, fields: column === '' ? rest : { ...rest, [field]: { column, unit } } });
  };
  return (
    <fieldset className="group">
      <legend>{w.columns}</legend>
      <div className="fields">
        <label className="field">
          <span>{w.time}</span>
          <select value={chosen.time} onChange={(event) => setChosen({ ...chosen, time: event.target.value })}>
            {columnOptions}
          </select>
        </label>
        <label className="field">
          <span>{w.zone}</span>
          <select value={chosen.zone} onChange={(event) => setChosen({ ...chosen, zone: event.target.value })}>
            <option value={file.place.zone}>{w.zonePlace}</option>
            <option value="UTC">{w.utc}</option>
          </select>
        </label>
        {FIELDS.map((field) => {
          const now = chosen.fields[field];
          const unit = now?.unit ?? (UNITS[field][0] as string);
          return (
            <div className="field" key={field}>
              <span>{w.fields[field]}</span>
              <select
                aria-label={w.fields[field]}
                value={now?.column ?? ''}
                onChange={(event) => setField(field, event.target.value, unit)}
              >
                <option value="">{w.absent}</option>
                {columnOptions}
              </select>
              {now ? (
                <select
                  aria-label={w.unit(w.fields[field])}
                  value={unit}
                  onChange={(event) => setField(field, now.column, event.target.value)}
                >
                  {UNITS[field].map((one) => (
                    <option key={one}>{one}</option>
                  ))}
                </select>
              ) : null}
            </div>
          );
        })}
      </div>
      <button type="button" className="press main" disabled={busy} onClick={() => use(chosen)}>
        {w.use}
      </button>
    </fieldset>
  );
}

const EXAMPLES: Readonly<Record<'imperial' | 'metric', TypedNumbers>> = {
  imperial: { coldest: '50 °F', warmest: '72 °F', humidity: '85 %', wind: '4 mph', cloud: '40 %' },
  metric: { coldest: '10 °C', warmest: '22 °C', humidity: '85 %', wind: '2 m/s', cloud: '40 %' },
};
const NUMBERS = ['coldest', 'warmest', 'humidity', 'wind', 'cloud'] as const;
const EMPTY: TypedNumbers = { coldest: '', warmest: '', humidity: '', wind: '', cloud: '' };

function ByHand() {
  const { give, given, busy } = useGiving();
  const { planned } = usePlan();
  const [numbers, setNumbers] = useState<TypedNumbers>(EMPTY);
  const examples = EXAMPLES[planned?.units ?? 'metric'];
  return (
    <Group title={w.byHand} note={w.byHandNote}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void give({ is: 'typed', numbers });
        }}
      >
        <div className="fields">
          {NUMBERS.map((name) => (
            <label className="field" key={name}>
              <span>{w.numbers[name]}</span>
              <input
                value={numbers[name]}
                placeholder={examples[name]}
                onChange={(event) => setNumbers({ ...numbers, [name]: event.target.value })}
              />
            </label>
          ))}
        </div>
        <button type="submit" className="press" disabled={busy || NUMBERS.some((name) => numbers[name].trim() === '')}>
          {w.use}
        </button>
      </form>
      <Outcome given={given} />
    </Group>
  );
}

type ServiceName = keyof typeof w.services;
const SERVICES = Object.keys(w.services) as readonly ServiceName[];

const roundedText = (value: number): string => value.toFixed(2);

function FromService() {
  const { device, file } = useJob();
  const { give, given, busy } = useGiving();
  const [allowed, setAllowed] = useState(false);
  const [service, setService] = useState<ServiceName>('met-norway');
  useEffect(() => {
    let left = false;
    const read = async (): Promise<void> => {
      const notes = await deviceNotes(device.store);
      if (!left) setAllowed(notes.mayAskForecast === true);
    };
    void read();
    return () => {
      left = true;
    };
  }, [device]);
  const { latitude, longitude } = file.place;
  if (latitude === undefined || longitude === undefined)
    return (
      <Group title={w.service}>
        <p>{w.noPlaceYet}</p>
      </Group>
    );
  const allow = (next: boolean): void => {
    setAllowed(next);
    void noteOnDevice(device.store, (before) => ({ ...before, mayAskForecast: next }));
  };
  return (
    <Group title={w.service}>
      <label className="allow">
        <input type="checkbox" checked={allowed} onChange={(event) => allow(event.target.checked)} />
        <span>{w.allow(`${roundedText(latitude)}, ${roundedText(longitude)}`)}</span>
      </label>
      <div className="fields">
        <label className="field wide">
          <span>{w.which}</span>
          <select value={service} onChange={(event) => setService(event.target.value as ServiceName)}>
            {SERVICES.map((one) => (
              <option key={one} value={one}>
                {w.services[one]}
              </option>
            ))}
          </select>
        </label>
      </div>
      <button
        type="button"
        className="press"
        disabled={!allowed || busy}
        onClick={() => void give({ is: 'service', service, name: w.services[service], allowed })}
      >
        {busy ? w.asking : w.ask}
      </button>
      <Outcome given={given} />
    </Group>
  );
}
