import type { Figure, Known } from '../../kernel/entry.ts';
import { epochOf, instantIn } from '../../kernel/instant.ts';
import type { Trace } from '../../kernel/trace.ts';
import { slabCools } from '../formulas/cracks.ts';
import { leastOf, mostOf } from '../formulas/day.ts';
import type { SitePlan } from '../results.ts';

/** A day counts when the weather tells at least this share of it. */
const MOST_OF_A_DAY = 0.9;
const DAY = 86_400;

const taken = (
  site: SitePlan,
  name: string,
  of: typeof leastOf | typeof mostOf,
  value: number,
  t: Trace,
): Figure<'°C'> => t.taken(name, of, { value, unit: '°C', shows: 'temperature', inputs: { values: site.slab.id } });

/** The slab at its hottest over the days of the weather: filled or coated then, a line has furthest to open. */
export function hottestAhead(site: SitePlan, trace: Trace): Known<'°C'> | undefined {
  const { values } = site.slab;
  if (values.length === 0) return undefined;
  return taken(
    site,
    'hottest-ahead',
    mostOf,
    values.reduce((most, one) => Math.max(most, one)),
    trace,
  );
}

/** The widest swing of the slab within one whole day of the place. */
export function swingAhead(site: SitePlan, zone: string, trace: Trace): Known<'K'> | undefined {
  const { values, from, step } = site.slab;
  if (from === undefined || step === undefined) return undefined;
  const start = epochOf(from);
  const days = new Map<string, { least: number; most: number; count: number }>();
  for (const [i, value] of values.entries()) {
    const day = instantIn(start + i * step * 1000, zone).slice(0, 10);
    const known = days.get(day);
    if (!known) days.set(day, { least: value, most: value, count: 1 });
    else {
      known.least = Math.min(known.least, value);
      known.most = Math.max(known.most, value);
      known.count++;
    }
  }
  const whole = [...days.values()].filter(({ count }) => count * step >= MOST_OF_A_DAY * DAY);
  const [first] = whole;
  if (!first) return undefined;
  const widest = whole.reduce((wide, one) => (one.most - one.least > wide.most - wide.least ? one : wide), first);
  return trace.figure('day', slabCools, {
    from: taken(site, 'day-hottest', mostOf, widest.most, trace),
    to: taken(site, 'day-coldest', leastOf, widest.least, trace),
  });
}
