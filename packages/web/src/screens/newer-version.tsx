import { useState } from 'react';
import { takeNewer, useProgramVersion } from '../keep/program-version.ts';
import { words } from '../words.ts';

/** A newer version is ready; it waits for a press, and covers nothing. */
export function NewerVersion() {
  const { newer } = useProgramVersion();
  const [later, setLater] = useState(false);
  if (!newer || later) return null;
  return (
    <section className="trouble" role="status">
      <p>{words.update.ready}</p>
      <button type="button" className="press main" onClick={() => void takeNewer()}>
        {words.update.now}
      </button>
      <button type="button" className="press" onClick={() => setLater(true)}>
        {words.update.later}
      </button>
    </section>
  );
}
