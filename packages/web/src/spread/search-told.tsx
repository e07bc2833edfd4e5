import { usePlan } from '../job/job-context.tsx';
import { useProgress } from './progress.ts';
import { words } from './words.ts';

const w = words.search;

/** How far the search is that runs, and a press that stops it. */
function Running() {
  const { spreading } = usePlan();
  const told = useProgress();
  if (!told) return null;
  return (
    <div className="search-told">
      <label>
        {w.tried(told.name, told.done, told.of)}
        <progress value={told.done} max={told.of} />
      </label>
      <button type="button" className="press" onClick={spreading.stop}>
        {w.stop}
      </button>
    </div>
  );
}

/** While the pours shown are old: the search for the new ones; after one was stopped, what can be done. */
export function SearchTold({ planned }: { readonly planned: boolean }) {
  const { spreading } = usePlan();
  if (planned && !spreading.stale) return null;
  if (!spreading.stopped) return <Running />;
  return (
    <div className="search-told">
      <p>{planned ? w.stopped : w.stoppedEmpty}</p>
      <button type="button" className="press" onClick={() => spreading.look('short')}>
        {w.short}
      </button>
      <button type="button" className="press" onClick={spreading.again}>
        {w.again}
      </button>
    </div>
  );
}

/** A better order for who has half a minute. */
export function LookLonger() {
  const { spreading } = usePlan();
  const told = useProgress();
  if (told && !spreading.stale) return <Running />;
  return (
    <p className="own-presses">
      <button
        type="button"
        className="press"
        disabled={spreading.stale || spreading.trouble !== null}
        onClick={() => spreading.look('full')}
      >
        {w.longer}
      </button>
    </p>
  );
}
