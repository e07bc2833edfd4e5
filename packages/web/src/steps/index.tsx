import { spread } from '../spread/step.tsx';
import { hours } from './hours/index.tsx';
import { laterStep } from './later/index.tsx';
import { papers } from './papers/index.tsx';
import { preparation } from './preparation/index.tsx';
import { price } from './price/index.tsx';
import { quantities } from './quantities/index.tsx';
import type { Step, StepId } from './step.ts';
import { survey } from './survey/index.tsx';
import { system } from './system/index.tsx';

/** The steps of a job in the trade's own order. A screen for a step that says "not yet" replaces its line here. */
export const STEPS: readonly Step[] = [
  survey,
  preparation,
  system,
  quantities,
  hours,
  spread,
  price,
  papers,
  laterStep('site', 'site'),
  laterStep('acceptance', 'site'),
  laterStep('handover', 'site'),
  laterStep('rates', 'site'),
];

export const stepOf = (id: string | undefined): Step => STEPS.find((step) => step.id === id) ?? (STEPS[0] as Step);

export const numberOf = (id: StepId): number => STEPS.findIndex((step) => step.id === id) + 1;
