import type { ComponentType } from 'react';
import type { FloorLayer } from '../floor/floor.tsx';
import type { StepVerdict } from '../marks/verdict-mark.tsx';
import type { StepView } from './step-view.tsx';

export const STEP_IDS = [
  'survey',
  'preparation',
  'system',
  'quantities',
  'hours',
  'spread',
  'price',
  'papers',
  'site',
  'acceptance',
  'handover',
  'rates',
] as const;
export type StepId = (typeof STEP_IDS)[number];

/** One step of the job as the screen shows it. A new screen is a new record in the registry. */
export interface Step {
  readonly id: StepId;
  readonly title: string;
  /** Desk work, or work on the finished plan. */
  readonly phase: 'desk' | 'site';
  verdict(view: StepView): StepVerdict;
  /** The step's answer in a few words, for the list that is the job on one page. */
  answer(view: StepView): string;
  /** The facts of the step. It is drawn inside the job, so `useStep`, `useJob` and `useVoice` work in it. */
  readonly Panel: ComponentType;
  /** What the step draws on the floor. */
  floor?(view: StepView): FloorLayer;
}
