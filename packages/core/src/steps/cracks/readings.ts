import type { Area } from '../../drawing.ts';
import { round9 } from '../../kernel/canonical.ts';
import type { Figure, Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenField } from '../context.ts';
import { openingFromReadings, openingUnseen, slabCools } from '../formulas/cracks.ts';
import type { Season } from './season.ts';

type Drawn = NonNullable<Area['cracks']>[number];

/** Two widths tell movement from rest only when the slab was this far apart, K: an assumption. */
export const READINGS_APART = 5;
/** A change beyond this shows that a crack moves, m; also what a comparator tells apart. An assumption. */
export const MOVES_BEYOND = 0.05e-3;

export interface FromReadings {
  readonly state: 'dormant' | 'moving';
  /** Opening of the season by the line through the readings, for a crack that moves. */
  readonly season?: Figure<'m'>;
  readonly unseen?: Figure<'m'>;
  /** The crack is wider on the warm slab: something other than cooling moves it. */
  readonly widerWhenWarm: boolean;
}

/**
 * The two widths furthest apart in slab temperature. At one temperature, or without one, two widths prove nothing of
 * the next season, and this gives nothing.
 */
export function fromReadings(drawn: Drawn, season: Season, trace: Trace): FromReadings | undefined {
  const read = drawn.widths.flatMap(({ width, slab, on }) => (slab ? [{ width, slab, on }] : []));
  const sorted = [...read].sort((a, b) => a.slab.value - b.slab.value);
  const [cold, warm] = [sorted[0], sorted.at(-1)];
  if (!cold || !warm || round9(warm.slab.value - cold.slab.value) < READINGS_APART) return undefined;
  const t = trace.within('readings');
  const field = (name: string, of: typeof cold) => ({
    width: givenField(t, `${name}.width`, of.width, 'reading', { when: of.on }),
    slab: givenField(t, `${name}.slab`, of.slab, 'reading', { when: of.on }),
  });
  const [atCold, atWarm] = [field('cold', cold), field('warm', warm)];
  const readingsRange = t.figure('range', slabCools, { from: atWarm.slab, to: atCold.slab });
  const widths = drawn.widths.map(({ width }) => width.value);
  const moved = round9(Math.max(...widths) - Math.min(...widths)) > round9(MOVES_BEYOND);
  if (moved) {
    const opening = t.figure('opening', openingFromReadings, {
      coldWidth: atCold.width,
      warmWidth: atWarm.width,
      readingsRange,
      temperatureRange: season.cools,
    });
    return { state: 'moving', season: opening, widerWhenWarm: atWarm.width.value > atCold.width.value };
  }
  const resolution: Known<'m'> = t.given('resolution', {
    value: MOVES_BEYOND,
    unit: 'm',
    origin: 'assumed',
    source: 'crack-reading-assumption',
    says: 'cracks-resolution-assumed',
    shows: 'small-length',
  });
  const unseen = t.figure('unseen', openingUnseen, { resolution, readingsRange, temperatureRange: season.cools });
  return { state: 'dormant', unseen, widerWhenWarm: false };
}
