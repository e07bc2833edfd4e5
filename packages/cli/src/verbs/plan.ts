import { canonicalText, severity } from '@slabwright/core';
import type { FileOptions } from '../load.ts';
import { planned } from '../planned.ts';
import { printPlan } from '../print/plan.ts';
import { EXIT, type Terminal } from '../terminal.ts';

/** `plan JOB`: exit status 0 for go or caution, 1 for stop or not known. */
export function planVerb(
  path: string,
  options: FileOptions & { readonly json?: boolean; readonly units?: 'imperial' | 'metric'; readonly notes?: boolean },
  terminal: Terminal,
): number {
  const done = planned(path, options, terminal);
  terminal.out(
    options.json ? `${canonicalText(done.plan, 1)}\n` : printPlan(done, terminal, options.notes ? 'notes' : 'short'),
  );
  return severity(done.plan.verdict) >= severity('caution') ? EXIT.fine : EXIT.halted;
}
