import type { Answer, OptionPlan, Unanswered } from '@slabwright/core';

/** The one check of a plan's answers the screen makes itself, so that it need not load the core for it. */
export const answered = <T extends object>(answer: T | Unanswered): answer is T => !('unanswered' in answer);

export type { Answer, OptionPlan, Unanswered };
