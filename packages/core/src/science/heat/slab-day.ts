import { type AnnualWave, annualWaveAt, dayOfYear } from './annual-wave.ts';
import { type Conduction, conduction, meanOfTop } from './conduction.ts';
import { type Exposure, SHUT_FILMS } from './exposure.ts';
import { windFilm } from './films.ts';
import { type Forcing, MARK_MS } from './forcing.ts';
import { heatGrid } from './grid.ts';
import { GROUND_DEPTH, type Layer } from './materials.ts';
import { evaporationOf, type SurfaceBalance } from './surface-balance.ts';
import { STEP, stepAfterJump } from './time-steps.ts';

export interface SlabSetup {
  /** From the top down to `GROUND_DEPTH`. */
  readonly layers: readonly Layer[];
  /** Undisturbed ground; the last layer is its soil. */
  readonly ground: AnnualWave;
  /** Added to the ground temperature at every depth, K: fitted. */
  readonly groundShift: number;
  readonly exposure: Exposure;
}

/** A stretch during which the door stands open, ms since 1970. */
export interface DoorOpen {
  readonly from: number;
  readonly to: number;
}

/** What the run tells, on marks every 5 min from `from`. */
export interface SlabHistory {
  /** ms since 1970 */
  readonly from: number;
  readonly count: number;
  /** Surface of the slab, °C. */
  readonly surface: Float64Array;
  /** Mean of the top 50 mm, °C. */
  readonly top: Float64Array;
  /** Air over the floor, °C. */
  readonly air: Float64Array;
}

/** The layer whose warming drives air out of the pores, m. */
export const OUTGASSING_DEPTH = 0.05;
/** Below this the yearly wave sets the start; above it the last days of weather do. m */
const WAVE_BELOW = 0.5;

/** Yearly wave below half a metre, straight line above it up to the surface's guess. */
const layStart = (slab: Conduction, setup: SlabSetup, from: number, surfaceGuess: number): void => {
  const soil = setup.layers[setup.layers.length - 1] as Layer;
  const day = dayOfYear(from);
  const at = (depth: number): number => annualWaveAt(setup.ground, soil, depth, day) + setup.groundShift;
  const half = at(WAVE_BELOW);
  for (let i = 0; i < slab.grid.count; i++) {
    const depth = slab.grid.centre[i] as number;
    slab.temperature[i] = depth >= WAVE_BELOW ? at(depth) : surfaceGuess + ((half - surfaceGuess) * depth) / WAVE_BELOW;
  }
  slab.surface = surfaceGuess;
};

/** Moments at which the surface balance jumps, ms, ascending, within the run. */
const jumpsOf = (doors: readonly DoorOpen[], exposure: Exposure, from: number, to: number): number[] => {
  if (exposure.kind !== 'garage') return [];
  const jumps = doors.flatMap((each) => [each.from, each.to]).filter((each) => each > from && each < to);
  return [...new Set(jumps)].sort((a, b) => a - b);
};

const isOpen = (doors: readonly DoorOpen[], instant: number): boolean => {
  for (const door of doors) if (instant >= door.from && instant < door.to) return true;
  return false;
};

/**
 * Temperature of a slab through days of weather.
 *
 * Starts from the yearly wave of the ground and a guess of the surface; ten days of past weather before the first
 * moment of interest make it forget both (a wrong start of the open ground still showed 0.1 K after seven).
 *
 * @param strip direct sun on this spot at each mark of the forcing, W/m², felt while the door is open
 * @param reportFrom ms since 1970 on a mark of the forcing; earlier marks only warm the run up
 */
