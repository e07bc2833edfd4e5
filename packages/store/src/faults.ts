import type { Engine } from './engine.ts';
import { StoreFull } from './errors.ts';
import { withSteps } from './steps.ts';

/** Which step of a write fails, counted from 1 over the life of the wrapped engine. */
export interface FaultPlan {
  readonly failAt: number;
  /** `once`: that step only. `onwards`: that step and all after it, as on a disk that stays full. */
  readonly lasting: 'once' | 'onwards';
  /** What the failing step throws; by default StoreFull. */
  readonly failure?: () => Error;
}

/** A wrapped engine and how many steps it has taken. */
export interface FaultyEngine extends Engine {
  readonly steps: () => number;
}

/**
 * Wraps an engine so that step N of its writes fails. Steps are every row written, the commit before it happens, and
 * the answer after the commit has happened. Reads never fail: a full disk is still read.
 */
export function withFaults(engine: Engine, plan: FaultPlan): FaultyEngine {
  let count = 0;
  const stepped = withSteps(engine, () => {
    count++;
    const fails = plan.lasting === 'once' ? count === plan.failAt : count >= plan.failAt;
    if (fails) throw plan.failure?.() ?? new StoreFull(new Error(`planned failure at step ${count}`));
  });
  return { ...stepped, steps: () => count };
}
