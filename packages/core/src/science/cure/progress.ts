import { type CureLaw, logTimeAt } from './law.ts';

/** Temperature of the film over time: the slab's, on equal marks. */
export interface FilmHistory {
  /** ms since 1970 of the first mark */
  readonly from: number;
  /** s between marks */
  readonly spacing: number;
  /** °C */
  readonly temperature: ArrayLike<number>;
  /** K, standard deviation at each mark */
  readonly deviation: ArrayLike<number>;
}

/** One way of reading the uncertain history and law. */
interface Reading {
  /** Standard deviations by which the film is warmer. */
  readonly warmer: number;
  readonly energyMove: number;
  /** Standard deviations of ln time by which the sheet's times are longer. */
  readonly longer: number;
  /** What counts where the law does not speak: the `slow` reading stops there, the `quick` one goes on at the edge. */
  readonly outside: 'slow' | 'quick' | 'edge';
}

export interface Reached {
  /** ms since 1970 */
  readonly at: number;
  /** Share of the time up to it during which the law did not speak. */
  readonly outsideShare: number;
  /** True when it lies beyond the history, where the mean of its last day was taken. */
  readonly beyond: boolean;
}

/** Nothing on a resin sheet takes longer than this, s. */
const LONGEST = 90 * 86400;
const DAY = 86400;

/** Instant at which the cure that began at `start` is complete: Σ Δt / time(T) = 1. */
const reach = (law: CureLaw, history: FilmHistory, start: number, how: Reading): Reached | undefined => {
  const { spacing, temperature, deviation } = history;
  const count = temperature.length;
  const scale = Math.exp(how.longer * law.centreDeviation);
  const lastDay = Math.min(count, Math.max(1, Math.round(DAY / spacing)));
  let later = 0;
  for (let i = count - lastDay; i < count; i++) later += (temperature[i] as number) / lastDay;
  const laterDeviation = (deviation[count - 1] as number) + LATER_DEVIATION;

  const x = (start - history.from) / 1000 / spacing;
  let mark = Math.floor(x);
  let passedInMark = (x - mark) * spacing;
  let progress = 0;
  let elapsed = 0;
  let outside = 0;
  while (elapsed < LONGEST) {
    const seconds = spacing - passedInMark;
    passedInMark = 0;
    const beyond = mark >= count - 1;
    // The film between two marks has the mean of the two.
    const here = beyond
      ? later
      : ((temperature[Math.max(0, mark)] as number) + (temperature[Math.max(0, mark) + 1] as number)) / 2;
    const spread = beyond ? laterDeviation : (deviation[Math.max(0, mark)] as number);
    const warm = here + how.warmer * spread;
    const speaks = warm >= law.range[0] && warm <= law.range[1];
    const used = Math.min(law.range[1], Math.max(law.range[0], warm));
    const stalled = !speaks && warm < law.range[0] && how.outside === 'slow';
    const extrapolates = !speaks && warm > law.range[1] && how.outside === 'quick';
    const rate = stalled ? 0 : Math.exp(-logTimeAt(law, extrapolates ? warm : used, how.energyMove)) / scale;
    const gained = rate * seconds;
    if (!speaks) outside += seconds;
    if (progress + gained >= 1) {
      const needed = (1 - progress) / rate;
      elapsed += needed;
      if (!speaks) outside -= seconds - needed;
      return { at: start + elapsed * 1000, outsideShare: elapsed > 0 ? Math.min(1, outside / elapsed) : 0, beyond };
    }
    progress += gained;
    elapsed += seconds;
    mark++;
  }
  return undefined;
};

/** Added to the deviation beyond the end of the weather, K: what the days after a forecast are known to. */
const LATER_DEVIATION = 3;

export interface Milestone {
  /** ms since 1970; P10 and P90 around it. `high` is absent when the slow reading never gets there. */
  readonly at: number;
  readonly low: number;
  readonly high?: number;
  readonly cautions: readonly string[];
}

const Z90 = 1.2815515655446004;

/**
 * When a film laid at `start` reaches a milestone, with its band, or undefined when it never does.
 *
 * The band joins the temperature's deviation (a whole history warmer or colder), the energy's and the sheet's, each
 * side of the centre for itself: cold nights stretch the long side more than warm ones shorten the short side.
 */
export const milestoneAt = (law: CureLaw, history: FilmHistory, start: number): Milestone | undefined => {
  if (history.temperature.length < 2) return undefined;
  const centre = reach(law, history, start, { warmer: 0, energyMove: 0, longer: 0, outside: 'edge' });
  if (centre === undefined) return undefined;
  const cautions = [...law.cautions];
  if (centre.outsideShare > 0) cautions.push('cure-outside-sheet-temperatures');
  if (centre.beyond) cautions.push('cure-beyond-weather');
  const offset = (how: Reading): number => {
    const found = reach(law, history, start, how);
    return found === undefined ? Number.POSITIVE_INFINITY : found.at - centre.at;
  };
  const level: Reading = { warmer: 0, energyMove: 0, longer: 0, outside: 'edge' };
  const moves: readonly (readonly [Reading, Reading])[] = [
    [
      { ...level, warmer: Z90, outside: 'quick' },
      { ...level, warmer: -Z90, outside: 'slow' },
    ],
    [
      { ...level, energyMove: Z90 },
      { ...level, energyMove: -Z90 },
    ],
    [
      { ...level, longer: -Z90 },
      { ...level, longer: Z90 },
    ],
  ];
  let [shorter, longer] = [0, 0];
  for (const pair of moves) {
    const [one, other] = [offset(pair[0]), offset(pair[1])];
    shorter = Math.hypot(shorter, Math.min(0, one, other));
    longer = Math.hypot(longer, Math.max(0, one, other));
  }
  return {
    at: centre.at,
    low: Math.max(start, centre.at - shorter),
    ...(Number.isFinite(longer) ? { high: centre.at + longer } : {}),
    cautions,
  };
};
