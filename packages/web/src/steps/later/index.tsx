import { VerdictHead } from '../../facts/verdict-block.tsx';
import { words } from '../../words.ts';
import { useStepInHand } from '../../working/working-link.tsx';
import type { Step, StepId } from '../step.ts';

type Later = 'spread' | 'site' | 'acceptance' | 'handover' | 'rates';

function LaterPanel() {
  const step = useStepInHand();
  return (
    <VerdictHead word="not yet">
      <p>{step in words.later ? words.later[step as Later] : null}</p>
    </VerdictHead>
  );
}

/** A step whose turn has not come: it says what will stand here and what it waits for. */
export function laterStep(id: Later & StepId, phase: Step['phase']): Step {
  return {
    id,
    title: words.steps[id],
    phase,
    verdict: () => 'not yet',
    answer: () => words.waits[id],
    Panel: LaterPanel,
  };
}
