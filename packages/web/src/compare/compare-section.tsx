import { lazy, Suspense, useState } from 'react';
import { words } from './words.ts';

const Panel = lazy(async () => ({ default: (await import('./panel.tsx')).ComparePanel }));

/** Opens the comparison under the system in hand; nothing is tried until somebody asks. */
export function CompareSection() {
  const [opened, open] = useState(false);
  return (
    <section className="compare-section">
      <button type="button" className="press" aria-expanded={opened} onClick={() => open(!opened)}>
        {opened ? words.shut : words.open}
      </button>
      {opened ? (
        <Suspense fallback={<div aria-busy="true" />}>
          <Panel />
        </Suspense>
      ) : null}
    </section>
  );
}
