import type { VerdictWord } from '../../kernel/verdict.ts';
import type { CoatToPlace, WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';
import { inOrder, organisationReasons, type WindowReason } from './reasons.ts';
import { physicsOn, type StartPhysics } from './start-physics.ts';

export interface Candidate extends Omit<StartPhysics, 'reasons'> {
  /** ms since 1970 */
  readonly start: number;
  readonly word: VerdictWord;
  /** The one reason that limits most, absent for a go; the others follow it. */
  readonly limiting?: WindowReason;
  readonly others: readonly WindowReason[];
}

/** Judges one start of one coat over its whole open and sensitive time. */
export const judgeStart = (
  conditions: Conditions,
  coat: CoatToPlace,
  hours: readonly WorkingHours[],
  start: number,
): Candidate => judged(physicsOn(conditions, coat)(start), coat, hours, start);

/** The same for many starts of one coat. */
export const judgeOf = (
  conditions: Conditions,
  coat: CoatToPlace,
  hours: readonly WorkingHours[],
): ((start: number) => Candidate) => {
  const physics = physicsOn(conditions, coat);
  return (start) => judged(physics(start), coat, hours, start);
};

/** What the crew and the coat below say beside what the hours say. */
function judged(physics: StartPhysics, coat: CoatToPlace, hours: readonly WorkingHours[], start: number): Candidate {
  const { margin, marginP10, rise, laid, sensitiveUntil } = physics;
  const asked = organisationReasons(coat, hours, start, laid);
  const reasons = asked.length === 0 ? physics.reasons : inOrder([...physics.reasons, ...asked]);
  const [limiting] = reasons;
  const others = reasons.length < 2 ? NONE : reasons.slice(1);
  const rest = { start, others, margin, marginP10, rise, laid, sensitiveUntil };
  return limiting ? { ...rest, word: limiting.verdict, limiting } : { ...rest, word: 'go' };
}

const NONE: readonly WindowReason[] = [];
