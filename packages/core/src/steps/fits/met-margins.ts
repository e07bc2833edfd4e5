import type { Product } from '../../catalogue.ts';
import type { Figure, Known, Series } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { Extremes } from '../../science/windows/reasons.ts';
import { givenField, sheetOf } from '../context.ts';
import { leastOf, mostOf } from '../formulas/day.ts';
import { shareAbove, shareLeft, shareOfRange } from '../formulas/fits.ts';
import { marginLimit } from '../hours/margin.ts';
import type { SitePlan } from '../results.ts';
import type { Margin } from './margins.ts';
import { end, marginsAt } from './sheet-margins.ts';
import type { Met } from './windows.ts';

/**
 * What one sheet asks of the room, held against the worst hour that the coat meets at the start found for it in the
 * weather: the same hours its start was judged by.
 */
export function metMargins(product: Product, met: Met, site: SitePlan, trace: Trace): readonly Margin[] {
  const { climate = {} } = product;
  const where = sheetOf(product);
  const least = taken(trace, 'margin-met', met.margin, site.margin, leastOf);
  const wettest = climate.humidityMost && taken(trace, 'humidity-met', met.humidity.most, site.humidity, mostOf);
  return marginsAt(product, [
    ['dew-point', trace.figure('dew', shareAbove, { limit: marginLimit(trace, product), reading: least })],
    ['slab-temperature', within('slab', [climate.slabLeast, climate.slabMost], met.surface, site.slab, where, trace)],
    ['air-temperature', within('air', [climate.airLeast, climate.airMost], met.air, site.air, where, trace)],
    [
      'humidity',
      climate.humidityMost && climate.humidityMost.value > 0 && wettest
        ? trace.figure('humidity', shareLeft, {
            limit: givenField(trace, 'humidity-most', climate.humidityMost, 'data sheet', { where }),
            reading: wettest,
          })
        : undefined,
    ],
  ]);
}

/** The nearer of the two ends decides, as for a reading; one end alone gives no margin. */
function within(
  of: 'slab' | 'air',
  [least, most]: readonly [Limit | undefined, Limit | undefined],
  met: Extremes,
  series: Series<'°C'>,
  where: string,
  trace: Trace,
): Figure<'1'> | undefined {
  if (!least || !most || least.value >= most.value) return undefined;
  const ends = { least: end(trace, `${of}-least`, least, where), most: end(trace, `${of}-most`, most, where) };
  const cold = met.least - least.value <= most.value - met.most;
  const reading: Known<'°C'> = cold
    ? taken(trace, `${of}-met`, met.least, series, leastOf)
    : taken(trace, `${of}-met`, met.most, series, mostOf);
  return trace.figure(of, shareOfRange, { ...ends, reading });
}

type Limit = NonNullable<NonNullable<Product['climate']>['slabLeast']>;

const taken = <U extends Unit>(
  trace: Trace,
  name: string,
  value: number,
  { id, unit, shows }: Series<U>,
  law: typeof leastOf | typeof mostOf,
): Figure<U> => trace.taken(name, law, { value, unit, ...(shows ? { shows } : {}), inputs: { values: id } });
