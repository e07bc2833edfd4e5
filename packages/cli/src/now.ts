import { isInstant } from '@slabwright/core';
import { BadInput, type Terminal } from './terminal.ts';

/** The moment to plan for: the option, else the clock. */
export function nowOf(options: { readonly now?: string }, terminal: Terminal): string {
  if (options.now === undefined) return terminal.now();
  if (!isInstant(options.now)) {
    throw new BadInput([`--now is "${options.now}": write date, time and offset like 2026-05-13T06:00:00-06:00.`]);
  }
  return options.now;
}
