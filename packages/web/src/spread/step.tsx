import { lazy, Suspense } from 'react';
import type { Step } from '../steps/step.ts';
import { words as shared } from '../words.ts';
import { answered } from '../worker/plan-types.ts';
import { coatsOf } from './coats.ts';
import { spreadLayer } from './floor-layer.tsx';
import { words } from './words.ts';

const Panel = lazy(async () => ({ default: (await import('./panel.tsx')).SpreadPanel }));

/** Loaded when the step is first opened. */
function SpreadPanel() {
  return (
    <Suspense fallback={<div aria-busy="true" />}>
      <Panel />
    </Suspense>
  );
}

export const spread: Step = {
  id: 'spread',
  title: shared.steps.spread,
  phase: 'desk',
  verdict: ({ option }) => option?.spread?.verdict.word ?? 'not yet',
  answer(view) {
    const { option } = view;
    if (!option?.spread) return option ? words.working : shared.verdict['not known'];
    if (!answered(option.spread)) return shared.verdict[option.spread.verdict.word];
    const counts = coatsOf(view).map(({ pours }) => pours.length);
    return counts.some((count) => count > 0) ? words.answer(counts) : shared.verdict[option.spread.verdict.word];
  },
  Panel: SpreadPanel,
  floor: spreadLayer,
};
