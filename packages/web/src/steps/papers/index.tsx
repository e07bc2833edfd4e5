import { lazy, Suspense } from 'react';
import type { FloorLayer } from '../../floor/floor.tsx';
import { words } from '../../words.ts';
import type { Step } from '../step.ts';
import { foundLabels } from '../survey/index.tsx';

const PapersPanel = lazy(() => import('./panel.tsx').then(({ PapersPanel: panel }) => ({ default: panel })));

/** Papers stand at "not yet" until somebody issues one; whether they may be issued is said in the panel. */
export const papers: Step = {
  id: 'papers',
  title: words.steps.papers,
  phase: 'desk',
  verdict: () => 'not yet',
  answer: ({ option }) => (option ? words.waits.papersReady : words.waits.papersNone),
  Panel: () => (
    <Suspense fallback={null}>
      <PapersPanel />
    </Suspense>
  ),
  floor: (view): FloorLayer => ({ title: words.survey.area, labels: foundLabels(view) }),
};
