import { VerdictHead } from '../../facts/verdict-block.tsx';
import { words } from '../../words.ts';
import type { Step, StepId } from '../step.ts';

type Later = 'spread' | 'site' | 'acceptance' | 'handover' | 'rates';

/** A step whose turn has not come: it says what will stand here and what it waits for. */
export function laterStep(id: Later & StepId, phase: Step['phase']): Step {
  return {
    id,
    title: words.steps[id],
    phase,
    verdict: () => 'not yet',
    answer: () => words.waits[id],
    Panel: () => (
      <VerdictHead word="not yet">
        <p>{words.later[id]}</p>
      </VerdictHead>
    ),
  };
}
