import { Z90 } from '../../kernel/band.ts';
import { type CureLaw, logTimeAt } from './law.ts';

/** Temperature of the film over time: the slab's, on equal marks. */
export interface FilmHistory {
  /** ms since 1970 of the first mark */
  readonly from: number;
  /** s between marks */
  readonly spacing: number;
  /** °C, at least two marks */
  readonly temperature: ArrayLike<number>;
  /** K, standard deviation at each mark */
  readonly deviation: ArrayLike<number>;
}

export interface Milestone {
  /** ms since 1970, with P10 and P90 around it. `high` is absent when the slow side never gets there. */
  readonly at: number;
  readonly low: number;
  readonly high?: number;
  readonly cautions: readonly string[];
}

/** One way of reading the uncertain history and law. */
interface Side {
  /** Standard deviations by which the film is warmer, the energy larger, the sheet's times longer. */
  readonly warmer: number;
  readonly energyMove: number;
  readonly longer: number;
  /** Where the law does not speak: `slow` stops below its range, `quick` goes on above it, `edge` stays at its ends. */
  readonly outside: 'slow' | 'quick' | 'edge';
}

/** Cure done up to each mark, so that any start finds its end by search instead of a new sum. */
interface Clock {
  /** Σ Δt / time(T) up to each mark. */
  readonly done: Float64Array;
  /** Seconds up to each mark in which the law did not speak. */
  readonly silent: Float64Array;
  /** Rate beyond the history, 1/s, and whether the law speaks there. */
  readonly laterRate: number;
  readonly laterSpeaks: boolean;
}

interface Reached {
  /** ms since 1970 */
  readonly at: number;
  readonly silent: boolean;
  readonly beyond: boolean;
}

/** Nothing on a resin sheet takes longer than this, s. */
const LONGEST = 90 * 86400;
const DAY = 86400;
/** Added to the deviation beyond the end of the weather, K: what the days after a forecast are known to (assumed). */
const LATER_DEVIATION = 3;

const clockOf = (law: CureLaw, history: FilmHistory, side: Side): Clock => {
  const { spacing, temperature, deviation } = history;
  const count = temperature.length;
  const [least, most] = law.range;
  const stretch = Math.exp(side.longer * law.centreDeviation);
  const rateAt = (warm: number): number => {
    if (side.outside === 'slow' && warm < least) return 0;
    const used = side.outside === 'quick' && warm > most ? warm : Math.min(most, Math.max(least, warm));
    return Math.exp(-logTimeAt(law, used, side.energyMove)) / stretch;
  };
  const speaks = (warm: number): boolean => warm >= least && warm <= most;

  const done = new Float64Array(count);
  const silent = new Float64Array(count);
  for (let m = 1; m < count; m++) {
    // The film between two marks has the mean of the two.
    const mean = ((temperature[m - 1] as number) + (temperature[m] as number)) / 2;
    const warm = mean + side.warmer * (deviation[m] as number);
    done[m] = (done[m - 1] as number) + rateAt(warm) * spacing;
    silent[m] = (silent[m - 1] as number) + (speaks(warm) ? 0 : spacing);
  }
  const lastDay = Math.min(count, Math.max(1, Math.round(DAY / spacing)));
  let mean = 0;
  for (let m = count - lastDay; m < count; m++) mean += (temperature[m] as number) / lastDay;
  const later = mean + side.warmer * ((deviation[count - 1] as number) + LATER_DEVIATION);
  return { done, silent, laterRate: rateAt(later), laterSpeaks: speaks(later) };
};

/** Value of a running sum between marks. */
const between = (sums: Float64Array, x: number): number => {
  const i = Math.min(sums.length - 2, Math.max(0, Math.floor(x)));
  return (sums[i] as number) + ((sums[i + 1] as number) - (sums[i] as number)) * Math.min(1, Math.max(0, x - i));
};

