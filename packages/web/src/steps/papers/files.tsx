import { StoreError } from '@slabwright/store';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { useJob } from '../../job/job-context.tsx';
import { saveJobFile } from '../../keep/files.ts';
import { copyJob, removeJob } from '../../keep/job-files.ts';
import { words } from '../../words.ts';

/** The job itself as a file, a copy of it, or its removal, which the list of jobs undoes. */
export function JobFiles() {
  const { device, document, file, id, changeDocument } = useJob();
  const [, navigate] = useLocation();
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
      <div className="presses">
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
      {failed ? (
        <p className="wrong" role="alert">
          {failed}
        </p>
      ) : null}
    </section>
  );
}
