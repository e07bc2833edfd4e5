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

function judged(physics: StartPhysics, coat: CoatToPlace, hours: readonly WorkingHours[], start: number): Candidate {
  const { reasons, margin, marginP10, rise, laid, sensitiveUntil } = physics;
  const [limiting, ...others] = inOrder([...reasons, ...organisationReasons(coat, hours, start, laid)]);
  return {
    start,
    word: limiting?.verdict ?? 'go',
    ...(limiting === undefined ? {} : { limiting }),
    others,
    margin,
    marginP10,
    rise,
    laid,
    sensitiveUntil,
  };
}
