import { answered, type Entry, type Plan, type Reader, type WeatherFile } from '@slabwright/core';
import type { Shown, SiteCurves, WeatherTold } from './api.ts';
import { shownOf } from './shown.ts';

type SeriesEntry = Extract<Entry, { readonly kind: 'series' }>;

const seriesOf = (plan: Plan, id: string): SeriesEntry | null => {
  const entry = plan.entries[id];
  return entry?.kind === 'series' ? entry : null;
};

/** The site's series as plain numbers, for drawing. */
export function curvesOf(plan: Plan): SiteCurves | null {
  const { site } = plan;
  if (!site || !answered(site)) return null;
  const [slab, dew, air, margin] = [site.slab, site.dew, site.air, site.margin].map((id) => seriesOf(plan, id));
  if (!slab?.from || !slab.step || !dew || !air || !margin) return null;
  return {
    from: Date.parse(slab.from),
    step: slab.step * 1000,
    slab: slab.values,
    slabLow: slab.low ?? slab.values,
    slabHigh: slab.high ?? slab.values,
    dew: dew.values,
    dewLow: dew.low ?? dew.values,
    dewHigh: dew.high ?? dew.values,
    air: air.values,
    margin: margin.values,
  };
}

/** A least margin is one value of the site's margins; it takes the width their band has at that hour. */
export function bandedMargins(plan: Plan, reader: Reader): Record<string, Shown> {
  const { site } = plan;
  if (!site || !answered(site)) return {};
  const margins = seriesOf(plan, site.margin);
  if (!margins?.from || !margins.step || !margins.low || !margins.high) return {};
  const found: Record<string, Shown> = {};
  for (const { day } of plan.options) {
    for (const { start } of day && answered(day) ? day.coats : []) {
      if (!start?.margin || !start.marginAt) continue;
      const entry = plan.entries[start.margin];
      const i = Math.round((Date.parse(start.marginAt) - Date.parse(margins.from)) / 1000 / margins.step);
      const [value, low, high] = [margins.values[i], margins.low[i], margins.high[i]];
      if (entry?.kind !== 'figure' || value === undefined || low === undefined || high === undefined) continue;
      const band = [entry.value + low - value, entry.value + high - value] as const;
      found[entry.id] = shownOf({ ...entry, band }, reader);
    }
  }
  return found;
}

export const weatherTold = ({ source, issued, rows }: WeatherFile): WeatherTold | null => {
  const [first, last] = [rows[0], rows.at(-1)];
  return first && last ? { source, from: first.at, until: last.at, ...(issued ? { issued } : {}) } : null;
};
