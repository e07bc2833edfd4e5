import { VerdictHead } from '../facts/verdict-block.tsx';
import { words } from '../words.ts';

/** A job nobody has chosen a system for yet. */
export function NoOption() {
  return (
    <VerdictHead word="not known">
      <p>{words.papers.noOption}</p>
    </VerdictHead>
  );
}
