import type { Coated } from '../schedule/coats.ts';
import type { DayWorked } from './index.ts';

/** Placed coats as the schedule lays them: start, last metre, and the moment the film bears what follows. */
export const coatsOfDay = ({ placed, phases }: DayWorked): readonly Coated[] =>
  phases.coats.map((phase, i): Coated => {
    const { candidate, next } = placed[i] ?? {};
    return {
      phase,
      ...(candidate ? { start: candidate.start, laid: candidate.laid } : {}),
      ...(next ? { opens: next.opens } : {}),
    };
  });
