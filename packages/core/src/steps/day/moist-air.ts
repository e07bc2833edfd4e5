import type { Product } from '../../catalogue.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Milestone } from '../../science/cure/index.ts';
import type { Conditions } from '../../science/windows/index.ts';
import { valueAt } from '../formulas/day.ts';
import { moistOpen } from '../moist-open.ts';
import type { SitePlan } from '../results.ts';
import { valueNear } from './series-values.ts';

/** Open time of a system that takes part of its cure from the air, in the air of its hour. */
export interface InAir {
  readonly of: (dry: Milestone, laid: number) => Milestone;
  readonly holds: readonly Said[];
}

/** The air of the hour a coat starts in, for what cures by humidity; undefined for everything else. */
export function inAir(
  conditions: Conditions,
  product: Product,
  start: number,
  site: SitePlan,
  trace: Trace,
): InAir | undefined {
  const moist = moistOpen(
    product,
    (t) => {
      const taken = <U extends '°C' | '1'>(name: string, unit: U, value: number, series: string) =>
        t.taken<U>(name, valueAt, {
          value,
          unit,
          shows: unit === '1' ? 'humidity' : 'temperature',
          inputs: { before: series, after: series },
        });
      return {
        air: taken('air', '°C', valueNear(conditions, conditions.air, start), site.air.id),
        humidity: taken('humidity', '1', valueNear(conditions, conditions.humidity, start), site.humidity.id),
      };
    },
    trace,
  );
  if (!moist) return undefined;
  return {
    of: (dry, laid) => {
      const { at, low, high = at } = dry;
      const wet = moist.of({ time: at - laid, low: low - laid, high: high - laid, cautions: dry.cautions });
      return {
        at: laid + wet.time,
        low: laid + wet.low,
        ...(dry.high === undefined ? {} : { high: laid + wet.high }),
        cautions: wet.cautions,
      };
    },
    holds: moist.holds,
  };
}
