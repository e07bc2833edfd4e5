import type { Reason } from '../../kernel/verdict.ts';
import type { Coat, Found } from './coat.ts';

/**
 * Chemistry with humidity: what cures by humid air needs both of its limits, what carries amine needs a margin to the
 * dew point; a sheet that leaves them out leaves foam or blush to chance.
 */
export function chemistryFit(coat: Coat): Found {
  const { humidityCured, amine, climate } = coat.product;
  const names = { layer: coat.name };
  const reasons: Reason[] = [];
  if (humidityCured && (!climate?.humidityLeast || !climate.humidityMost)) {
    reasons.push({ code: 'system-chemistry-humidity-unstated', verdict: 'caution', names });
  }
  if (amine && !climate?.humidityMost && !climate?.dewMargin) {
    reasons.push({ code: 'system-chemistry-blush-unstated', verdict: 'caution', names });
  }
  return { reasons };
}
