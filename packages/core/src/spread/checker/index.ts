export type { SpreadBreak } from './break.ts';
export { checkSequence, type SequenceReport } from './check-sequence.ts';
