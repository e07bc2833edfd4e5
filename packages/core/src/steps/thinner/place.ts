import type { Job, JobOption } from '../../job.ts';
import type { ExemptSolvent, VocLimit } from '../../place.ts';

/** Rules of the place in force on the day of the work, as the firm entered them. */

/** Day of the first coat where one is planned, else the day of planning. */
export function workDay(option: JobOption, now: string): string {
  const days = (option.starts ?? []).map(({ at }) => at.slice(0, 10)).sort();
  return days[0] ?? now.slice(0, 10);
}

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/** The rule that lets a solvent out of VOC there on that day; the newest of several. */
export function exemptionOf(job: Job, solvent: string | undefined, day: string): ExemptSolvent | undefined {
  if (solvent === undefined) return undefined;
  return latest((job.place.exempt ?? []).filter((one) => same(one.solvent, solvent) && one.date <= day));
}

/**
 * The limit that holds for a product there on that day: of each category the newest in force, of several categories
 * the lowest. A category that names products holds for those alone.
 */
export function vocLimitOf(job: Job, product: string, day: string): VocLimit | undefined {
  const holding = (job.place.vocLimits ?? []).filter(
    (one) => one.date <= day && (one.products === undefined || one.products.includes(product)),
  );
  const byCategory = new Map<string, VocLimit>();
  for (const one of holding) {
    const key = one.category.trim().toLowerCase();
    const before = byCategory.get(key);
    byCategory.set(key, before ? (latest([before, one]) as VocLimit) : one);
  }
  return [...byCategory.values()].reduce<VocLimit | undefined>(
    (least, one) => (least && least.limit.value <= one.limit.value ? least : one),
    undefined,
  );
}

function latest<T extends { readonly date: string }>(rules: readonly T[]): T | undefined {
  return rules.reduce<T | undefined>((last, one) => (last && last.date > one.date ? last : one), undefined);
}
