import type { CatalogueFile, JobFile } from '@slabwright/core';
import type { Heading, Json, Store } from '@slabwright/store';
import { useEffect, useId, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { device } from '../keep/device.ts';
import { catalogueHeading, type JobDocument, jobHeading } from '../keep/documents.ts';
import { freeId } from '../keep/goods.ts';
import { Wordmark } from '../screens/header.tsx';
import { words as app } from '../words.ts';
import { newWords as w } from './new-words.ts';
import './edit.css';

const OWN = 'own-catalogue';

/** The browser's own list of zones is the one times will be read with. */
function isZone(zone: string): boolean {
  try {
    return /[a-z]/i.test(zone) && new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch (trouble) {
    if (trouble instanceof RangeError) return false;
    throw trouble;
  }
}

interface Wanted {
  readonly title: string;
  readonly zone: string;
  readonly units: 'imperial' | 'metric';
  readonly catalogue: string;
}

async function cataloguesHere(): Promise<{ readonly store: Store; readonly headings: readonly Heading[] }> {
  const { store } = await device();
  const { headings } = await store.list({ kind: 'catalogue', limit: 200 });
  return { store, headings };
}

/** A job with one room nobody has drawn yet. What is not known stays not known. */
async function begin(store: Store, { title, zone, units, catalogue }: Wanted): Promise<string> {
  const updatedAt = new Date().toISOString();
  const id = await freeId(store, 'job', title);
  const job: JobFile = {
    schema: 'slabwright.job/1',
    id,
    title,
    place: { zone },
    reader: { units, paper: units === 'imperial' ? 'letter' : 'a4' },
    areas: [{ id: 'main', name: w.firstRoom }],
    survey: {},
    options: [],
  };
  if (catalogue === OWN && !(await store.get('catalogue', OWN))) {
    const empty: CatalogueFile = { schema: 'slabwright.catalogue/1', id: OWN, products: [], systems: [] };
    const body = empty as unknown as Json;
    await store.put(
      { kind: 'catalogue', id: OWN, title: OWN, searchText: catalogueHeading.searchText(empty), updatedAt, body },
      0,
    );
  }
  const priceBook = (await store.get('price-book', catalogue)) ? catalogue : undefined;
  const document: JobDocument = { job, catalogue, ...(priceBook ? { priceBook } : {}) };
  const [heading, searchText] = [jobHeading.title(document), jobHeading.searchText(document)];
  await store.put({ kind: 'job', id, title: heading, searchText, updatedAt, body: document as unknown as Json }, 0);
  return id;
}

/** What a job needs before anybody can walk the floor: a name, a clock, a catalogue. */
export function NewJob() {
  const id = useId();
  const [, navigate] = useLocation();
  const [catalogues, setCatalogues] = useState<readonly Heading[]>([]);
  const [title, setTitle] = useState('');
  const [zone, setZone] = useState(Intl.DateTimeFormat().resolvedOptions().timeZone);
  const [units, setUnits] = useState<'imperial' | 'metric'>(navigator.language === 'en-US' ? 'imperial' : 'metric');
  // Nothing chosen yet: the newest catalogue, as soon as the device has said which that is.
  const [chosen, setCatalogue] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    document.title = `${w.title} · ${app.program}`;
    void cataloguesHere().then(({ headings }) => setCatalogues(headings));
  }, []);
  const catalogue = chosen ?? catalogues[0]?.id ?? OWN;
  const noTitle = title.trim() === '';
  const noZone = !isZone(zone);
  const start = async (): Promise<void> => {
    setAsked(true);
    if (noTitle || noZone) return;
    // Whoever is quicker than the device waits here; the press is not lost.
    const { store, headings } = await cataloguesHere();
    const catalogue = chosen ?? headings[0]?.id ?? OWN;
    navigate(`/job/${await begin(store, { title: title.trim(), zone, units, catalogue })}/survey/enter/floor`);
  };
  return (
    <main className="page pages">
      <header>
        <Wordmark />
        <Link className="press" href="/">
          {app.allJobs}
        </Link>
      </header>
      <section>
        <h1>{w.title}</h1>
        <form
          className="fields"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            void start();
          }}
        >
          <div className="field wide">
            <label htmlFor={`${id}-title`}>{w.name}</label>
            <input
              id={`${id}-title`}
              type="text"
              autoComplete="off"
              value={title}
              placeholder={w.nameExample}
              aria-invalid={asked && noTitle}
              aria-describedby={asked && noTitle ? `${id}-title-wrong` : undefined}
              onChange={(event) => setTitle(event.target.value)}
            />
            {asked && noTitle ? (
              <span className="wrong" role="alert" id={`${id}-title-wrong`}>
                {w.noName}
              </span>
            ) : null}
          </div>
          <div className="field">
            <label htmlFor={`${id}-zone`}>{w.zone}</label>
            <input
              id={`${id}-zone`}
              type="text"
              autoComplete="off"
              value={zone}
              aria-invalid={noZone}
              aria-describedby={`${id}-zone-note`}
              onChange={(event) => setZone(event.target.value)}
            />
            <small id={`${id}-zone-note`} className={noZone ? 'wrong' : 'quiet'}>
              {noZone ? w.noZone(zone) : w.zoneNote}
            </small>
          </div>
          <div className="field">
            <label htmlFor={`${id}-units`}>{w.units}</label>
            <select
              id={`${id}-units`}
              value={units}
              onChange={(event) => setUnits(event.target.value === 'metric' ? 'metric' : 'imperial')}
            >
              <option value="imperial">{app.units.imperial}</option>
              <option value="metric">{app.units.metric}</option>
            </select>
          </div>
          <div className="field wide">
            <label htmlFor={`${id}-catalogue`}>{w.catalogue}</label>
            <select id={`${id}-catalogue`} value={catalogue} onChange={(event) => setCatalogue(event.target.value)}>
              <option value={OWN}>{w.ownCatalogue}</option>
              {catalogues
                .filter(({ id }) => id !== OWN)
                .map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.id.startsWith('example-') ? w.example(one.title) : one.title}
                  </option>
                ))}
            </select>
          </div>
          <p className="field wide">
            <button type="submit" className="press main">
              {w.start}
            </button>
          </p>
        </form>
      </section>
    </main>
  );
}
