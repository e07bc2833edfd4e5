import { existsSync, readFileSync } from 'node:fs';
import {
  catalogueFromText,
  jobFromText,
  type PlanInput,
  priceBookFromText,
  type Result,
  weatherFromText,
} from '@slabwright/core';

/** Moments the golden jobs are planned for: just before their first working day. */
export const GOLDEN_NOW = {
  garage: '2026-05-12T18:00:00-06:00',
  workshop: '2026-10-11T18:00:00+01:00',
  basement: '2026-06-01T18:00:00-06:00',
  patio: '2026-06-12T20:00:00-06:00',
} as const;
export type GoldenName = keyof typeof GOLDEN_NOW;

function good<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

export function goldenJob(name: GoldenName): PlanInput {
  const place = (file: string): URL => new URL(`../../jobs/${name}/${file}`, import.meta.url);
  const text = (file: string): string => readFileSync(place(file), 'utf8');
  return {
    job: good(jobFromText(text('job.json'))),
    catalogue: good(catalogueFromText(text('catalogue.json'))),
    priceBook: good(priceBookFromText(text('price-book.json'))),
    ...(existsSync(place('weather.json')) ? { weather: good(weatherFromText(text('weather.json'))) } : {}),
    now: GOLDEN_NOW[name],
  };
}
