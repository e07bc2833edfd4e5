import type { Coated } from '../schedule/coats.ts';
import type { DayWorked } from './index.ts';

/** Placed coats as the schedule lays them: start, last metre, and the moment the film bears what follows. */
export const coatsOfDay = ({ placed, phases }: DayWorked): readonly Coated[] =>
  phases.coats.map((phase, i): Coated => {
    const { candidate, next } = placed[i] ?? {};
    const following = placed[i + 1]?.candidate?.start;
    // A coat chosen before the slow side of the window is over leaves the middle to scrape in.
    const tight = next !== undefined && following !== undefined && following < next.ready;
    return {
      phase,
      ...(candidate ? { start: candidate.start, laid: candidate.laid } : {}),
      ...(next ? { opens: tight ? next.opensMiddle : next.opens } : {}),
    };
  });
