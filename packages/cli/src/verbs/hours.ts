import { writeFileSync } from 'node:fs';
import { icsOf } from '@slabwright/calendar';
import { answered, canonicalText, severity } from '@slabwright/core';
import type { FileOptions } from '../load.ts';
import { planned } from '../planned.ts';
import { printHours } from '../print/hours.ts';
import { BadInput, EXIT, type Terminal } from '../terminal.ts';

export interface HoursVerbOptions extends FileOptions {
  readonly json?: boolean;
  readonly units?: 'imperial' | 'metric';
  readonly option?: string;
  readonly ics?: string;
}

/** `hours JOB`: the day as rows of hours, windows by coat, the schedule and the return to service. */
export function hoursVerb(path: string, options: HoursVerbOptions, terminal: Terminal): number {
  const done = planned(path, options, terminal);
  const { plan } = done;
  const chosen = options.option
    ? plan.options.find(({ id }) => id === options.option)
    : (plan.options.find(({ accepted }) => accepted) ?? plan.options[0]);
  if (!chosen) {
    const known = plan.options.map(({ id }) => id).join(', ');
    throw new BadInput([
      options.option
        ? `The job has no option "${options.option}". It has ${known || 'none'}.`
        : 'The job has no option yet: add one under "options", with a system of the catalogue.',
    ]);
  }
  if (!plan.site && !options.json) {
    throw new BadInput([
      `${path}: no weather.json lies beside the job. Put one there, name it with --weather FILE (jobs/garage/weather.json is one to start from), or type a day: --air-low "8 °C" --air-high "22 °C" --humidity "85 %" --wind "2 m/s" --cloud "30 %".`,
    ]);
  }
  if (options.ics !== undefined) {
    try {
      writeFileSync(options.ics, icsOf(plan, chosen, done.voice));
    } catch (trouble) {
      throw new BadInput([`${options.ics} cannot be written: ${(trouble as Error).message}`]);
    }
  }
  const { site, entries } = plan;
  const { day, schedule, hours } = chosen;
  terminal.out(
    options.json
      ? `${canonicalText({ option: chosen.id, site, day, schedule, gates: answered(hours) ? hours.gates : [], entries }, 1)}\n`
      : printHours(done, chosen, terminal),
  );
  return severity(hours.verdict.word) >= severity('caution') ? EXIT.fine : EXIT.halted;
}
