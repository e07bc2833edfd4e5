import type { Said } from './said.ts';

/** A fact nobody has given yet: where it belongs, what it decides, and whether the plan may assume it meanwhile. */
export interface Missing {
  /** Path in the job, so that a screen can open the field. */
  readonly path: string;
  readonly fact: Said;
  readonly changes: Said;
  /** `assumed` goes on with a stated default; `held` lets no later step or paper say more than conditional. */
  readonly meanwhile: 'assumed' | 'held';
}
