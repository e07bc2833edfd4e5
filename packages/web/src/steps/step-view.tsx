import type { JobFile } from '@slabwright/core';
import { useJob } from '../job/job-context.tsx';
import type { ViewVoice } from '../job/voice.ts';
import type { AreaDrawing, LeanPlan, Planned } from '../worker/api.ts';
import { answered, type OptionPlan } from '../worker/plan-types.ts';

/** What a step shows: the plan as it stands, the option looked at, and the words for both. */
export interface StepView {
  readonly plan: LeanPlan;
  readonly planned: Planned;
  /** Absent while nobody has chosen a system. */
  readonly option?: OptionPlan;
  readonly voice: ViewVoice;
  readonly file: JobFile;
  readonly area: AreaDrawing | null;
}

/** Null until the first plan is there. */
export function useStepView(areaId?: string | null): StepView | null {
  const { planned, voice, optionId, file } = useJob();
  if (!planned || !voice) return null;
  const option = planned.plan.options.find(({ id }) => id === optionId);
  const area = planned.areas.find(({ id }) => id === areaId) ?? planned.areas[0] ?? null;
  return { plan: planned.plan, planned, voice, file, area, ...(option ? { option } : {}) };
}

/** For panels, which are only drawn when a plan is there. */
export function useStep(): StepView {
  const view = useStepView();
  if (!view) throw new Error('useStep before the first plan');
  return view;
}

export { answered };
