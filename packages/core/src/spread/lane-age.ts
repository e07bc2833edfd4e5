/**
 * Ages of a plain front swept in lanes: width `widthM` of the front (the length of one lane), depth `laneM` of a lane,
 * rate `rateM2PerMin` of the whole front, walking `walkMPerMin` back to the start of the next lane. All positive.
 *
 * Derived in two lines from the sweep itself (own arithmetic): a lane takes width·lane/rate; from the same side each
 * square waits exactly one lane and one walk for its neighbour; to and fro the far end waits for two lanes and the turn
 * for none.
 */
export interface Front {
  readonly widthM: number;
  readonly laneM: number;
  readonly rateM2PerMin: number;
  readonly walkMPerMin: number;
}

/** Largest age, min, when every lane starts from the same side. */
export const sameSideAge = ({ widthM, laneM, rateM2PerMin, walkMPerMin }: Front): number =>
  (widthM * laneM) / rateM2PerMin + widthM / walkMPerMin;

/** Largest age, min, when lanes go to and fro: at the far end; at the turn it is nothing. */
export const toAndFroAge = ({ widthM, laneM, rateM2PerMin }: Front): number => (2 * widthM * laneM) / rateM2PerMin;

/** Widest front, m, from the same side, for an open time `openMin` kept with the reserve `reserve` (1 = none). */
export const widestSameSide = (front: Omit<Front, 'widthM'>, openMin: number, reserve: number): number =>
  openMin / (reserve * (front.laneM / front.rateM2PerMin + 1 / front.walkMPerMin));

/** Widest front, m, to and fro. */
export const widestToAndFro = (
  front: Omit<Front, 'widthM' | 'walkMPerMin'>,
  openMin: number,
  reserve: number,
): number => (openMin * front.rateM2PerMin) / (2 * reserve * front.laneM);
