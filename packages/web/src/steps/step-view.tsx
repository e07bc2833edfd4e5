import type { JobFile } from '@slabwright/core';
import { useMemo } from 'react';
import { usePlan } from '../job/job-context.tsx';
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
  /** The job file this plan was made from; what is being typed is `useJob().file`. */
  readonly file: JobFile;
  readonly area: AreaDrawing | null;
}

/** Null until the first plan is there. The same view as long as the plan is the same. */
export function useStepView(areaId?: string | null): StepView | null {
  const { planned, voice, optionId, planFile: file } = usePlan();
  return useMemo(() => {
    if (!planned || !voice || !file) return null;
    const option = planned.plan.options.find(({ id }) => id === optionId);
    const area = planned.areas.find(({ id }) => id === areaId) ?? planned.areas[0] ?? null;
    return { plan: planned.plan, planned, voice, file, area, ...(option ? { option } : {}) };
  }, [planned, voice, optionId, file, areaId]);
}

/** For panels, which are only drawn when a plan is there. */
export function useStep(): StepView {
  const view = useStepView();
  if (!view) throw new Error('useStep before the first plan');
  return view;
}

export { answered };
