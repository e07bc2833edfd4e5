import { useEffect, useState } from 'react';
import { VerdictHead } from '../../facts/verdict-block.tsx';
import { useJob, usePlan } from '../../job/job-context.tsx';
import type { Language, PaperSize, PaperView } from '../../papers/api.ts';
import { type PapersClient, PapersStopped } from '../../papers/client.ts';
import { type Papers, usePapers } from '../../papers/use-papers.ts';
import { words } from '../../words.ts';
import { NoOption } from '../no-option.tsx';
import { useStep } from '../step-view.tsx';
import { JobFiles } from './files.tsx';

const w = words.papers;

/** The papers of the option looked at: made on this device, to look at and to download. */
export function PapersPanel() {
  const { option, file } = useStep();
  const { stale } = useJob();
  const [language, setLanguage] = useState<Language>('en');
  const [size, setSize] = useState<PaperSize>(file.reader.paper);
  const papers = usePapers(option?.id, language);
  if (!option) {
    return (
      <>
        <NoOption />
        <JobFiles />
      </>
    );
  }
  return (
    <>
      <VerdictHead word="not yet">
        <p>{w.intro}</p>
        {stale ? <p>{w.stale}</p> : null}
      </VerdictHead>
      <div className="choices">
        <label>
          {w.language}
          <select value={language} onChange={(event) => setLanguage(event.target.value === 'es' ? 'es' : 'en')}>
            <option value="en">{w.en}</option>
            <option value="es">{w.es}</option>
          </select>
        </label>
        <label>
          {w.size}
          <select value={size} onChange={(event) => setSize(event.target.value === 'a4' ? 'a4' : 'letter')}>
            <option value="letter">{w.letter}</option>
            <option value="a4">{w.a4}</option>
          </select>
        </label>
      </div>
      <Making papers={papers} />
      {papers.state.is === 'ready' ? (
        <ul className="papers">
          {papers.state.papers.map((paper) => (
            <PaperRow
              key={`${paper.kind}-${language}-${size}`}
              paper={paper}
              client={papers.client}
              language={language}
              size={size}
            />
          ))}
        </ul>
      ) : null}
      <JobFiles />
    </>
  );
}

/** What the papers wait for: the search for the pours shows how far it is and can be stopped. */
function Making({ papers }: { readonly papers: Papers }) {
  const { state, stop, again } = papers;
  if (state.is === 'ready') return null;
  return (
    <div className="making">
      {state.is === 'planning' ? (
        <>
          <p role="status">{w.planning(state.coats)}</p>
          <button type="button" className="press" onClick={stop}>
            {w.stop}
          </button>
        </>
      ) : state.is === 'waits' ? (
        <p role="status">{w.waits}</p>
      ) : (
        <>
          {state.is === 'stopped' ? (
            <p role="status">{w.stopped}</p>
          ) : (
            <p className="wrong" role="alert">
              {w.failed} <small>{state.why}</small>
            </p>
          )}
          <button type="button" className="press" onClick={again}>
            {w.again}
          </button>
        </>
      )}
    </div>
  );
}

interface RowProps {
  readonly paper: PaperView;
  readonly client: PapersClient;
  readonly language: Language;
  readonly size: PaperSize;
}

function PaperRow({ paper, client, language, size }: RowProps) {
  const { id, planned } = usePlan();
  const [address, setAddress] = useState<string | null>(null);
  const [making, setMaking] = useState(false);
  const [failed, setFailed] = useState<string | null>(null);
  const name = w.kinds[paper.kind] ?? paper.kind;
  // A new plan makes the paper shown an old one.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the plan is what puts the old paper away
  useEffect(() => setAddress(null), [planned]);
  useEffect(
    () => () => {
      if (address) URL.revokeObjectURL(address);
    },
    [address],
  );
  const make = async (): Promise<string | null> => {
    if (address) return address;
    setMaking(true);
    try {
      const bytes = await client.pdf(paper.kind, language, size);
      const made = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/pdf' }));
      setFailed(null);
      return made;
    } catch (cause) {
      if (!(cause instanceof PapersStopped)) setFailed(String(cause));
      return null;
    } finally {
      setMaking(false);
    }
  };
  const look = async (): Promise<void> => setAddress(address ? null : await make());
  const download = async (): Promise<void> => {
    const made = await make();
    if (!made) return;
    const link = document.createElement('a');
    link.href = made;
    link.download = `${id}-${paper.kind}.pdf`;
    link.click();
    if (made !== address) setTimeout(() => URL.revokeObjectURL(made), 60_000);
  };
  if (!paper.ok) {
    return (
      <li>
        <b>{name}</b> {w.notIssued}
        {paper.why.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </li>
    );
  }
  return (
    <li>
      <div className="paper">
        <span>
          <b>{name}</b>
          <small>{making ? w.making : paper.title}</small>
        </span>
        <button type="button" className="press" disabled={making} onClick={() => void look()}>
          {address ? w.hide : w.preview}
          <span className="unseen"> {name}</span>
        </button>
        <button type="button" className="press" disabled={making} onClick={() => void download()}>
          {w.download}
          <span className="unseen"> {name}</span>
        </button>
      </div>
      {failed ? (
        <p className="wrong" role="alert">
          {w.failed} <small>{failed}</small>
        </p>
      ) : null}
      {address ? (
        <>
          <iframe className="preview" src={address} title={`${w.embedded}: ${name}`} />
          <a className="press" href={address} target="_blank" rel="noreferrer">
            {w.alone}
            <span className="unseen"> {name}</span>
          </a>
        </>
      ) : null}
    </li>
  );
}
