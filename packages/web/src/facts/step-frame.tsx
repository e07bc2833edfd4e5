import type { StepBase } from '@slabwright/core';
import type { ReactNode } from 'react';
import { MissingFacts, Notes } from './missing.tsx';
import { VerdictBlock } from './verdict-block.tsx';

/** The order every step keeps: verdict, what would lift it, facts, what is missing, what is good to know. */
export function StepFrame({ step, children }: { readonly step: StepBase; readonly children?: ReactNode }) {
  return (
    <>
      <VerdictBlock verdict={step.verdict} />
      {children}
      <MissingFacts step={step} />
      <Notes step={step} />
    </>
  );
}
