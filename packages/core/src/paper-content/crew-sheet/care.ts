import type { Reason } from '../../kernel/verdict.ts';
import { said, withLift } from '../context.ts';
import type { Block } from '../paper.ts';

/** What asks for care on this page, each with the way that would lift it. */
export function careOf(reasons: readonly Reason[]): readonly Block[] {
  const careful = reasons.filter(({ verdict }) => verdict === 'caution');
  if (careful.length === 0) return [];
  return [{ kind: 'verdict', word: 'caution', title: said('crew-with-care'), lines: careful.flatMap(withLift) }];
}

/** On the front only the call to turn the sheet: the sentences themselves would push the batches off the page. */
export const careful = (reasons: readonly Reason[]): 'yes' | 'no' =>
  reasons.some(({ verdict }) => verdict === 'caution') ? 'yes' : 'no';
