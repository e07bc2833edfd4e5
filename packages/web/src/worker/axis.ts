import { convert, type Entry, type Reader, toSI } from '@slabwright/core';
import type { AxisTick } from './api.ts';

/** Lines of the temperature axis, round in the reader's own degrees, around every climate reading of the plan. */
export function temperatureAxis(entries: Readonly<Record<string, Entry>>, reader: Reader): readonly AxisTick[] {
  const values = Object.values(entries).flatMap((entry) =>
    entry.id.startsWith('survey.climate.') && entry.kind !== 'list' && entry.kind !== 'series' && entry.unit === '°C'
      ? [entry.value]
      : [],
  );
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
