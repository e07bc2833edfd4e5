import type { CatalogueFile, PriceBookFile } from '@slabwright/core';
import type { Store, StoredDocument } from '@slabwright/store';
import { useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import { Link } from 'wouter';
import { device } from '../keep/device.ts';
import { catalogueHeading, priceBookHeading } from '../keep/documents.ts';
import { hand } from '../keep/hand.ts';
import { type HeadingOf, LiveDocument } from '../keep/live-document.ts';
import { Wordmark } from '../screens/header.tsx';
import { words as app } from '../words.ts';
import type { IssueShown } from '../worker/api.ts';
import { planWorker } from '../worker/client.ts';
import { CATALOGUE_SECTIONS } from './catalogue-sections.ts';
import { csvOf, fromCsv } from './csv.ts';
import { fileWords as w } from './file-words.ts';
import { Form } from './form.tsx';
import { type FormTarget, FormTargetProvider } from './form-target.tsx';
import type { Raw } from './path.ts';
import { PRICE_SECTIONS } from './price-sections.ts';
import type { Section } from './spec.ts';
import { words } from './words.ts';
import './edit.css';

type Kind = 'catalogue' | 'price-book';

interface Opened {
  readonly live: LiveDocument<Raw>;
  readonly beside: Raw;
}

/** Opens a stored file to be edited; `undefined` while it opens, null when it is not here. */
function useFile(kind: Kind, id: string, goods: string): Opened | null | undefined {
  const [opened, setOpened] = useState<Opened | null | undefined>(undefined);
  useEffect(() => {
    let left = false;
    let close = (): void => undefined;
    const open = async (): Promise<void> => {
      const { store } = await device();
      const stored = await store.get(kind, id);
      if (left) return;
      if (!stored || stored.removed) {
        setOpened(null);
        return;
      }
      const beside = kind === 'price-book' ? await besideOf(store, goods) : {};
      const body = kind === 'catalogue' ? await planWorker().broughtUp(stored.body) : stored.body;
      if (left) return;
      const live = new LiveDocument<Raw>(store, { ...stored, body } as StoredDocument, headingOf(kind));
      close = () => live.close();
      if (!left) setOpened({ live, beside });
    };
    void open();
    return () => {
      left = true;
      close();
    };
  }, [kind, id, goods]);
  return opened;
}

/** The catalogue whose packs a price book prices. */
const besideOf = async (store: Store, id: string): Promise<Raw> => (await store.get('catalogue', id))?.body ?? {};

const headingOf = (kind: Kind): HeadingOf<Raw> =>
  kind === 'catalogue'
    ? {
        title: (body) => catalogueHeading.title(body as CatalogueFile),
        searchText: (body) => catalogueHeading.searchText(body as CatalogueFile),
      }
    : {
        title: (body) => priceBookHeading.title(body as PriceBookFile),
        searchText: (body) => priceBookHeading.searchText(body as PriceBookFile),
      };

export function CataloguePage({ id, part }: { readonly id: string; readonly part: string | undefined }) {
  const section = CATALOGUE_SECTIONS.find((one) => one.id === part) ?? CATALOGUE_SECTIONS[0];
  return (
    <FilePage kind="catalogue" id={id} title={w.catalogue} sections={CATALOGUE_SECTIONS} section={section as Section} />
  );
}

/** Without a job it goes with the catalogue of its name. */
export function PricesPage({ id, catalogue = id }: { readonly id: string; readonly catalogue?: string }) {
  return (
    <FilePage
      kind="price-book"
      id={id}
      goods={catalogue}
      title={w.prices}
      sections={PRICE_SECTIONS}
      section={PRICE_SECTIONS[0] as Section}
    />
  );
}

interface FilePageProps {
  readonly kind: Kind;
  readonly id: string;
  /** The catalogue a price book is edited beside. */
  readonly goods?: string;
  readonly title: string;
  readonly sections: readonly Section[];
  readonly section: Section;
}

function FilePage(props: FilePageProps) {
  const { kind, id, title, goods = id } = props;
  const opened = useFile(kind, id, goods);
  useEffect(() => {
    document.title = `${title} ${id} · ${app.program}`;
  }, [title, id]);
  return (
    <main className="page pages">
      <header>
        <Wordmark />
        <button type="button" className="press" onClick={() => history.back()}>
          {app.back}
        </button>
      </header>
      {opened === null ? (
        <section>
          <h1>{title}</h1>
          <p>{w.absent}</p>
        </section>
      ) : opened ? (
        <Editing {...props} {...opened} />
      ) : (
        <section aria-busy="true" />
      )}
    </main>
  );
}

function Editing({ kind, id, title, sections, section, live, beside }: FilePageProps & Opened) {
  const state = useSyncExternalStore(live.subscribe, live.get);
  const [issues, setIssues] = useState<readonly IssueShown[]>([]);
  useEffect(() => {
    let left = false;
    void planWorker()
      .issues(kind, state.body)
      .then((found) => {
        if (!left) setIssues(found);
      });
    return () => {
      left = true;
    };
  }, [kind, state.body]);
  const target = useMemo<FormTarget>(
    () => ({ root: state.body, beside, change: (edit, field) => live.change(edit, field), issues, zone: null }),
    [state.body, beside, live, issues],
  );
  return (
    <FormTargetProvider value={target}>
      <section>
        <div className="entering-head">
          <h1>{title}</h1>
          <span className="acts">
            <button type="button" onClick={() => live.undo()} disabled={!state.canUndo}>
              {app.undo}
            </button>
            <button type="button" onClick={() => live.redo()} disabled={!state.canRedo}>
              {app.redo}
            </button>
          </span>
        </div>
        <p className="quiet">
          {id}, {w.kept[state.keeping]}. {w.jobs}
        </p>
        {state.trouble ? (
          <p className="wrong" role="alert">
            {state.trouble}
          </p>
        ) : null}
        {state.theirs ? (
          <p className="wrong" role="alert">
            {app.kept.theirs(state.theirs.updatedAt.slice(0, 16))}{' '}
            <button type="button" className="press" onClick={() => live.takeTheirs()}>
              {app.kept.takeTheirs}
            </button>
            <button type="button" className="press" onClick={() => live.keepMine()}>
              {app.kept.keepMine}
            </button>
          </p>
        ) : null}
        {sections.length > 1 ? (
          <nav className="parts" aria-label={w.parts}>
            <ul>
              {sections.map((one) => (
                <li key={one.id}>
                  <Link href={`/catalogue/${id}/${one.id}`} aria-current={one.id === section.id ? 'page' : undefined}>
                    {one.title}
                  </Link>
                </li>
              ))}
            </ul>
          </nav>
        ) : null}
        <div role="status">
          {issues.length > 0 ? (
            <div className="waits">
              <p>
                <b>{words.wrong(issues.length)}.</b> {words.wrongNote}
              </p>
              <ul>
                {issues.slice(0, 5).map(({ path, text }) => (
                  <li key={`${path.join('.')}-${text}`}>{text}</li>
                ))}
              </ul>
            </div>
          ) : null}
        </div>
        <h2>{section.title}</h2>
        {section.note ? <p className="quiet">{section.note}</p> : null}
        <Form key={section.id} parts={section.parts} />
      </section>
      <InAndOut id={id} kind={kind} sections={sections} live={live} />
    </FormTargetProvider>
  );
}

/** Out as the published file or as a table, in from a table. A file of the published format comes in at the list of jobs. */
function InAndOut({
  id,
  kind,
  sections,
  live,
}: Pick<FilePageProps, 'id' | 'kind' | 'sections'> & Pick<Opened, 'live'>) {
  const [said, setSaid] = useState<{ readonly ok: boolean; readonly text: string } | null>(null);
  const chosen = useRef<HTMLInputElement>(null);
  const read = async (file: File): Promise<void> => {
    const found = fromCsv(await file.text(), live.get().body, sections);
    if (found.ok) {
      const next = found.file as Record<string, unknown>;
      live.change((draft) => Object.assign(draft as Record<string, unknown>, next));
      setSaid({ ok: true, text: w.read(found.items) });
    } else {
      setSaid({
        ok: false,
        text: found.why === 'no columns' ? w.noColumns(found.detail) : w.broken(found.line, found.detail),
      });
    }
  };
  return (
    <section className="keeping">
      <p className="quiet">{w.openTableNote}</p>
      <div className="presses">
        <button
          type="button"
          className="press"
          onClick={() =>
            hand(`${JSON.stringify(live.get().body, null, 2)}\n`, `${id}.${kind}.json`, 'application/json')
          }
        >
          {w.saveJson}
        </button>
        <button
          type="button"
          className="press"
          onClick={() => hand(`\uFEFF${csvOf(live.get().body)}\r\n`, `${id}.${kind}.csv`, 'text/csv')}
        >
          {w.saveCsv}
        </button>
        <button type="button" className="press" onClick={() => chosen.current?.click()}>
          {w.openTable}
        </button>
        <input
          ref={chosen}
          className="unseen"
          type="file"
          accept=".csv,text/csv"
          tabIndex={-1}
          aria-label={w.openTable}
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            event.target.value = '';
            if (file) void read(file);
          }}
        />
      </div>
      <p role="status" className={said?.ok === false ? 'wrong' : ''}>
        {said?.text}
      </p>
    </section>
  );
}
