import type { StepBase } from '@slabwright/core';
import type { ReactNode } from 'react';
import { MissingFacts, Notes } from './missing.tsx';
import { Verdict, Watch, Ways } from './verdict-block.tsx';

interface FrameProps {
  readonly step: StepBase;
  /** The facts the verdict stands on, right under it. */
  readonly facts?: ReactNode;
  readonly children?: ReactNode;
}

/** The order every step keeps: verdict, its facts, what would lift it, what is missing, the rest, good to know. */
export function StepFrame({ step, facts, children }: FrameProps) {
  return (
    <>
      <Verdict verdict={step.verdict} />
      {facts}
      <Ways verdict={step.verdict} />
      <Watch verdict={step.verdict} />
      <MissingFacts step={step} />
      {children}
      <Notes step={step} />
    </>
  );
}