/** Instant at which the cure that began at `start` is complete: Σ Δt / time(T) = 1. */
const reach = (clock: Clock, history: FilmHistory, start: number): Reached | undefined => {
  const { done, silent } = clock;
  const last = done.length - 1;
  const from = Math.max(0, (start - history.from) / 1000 / history.spacing);
  const inside = Math.min(from, last);
  const goal = between(done, inside) + 1;
  if ((done[last] as number) >= goal && from < last) {
    let [low, high] = [Math.floor(from), last];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((done[middle] as number) >= goal) high = middle;
      else low = middle;
    }
    const gained = (done[high] as number) - (done[low] as number);
    const x = low + (goal - (done[low] as number)) / gained;
    const passed = between(silent, x) - between(silent, inside);
    return { at: history.from + x * history.spacing * 1000, silent: passed > 0, beyond: false };
  }
  const seconds = (goal - (done[last] as number)) / clock.laterRate;
  if (!(seconds <= LONGEST)) return undefined;
  const end = Math.max(start, history.from + last * history.spacing * 1000);
  const passed = (silent[last] as number) - between(silent, inside);
  return { at: end + seconds * 1000, silent: passed > 0 || !clock.laterSpeaks, beyond: true };
};

const LEVEL: Side = { warmer: 0, energyMove: 0, longer: 0, outside: 'edge' };
/** Quick and slow side of each cause. */
const SIDES: readonly (readonly [Side, Side])[] = [
  [
    { ...LEVEL, warmer: Z90, outside: 'quick' },
    { ...LEVEL, warmer: -Z90, outside: 'slow' },
  ],
  [
    { ...LEVEL, energyMove: Z90 },
    { ...LEVEL, energyMove: -Z90 },
  ],
  [
    { ...LEVEL, longer: -Z90 },
    { ...LEVEL, longer: Z90 },
  ],
];

/** For one law on one slab: when a film laid at any start reaches the milestone. */
export interface MilestoneClock {
  /** With its band, or undefined when it never does. */
  (start: number): Milestone | undefined;
  /** The centre alone, ms since 1970: what a rise up to the gel is looked for within. */
  readonly middle: (start: number) => number | undefined;
}

/**
 * The clock of a law on a slab. The sums are made once; each start is then a search.
 *
 * The band joins the temperature's deviation (a whole history warmer or colder), the energy's and the sheet's, each
 * side of the centre for itself: cold nights stretch the long side more than warm ones shorten the short side.
 */
export const milestoneClock = (law: CureLaw, history: FilmHistory): MilestoneClock => {
  if (history.temperature.length < 2) return Object.assign(() => undefined, { middle: () => undefined });
  const centreClock = clockOf(law, history, LEVEL);
  const sides = SIDES.map((pair) => pair.map((side) => clockOf(law, history, side)));
  const said = cautionsOf(law);
  const withBand = (start: number): Milestone | undefined => {
    const centre = reach(centreClock, history, start);
    if (centre === undefined) return undefined;
    let [shorter, longer] = [0, 0];
    for (const pair of sides) {
      let [least, most] = [0, 0];
      for (const clock of pair) {
        const found = reach(clock, history, start);
        const offset = found === undefined ? Number.POSITIVE_INFINITY : found.at - centre.at;
        least = Math.min(least, offset);
        most = Math.max(most, offset);
      }
      shorter = Math.hypot(shorter, least);
      longer = Math.hypot(longer, most);
    }
    return {
      at: centre.at,
      low: Math.max(start, centre.at - shorter),
      ...(Number.isFinite(longer) ? { high: centre.at + longer } : {}),
      cautions: said(centre),
    };
  };
  return Object.assign(withBand, { middle: (start: number) => reach(centreClock, history, start)?.at });
};

/** What is said with a time reached: each of the four cases made once, not with every start. */
const cautionsOf = (law: CureLaw): ((reached: Reached) => readonly string[]) => {
  const cases = [false, true].map((silent) =>
    [false, true].map((beyond) => [
      ...law.cautions,
      ...(silent ? ['cure-outside-sheet-temperatures'] : []),
      ...(beyond ? ['cure-beyond-weather'] : []),
    ]),
  );
  return ({ silent, beyond }) => cases[Number(silent)]?.[Number(beyond)] ?? law.cautions;
};

/** The same for one start only. */
export const milestoneAt = (law: CureLaw, history: FilmHistory, start: number): Milestone | undefined =>
  milestoneClock(law, history)(start);
