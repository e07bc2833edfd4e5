import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenFact } from '../context.ts';
import { roomBelowHumidity, roomBelowLimit } from '../formulas/system-room.ts';
import type { SurveyPlan, SystemPlan } from '../results.ts';
import type { Coat, Found } from './coat.ts';
import { above } from './limits.ts';

/** Room below the limit from which it is called near: ten points of humidity; common practice, no source. */
export const NEAR_HUMIDITY = 0.1;
/** The same for what is no humidity, as a share of the limit; common practice, no source. */
export const NEAR_SHARE = 0.1;

type Limit = SystemPlan['moistureLimit'][number];

/** The least limit of all coats, by method. The weakest coat decides, wherever it lies. */
export function moistureLimits(coats: readonly Coat[]): readonly Limit[] {
  const least = new Map<string, Limit>();
  for (const { layer, product, trace, sheet } of coats) {
    for (const stated of product.moisture ?? []) {
      const fact = stated.humidity ?? stated.emission ?? stated.content;
      if (!fact) continue;
      const name = `moisture-limit.${stated.method.toLowerCase().replaceAll(' ', '-')}`;
      const limit: Known = givenFact(trace, name, fact, { where: sheet });
      const before = least.get(stated.method);
      if (!before || limit.value < before.limit.value)
        least.set(stated.method, { method: stated.method, limit, layer: layer.id });
    }
  }
  return [...least.values()];
}

/**
 * Highest reading that counts against the least limit of the same method. Methods are never converted into each
 * other: a reading by one says nothing about a limit by another.
 */
export function moistureFit(
  coats: readonly Coat[],
  limits: readonly Limit[],
  surveyed: SurveyPlan,
  trace: Trace,
): Found {
  const names = { limits: limits.map((one) => one.method).join(', ') };
  const missing = (code: string, path: string): Found => ({
    reasons: [{ code, verdict: 'not known', names }],
    missing: [{ path, fact: { code, names }, changes: { code: 'system-moisture-changes' }, meanwhile: 'held' }],
  });
  if (limits.length === 0) return missing('system-moisture-no-limit', 'catalogue.products.moisture');
  const first = coats.find((coat) => coat.layer.onConcrete) ?? coats[0];
  const silent: Reason[] =
    first && !limitStated(first)
      ? [{ code: 'system-moisture-first-coat-silent', verdict: 'not known', names: { layer: first.name } }]
      : [];
  const { highest } = surveyed.moisture;
  if (highest.length === 0) {
    const found = missing('system-moisture-no-reading', 'survey.moisture.tests');
    return { ...found, reasons: [...found.reasons, ...silent] };
  }
  const judged = highest.flatMap(({ method, value, where }) => {
    const limit = limits.find((one) => one.method === method && one.limit.unit === value.unit);
    return limit ? [judge(coats, limit, value, where, trace)] : [];
  });
  if (judged.length === 0) {
    const found = missing('system-moisture-other-method', 'survey.moisture.tests');
    return { ...found, reasons: [...found.reasons, ...silent] };
  }
  return { reasons: [...judged.flat(), ...silent] };
}

const limitStated = (coat: Coat): boolean =>
  (coat.product.moisture ?? []).some((stated) => stated.humidity ?? stated.emission ?? stated.content);

function judge(
  coats: readonly Coat[],
  { method, limit, layer }: Limit,
  reading: Known,
  where: string | undefined,
  trace: Trace,
): readonly Reason[] {
  const t = trace.within('moisture').within(method.toLowerCase().replaceAll(' ', '-'));
  const humidity = method === 'ASTM F2170' || method === 'BS 8203 hood';
  const room = humidity
    ? t.figure('room', roomBelowHumidity, { limit: limit as Known<'1'>, reading: reading as Known<'1'> })
    : t.figure('room', roomBelowLimit, { limit, reading });
  const figures = { reading: reading.id, limit: limit.id, room: room.id };
  const coat = coats.find((one) => one.layer.id === layer);
  const names = { method, layer: coat?.name ?? layer, where: where ?? '' };
  if (above(reading.value, limit.value)) {
    const lift = { code: 'system-moisture-above-lift', figures: { reading: reading.id, limit: limit.id }, names };
    return [{ code: 'system-moisture-above-limit', verdict: 'stop', figures, names, source: limit.id, lift }];
  }
  const near = humidity ? NEAR_HUMIDITY : NEAR_SHARE * limit.value;
  if (above(room.value, near)) return [];
  return [{ code: 'system-moisture-near-limit', verdict: 'caution', figures, names, source: limit.id }];
}
