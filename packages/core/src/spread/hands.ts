import type { Crew } from './types.ts';

/** Who does what, and what each task costs the front. */
export interface Hands {
  readonly spreaders: number;
  /** m²/min of all spreaders together. */
  readonly spreadM2PerMin: number;
  /** m/min of edge; Infinity when cutting in takes no time of its own. */
  readonly cutMPerMin: number;
  /** The spreaders cut in themselves, so it adds to their time instead of running beside it. */
  readonly cutBySpreaders: boolean;
  /** m²/min; Infinity when nothing is broadcast. */
  readonly broadcastM2PerMin: number;
  readonly broadcastBySpreaders: boolean;
}

/**
 * People with hands: whoever mixes, cuts in or broadcasts for the whole pour does not spread.
 * A crew that leaves nobody to spread gets spreaders = 0 (validation refuses it).
 */
export function handsOf(crew: Crew): Hands {
  const cutters = crew.cutters ?? 0;
  const broadcasters = crew.broadcasters ?? 0;
  const spreaders = Math.max(0, crew.people - (crew.dedicatedMixer ? 1 : 0) - cutters - broadcasters);
  const cutRate = crew.cutMPerMinPerPerson ?? Infinity;
  const broadcastRate = crew.broadcastM2PerMinPerPerson ?? Infinity;
  return {
    spreaders,
    spreadM2PerMin: spreaders * crew.rateM2PerMinPerPerson,
    cutMPerMin: cutRate * (cutters > 0 ? cutters : spreaders),
    cutBySpreaders: cutters === 0,
    broadcastM2PerMin: broadcastRate * (broadcasters > 0 ? broadcasters : spreaders),
    broadcastBySpreaders: broadcasters === 0,
  };
}

/** Minutes the front stands on a piece of floor of `area` m² with `edge` m to cut in. */
export function minutesOnPiece(hands: Hands, area: number, edge: number): number {
  const cut = edge / hands.cutMPerMin;
  const broadcast = area / hands.broadcastM2PerMin;
  const own =
    area / hands.spreadM2PerMin + (hands.cutBySpreaders ? cut : 0) + (hands.broadcastBySpreaders ? broadcast : 0);
  return Math.max(own, cut, broadcast);
}
