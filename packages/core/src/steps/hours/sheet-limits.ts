import type { Product } from '../../catalogue.ts';
import type { Field } from '../../fields.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import type { Unit } from '../../kernel/unit.ts';
import type { Reason } from '../../kernel/verdict.ts';
import { givenField, type OptionContext, sheetOf } from '../context.ts';
import { above, below } from './margin.ts';
import { clock, type Reading } from './readings.ts';

type Key = 'slabLeast' | 'slabMost' | 'airLeast' | 'airMost' | 'humidityLeast' | 'humidityMost';

interface Checked {
  readonly limit: Key;
  readonly name: string;
  readonly of: (reading: Reading) => Known | undefined;
  readonly breaks: (value: number, limit: number) => boolean;
  /** Whether it matters while the film cures, not only while it is laid. */
  readonly night: boolean;
}

const CHECKS: readonly Checked[] = [
  { limit: 'slabLeast', name: 'slab-cold', of: ({ slab }) => slab, breaks: below, night: true },
  { limit: 'slabMost', name: 'slab-hot', of: ({ slab }) => slab, breaks: above, night: false },
  { limit: 'airLeast', name: 'air-cold', of: ({ air }) => air, breaks: below, night: true },
  { limit: 'airMost', name: 'air-hot', of: ({ air }) => air, breaks: above, night: false },
  { limit: 'humidityLeast', name: 'air-dry', of: ({ humidity }) => humidity, breaks: below, night: false },
  { limit: 'humidityMost', name: 'air-humid', of: ({ humidity }) => humidity, breaks: above, night: true },
];

/** Limits of one sheet, each recorded once for start and night. */
export type SheetLimits = ReadonlyMap<Key, Known>;

export function sheetLimits(trace: Trace, product: Product): SheetLimits {
  const found = new Map<Key, Known>();
  for (const { limit, name } of CHECKS) {
    const field: Field<Unit> | undefined = product.climate?.[limit];
    if (field) found.set(limit, givenField(trace, `limit.${name}`, field, 'data sheet', { where: sheetOf(product) }));
  }
  return found;
}

/**
 * Readings against the limits of the sheet. Outside one at the start is a stop. In the night it is a caution: most
 * sheets state their limits for laying, and the film has begun to set.
 */
export function limitReasons(
  ctx: OptionContext,
  when: 'start' | 'night',
  readings: readonly Reading[],
  limits: SheetLimits,
  names: Readonly<Record<string, string>>,
): readonly Reason[] {
  return CHECKS.flatMap(({ limit: key, name, of, breaks, night }): readonly Reason[] => {
    const limit = limits.get(key);
    if (!limit || (when === 'night' && !night)) return [];
    let worst: { readonly known: Known; readonly at: number } | undefined;
    for (const reading of readings) {
      const known = of(reading);
      if (!known || !breaks(known.value, limit.value)) continue;
      if (!worst || breaks(known.value, worst.known.value)) worst = { known, at: reading.epoch };
    }
    if (!worst) return [];
    return [
      {
        verdict: when === 'start' ? 'stop' : 'caution',
        code: `hours-${name}-${when}`,
        figures: { reading: worst.known.id, limit: limit.id },
        names: { ...names, at: clock(ctx, worst.at) },
        source: limit.id,
        lift: { code: `hours-${name}-lift`, figures: { limit: limit.id } },
      },
    ];
  });
}
