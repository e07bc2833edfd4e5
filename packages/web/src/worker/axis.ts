import { convert, type Entry, type Reader, toSI } from '@slabwright/core';
import type { AxisTick, SiteCurves } from './api.ts';

/** Lines of the temperature axis, round in the reader's own degrees, around every climate reading of the plan and the hours of weather that are drawn. */
export function temperatureAxis(
  entries: Readonly<Record<string, Entry>>,
  reader: Reader,
  curves: SiteCurves | null = null,
  shown: readonly [from: number, until: number] = [0, 0],
): readonly AxisTick[] {
  const read = Object.values(entries).flatMap((entry) =>
    entry.id.startsWith('survey.climate.') && entry.kind !== 'list' && entry.kind !== 'series' && entry.unit === '°C'
      ? [entry.value]
      : [],
  );
  const drawn = (curves ? [curves.slabLow, curves.slabHigh, curves.dewLow, curves.air] : []).flatMap((values) =>
    values.filter((_, i) => {
      const at = (curves?.from ?? 0) + i * (curves?.step ?? 0);
      return at >= shown[0] && at <= shown[1];
    }),
  );
  const values = drawn.length > 0 ? drawn : read;
  if (values.length === 0) return [];
  const imperial = reader.units === 'imperial';
  const unit = imperial ? '°F' : '°C';
  const step = imperial ? 10 : 5;
  const inUnit = (celsius: number): number => (imperial ? convert(celsius, '°C', '°F') : celsius);
  const first = Math.floor(inUnit(Math.min(...values)) / step) * step;
  const last = Math.ceil(inUnit(Math.max(...values)) / step) * step;
  const ticks: AxisTick[] = [];
  for (let tick = first; tick <= last; tick += step) ticks.push({ value: toSI(tick, unit).value, text: `${tick}°` });
  return ticks;
}
