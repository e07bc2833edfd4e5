import { type Plan, type PlanInput, plan, type Reader, type Voice, voice } from '@slabwright/core';
import { type FileOptions, type Loaded, load } from './load.ts';
import { nowOf } from './now.ts';
import type { Terminal } from './terminal.ts';

export interface Planned extends Loaded {
  readonly plan: Plan;
  readonly voice: Voice;
}

/** Loads and plans a job, with a voice for the reader it names. */
export function planned(
  path: string,
  options: FileOptions & { readonly units?: 'imperial' | 'metric'; readonly spread?: PlanInput['spread'] },
  terminal: Terminal,
): Planned {
  const now = nowOf(options, terminal);
  const loaded = load(path, options, now);
  for (const warning of loaded.warnings) terminal.err(`look again: ${warning}\n`);
  const made = plan({ ...loaded, now, spread: options.spread ?? 'quick' });
  const reader: Reader = {
    locale: 'en-US',
    units: options.units ?? loaded.job.reader.units,
    ...(made.currency ? { currency: made.currency } : {}),
    year: made.now.slice(0, 4),
  };
  return { ...loaded, plan: made, voice: voice('en', reader, made.entries) };
}
