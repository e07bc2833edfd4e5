import {
  canonicalText,
  type Entry,
  type Reader,
  rankSystems,
  type SystemsRanked,
  type Voice,
  voice,
} from '@slabwright/core';
import { type FileOptions, load } from '../load.ts';
import { nowOf } from '../now.ts';
import { printFits } from '../print/fits.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

/** `fits JOB`: every system of the catalogue on this slab. Exit status 0 when one fits, 1 when none does. */
export function fits(
  path: string,
  options: FileOptions & { readonly json?: boolean; readonly units?: 'imperial' | 'metric' },
  terminal: Terminal,
): number {
  const now = nowOf(options, terminal);
  const loaded = load(path, options, now);
  for (const warning of loaded.warnings) terminal.err(`look again: ${warning}\n`);
  const ranked = rankSystems({ ...loaded, now }, { working: options.json === true });
  if (!ranked) {
    throw new BadInput([
      `${path}: no option is drawn up, so no system can be tried. Add one under "options", with areas, people and any system of the catalogue.`,
    ]);
  }
  terminal.out(
    options.json
      ? `${canonicalText(published(ranked), 1)}\n`
      : printFits(ranked, voiceOf(ranked, options.units ?? loaded.job.reader.units), terminal),
  );
  return ranked.systems.some((one) => one.fits === 'yes') ? EXIT.fine : EXIT.halted;
}

function voiceOf(ranked: SystemsRanked, units: 'imperial' | 'metric'): Voice {
  const reader: Reader = { locale: 'en-US', units, ...(ranked.currency ? { currency: ranked.currency } : {}) };
  return voice('en', reader, Object.fromEntries(ranked.entries.map((entry) => [entry.id, entry])));
}

/** Data for programs: ids in place of the figures, and the entries those lead to, down to their readings. */
function published({ entries, ...ranked }: SystemsRanked): unknown {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const wanted = new Map<string, Entry>();
  const take = (id: string): void => {
    const found = byId.get(id);
    if (!found || wanted.has(id)) return;
    wanted.set(id, found);
    if (found.kind !== 'given') for (const input of Object.values(found.inputs).flat()) take(input);
  };
  const withIds = (value: unknown): unknown => {
    if (value === null || typeof value !== 'object') return value;
    if (Array.isArray(value)) return value.map(withIds);
    if ('kind' in value && 'id' in value && 'unit' in value) {
      take(`${value.id}`);
      return value.id;
    }
    if ('figures' in value) for (const id of Object.values(value.figures as Record<string, string>)) take(id);
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withIds(inner)]));
  };
  const rest = withIds(ranked) as object;
  return { ...rest, entries: Object.fromEntries([...wanted].sort(([a], [b]) => (a < b ? -1 : 1))) };
}
