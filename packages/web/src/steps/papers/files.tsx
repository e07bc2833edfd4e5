import { StoreError } from '@slabwright/store';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useJob } from '../../job/job-context.tsx';
import { saveJobFile, saveShare } from '../../keep/files.ts';
import { copyJob, removeJob } from '../../keep/job-files.ts';
import { words } from '../../words.ts';

/** The job itself as a file, a copy of it, or its removal, which the list of jobs undoes. */
export function JobFiles() {
  const { device, document, file, id, catalogue, priceBook, changeDocument } = useJob();
  const [, navigate] = useLocation();
  const [withPrices, setWithPrices] = useState(false);
  const [odd, setOdd] = useState<readonly string[]>([]);
  const [failed, setFailed] = useState<string | null>(null);
  const trying = async (act: () => Promise<void>): Promise<void> => {
    try {
      await act();
      setFailed(null);
    } catch (trouble) {
      if (!(trouble instanceof StoreError)) throw trouble;
      setFailed(trouble.message);
    }
  };
  const { store } = device;
  return (
    <section className="notes files">
      <h3>{words.list.thisJob}</h3>
      <p>{words.list.shareNote}</p>
      {priceBook ? (
        <label className="tick">
          <input type="checkbox" checked={withPrices} onChange={(event) => setWithPrices(event.target.checked)} />
          <span>{words.list.withPrices}</span>
        </label>
      ) : null}
      <div className="presses">
        <button
          type="button"
          className="press"
          onClick={() =>
            void trying(async () => {
              const prices = withPrices && priceBook ? priceBook.get().body : null;
              setOdd(await saveShare(store, id, document, catalogue.get().body, prices));
            })
          }
        >
          {words.list.share}
        </button>
        <button type="button" className="press" onClick={() => void trying(() => saveJobFile(store, id, file))}>
          {words.list.exportJob}
        </button>
        <button
          type="button"
          className="press"
          onClick={() => void trying(async () => navigate(`/job/${await copyJob(store, document)}/survey`))}
        >
          {words.list.duplicate}
        </button>
        {document.asOf ? (
          <button
            type="button"
            className="press"
            onClick={() =>
              changeDocument((draft) => {
                delete (draft as { asOf?: string }).asOf;
              })
            }
          >
            {words.asNow}
          </button>
        ) : null}
        <button
          type="button"
          className="press"
          onClick={() =>
            void trying(async () => {
              await removeJob(store, id);
              navigate('/');
            })
          }
        >
          {words.list.remove}
        </button>
      </div>
      <div role="status">
        {odd.length > 0 ? (
          <>
            <p>{words.list.shareOdd}</p>
            <ul className="said wrong">
              {odd.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          </>
        ) : null}
      </div>
      {failed ? (
        <p className="wrong" role="alert">
          {failed}
        </p>
      ) : null}
    </section>
  );
}
