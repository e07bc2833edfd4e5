import type { VerdictWord } from '../../kernel/verdict.ts';
import type { CoatToPlace, WorkingHours } from './coat.ts';
import type { Conditions } from './conditions.ts';
import { inOrder, organisationReasons, type WindowReason, worstOf } from './reasons.ts';
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
const judged = (physics: StartPhysics, coat: CoatToPlace, hours: readonly WorkingHours[], start: number): Candidate =>
  new Judged(physics, organisationReasons(coat, hours, start, physics.laid), start);

/** Of a thousand starts one is chosen: only there the reasons after the first are put in order. */
class Judged implements Candidate {
  readonly start: number;
  readonly word: VerdictWord;
  declare readonly limiting?: WindowReason;
  readonly margin: number;
  readonly marginP10: number;
  readonly rise: number;
  readonly laid: number;
  readonly sensitiveUntil: number;
  readonly #reasons: readonly WindowReason[];
  readonly #asked: readonly WindowReason[];

  constructor(physics: StartPhysics, asked: readonly WindowReason[], start: number) {
    const { reasons, margin, marginP10, rise, laid, sensitiveUntil } = physics;
    const limiting = asked.length === 0 ? reasons[0] : worstOf(reasons, asked);
    this.start = start;
    this.word = limiting ? limiting.verdict : 'go';
    if (limiting) this.limiting = limiting;
    this.margin = margin;
    this.marginP10 = marginP10;
    this.rise = rise;
    this.laid = laid;
    this.sensitiveUntil = sensitiveUntil;
    this.#reasons = reasons;
    this.#asked = asked;
  }

  get others(): readonly WindowReason[] {
    return (this.#asked.length === 0 ? this.#reasons : inOrder([...this.#reasons, ...this.#asked])).slice(1);
  }
}
