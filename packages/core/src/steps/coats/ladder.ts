import type { Product } from '../../catalogue.ts';
import { tabled } from '../../data/tabled.ts';
import type { Known } from '../../kernel/entry.ts';
import type { Trace } from '../../kernel/trace.ts';
import { givenFact, givenField, sheetOf } from '../context.ts';
import { LawTimes } from '../day/law-time.ts';
import { cureOf } from '../day/sheet.ts';
import { batchPlaceable } from '../formulas/day.ts';
import type { CoatSheet, LayerFit, Task } from '../results.ts';

/** Rungs in the reader's own round degrees. */
const RUNGS = {
  metric: ['15 °C', '20 °C', '25 °C', '30 °C'],
  imperial: ['60 °F', '70 °F', '80 °F', '90 °F'],
} as const;

type Rung = NonNullable<CoatSheet['ladder']>[number];

/** Slowest of the works that lay the floor: what a batch waits for. */
function slowestRate(floor: readonly Task[]): Known<'m²/s'> | undefined {
  const rates = floor
    .filter(({ work }) => ['squeegee', 'back-roll', 'roll-thin'].includes(work))
    .map(({ rate }) => rate as Known<'m²/s'>);
  return rates.reduce<Known<'m²/s'> | undefined>(
    (least, rate) => (least === undefined || rate.value < least.value ? rate : least),
    undefined,
  );
}

/**
 * Pot life by the material's temperature, open time by the slab's, and the batch that is poured out before it sets:
 * what the crew goes by when the day is not as planned. Rungs outside the temperatures the sheet speaks for are left
 * out.
 */
export function ladderOf(
  trace: Trace,
  product: Product,
  units: 'imperial' | 'metric',
  fit: LayerFit | undefined,
  floor: readonly Task[],
): readonly Rung[] {
  const cure = cureOf(product);
  const where = sheetOf(product);
  const { pail, film } = cure;
  if (!pail && !film.open) return [];
  const pot = pail && new LawTimes(pail, trace.within('pot'), where);
  const open = film.open && new LawTimes(film.open, trace.within('open'), where);
  const rate = slowestRate(floor);
  const mixTime = product.mixTime && givenFact(trace, 'mix-time', product.mixTime, { where });
  const largest =
    product.largestBatch && givenField(trace, 'largest-batch', product.largestBatch, 'data sheet', { where });
  return RUNGS[units].flatMap((typed, i): readonly Rung[] => {
    const t = trace.within(`${i}`);
    const at = t.given('at', {
      value: tabled(typed, '°C'),
      unit: '°C',
      origin: 'table',
      typed,
      shows: 'temperature',
    });
    const potLife = pot?.at(`${i}`, at);
    const openTime = open?.at(`${i}`, at);
    if (!potLife && !openTime) return [];
    const batch =
      potLife && rate && mixTime && largest && fit
        ? t.figure('batch', batchPlaceable, { rate, wetFilm: fit.wet, potLife, mixTime, largestBatch: largest })
        : undefined;
    return [
      {
        at,
        ...(potLife ? { potLife } : {}),
        ...(openTime ? { openTime } : {}),
        ...(batch ? { batch } : {}),
      },
    ];
  });
}