export const runSlab = (
  setup: SlabSetup,
  forcing: Forcing,
  doors: readonly DoorOpen[],
  reportFrom: number,
  strip?: Float64Array,
): SlabHistory => {
  const { exposure } = setup;
  const end = forcing.from + (forcing.marks - 1) * MARK_MS;
  const slab = conduction(heatGrid(setup.layers), 'fixed', 0);
  layStart(
    slab,
    setup,
    forcing.from,
    exposure.kind === 'room' ? exposure.airTemperature : (forcing.dayMean[0] as number),
  );
  const soil = setup.layers[setup.layers.length - 1] as Layer;
  const middle = dayOfYear((forcing.from + end) / 2);
  const bottom = annualWaveAt(setup.ground, soil, GROUND_DEPTH, middle) + setup.groundShift;

  const firstMark = Math.max(0, Math.round((reportFrom - forcing.from) / MARK_MS));
  const count = Math.max(0, forcing.marks - firstMark);
  const history = {
    from: forcing.from + firstMark * MARK_MS,
    count,
    surface: new Float64Array(count),
    top: new Float64Array(count),
    air: new Float64Array(count),
  };
  const balance: SurfaceBalance = {
    absorbed: 0,
    airTemperature: 0,
    filmFloorWarmer: 0,
    filmFloorCooler: 0,
    emissivity: 0,
    skyLongWave: 0,
    skyView: 0,
    roomTemperature: 0,
    wet: 0,
    vapour: 0,
  };
  const jumps = jumpsOf(doors, exposure, forcing.from, end);
  jumps.push(Number.POSITIVE_INFINITY);

  const report = (mark: number): void => {
    const i = mark - firstMark;
    if (i < 0) return;
    history.surface[i] = slab.surface;
    history.top[i] = meanOfTop(slab, OUTGASSING_DEPTH);
    history.air[i] = balance.airTemperature;
  };

  setBalance(balance, exposure, forcing, 0, 0, isOpen(doors, forcing.from), strip);
  report(0);
  const most = exposure.kind === 'patio' ? exposure.holdsWater : 0;
  let water = 0;
  let nextJump = 0;
  let lastJump = Number.NEGATIVE_INFINITY;
  for (let mark = 0; mark + 1 < forcing.marks; mark++) {
    const markTime = forcing.from + mark * MARK_MS;
    let passed = 0;
    while (passed < STEP) {
      const now = markTime + passed * 1000;
      while ((jumps[nextJump] as number) <= now) lastJump = jumps[nextJump++] as number;
      let seconds = Math.min(stepAfterJump((now - lastJump) / 1000), STEP - passed);
      const untilJump = ((jumps[nextJump] as number) - now) / 1000;
      if (untilJump < seconds) seconds = untilJump;
      passed += seconds;
      // A step that would leave a sliver of a second ends on the mark, so that rounding never adds a step.
      if (STEP - passed < 1e-6) passed = STEP;
      setBalance(balance, exposure, forcing, mark, passed / STEP, isOpen(doors, now), strip);
      balance.wet = most > 0 ? Math.min(1, water / most) : 0;
      slab.step(seconds, balance, bottom);
      if (most > 0) {
        const gained = (forcing.rain[mark + 1] as number) - (water > 0 ? evaporationOf(balance, slab.surface) : 0);
        water = Math.min(most, Math.max(0, water + gained * seconds));
      }
    }
    report(mark + 1);
  }
  return history;
};

/** The surface's surroundings `share` of the way from a mark to the next. */
const setBalance = (
  balance: SurfaceBalance,
  exposure: Exposure,
  forcing: Forcing,
  mark: number,
  share: number,
  open: boolean,
  strip: Float64Array | undefined,
): void => {
  const between = (values: Float64Array): number => {
    const a = values[mark] as number;
    return share === 0 ? a : a + ((values[mark + 1] as number) - a) * share;
  };
  if (exposure.kind === 'room') {
    balance.airTemperature = exposure.airTemperature;
    balance.filmFloorWarmer = SHUT_FILMS.warmer * exposure.filmScale;
    balance.filmFloorCooler = SHUT_FILMS.cooler * exposure.filmScale;
    return;
  }
  const outdoor = between(forcing.air);
  if (exposure.kind === 'garage') {
    const dayMean = between(forcing.dayMean);
    const felt = open ? exposure.shareOpen : exposure.shareShut;
    balance.airTemperature = dayMean + felt * (outdoor - dayMean) + exposure.gain;
    balance.filmFloorWarmer = (open ? exposure.filmOpen : SHUT_FILMS.warmer) * exposure.filmScale;
    balance.filmFloorCooler = (open ? exposure.filmOpen : SHUT_FILMS.cooler) * exposure.filmScale;
    balance.absorbed = open && strip !== undefined ? exposure.absorptance * between(strip) : 0;
    return;
  }
  const film = (exposure.film === 'wind' ? windFilm(between(forcing.wind)) : exposure.film) * exposure.filmScale;
  balance.airTemperature = outdoor;
  balance.filmFloorWarmer = film;
  balance.filmFloorCooler = film * exposure.stableShare;
  balance.absorbed = exposure.absorptance * between(forcing.absorbable);
  balance.vapour = between(forcing.vapour);
  balance.emissivity = exposure.emissivity;
  balance.skyLongWave = between(forcing.sky);
  balance.skyView = exposure.skyView;
  balance.roomTemperature = outdoor;
};
