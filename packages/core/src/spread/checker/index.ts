export { checkSequence, type SequenceReport, type SpreadBreak } from './check-sequence.ts';
