import { type Answer, answered, type OptionPlan, type StepBase, type Voice } from '@slabwright/core';

/** Name, answer and one line of a step, as the plan prints it. */
export type StepRow = readonly [name: string, step: Answer<StepBase>, says: string];

/** Without its notes: they stand under the option and in `--json`; the plan keeps to one screen. */
const quiet = (step: Answer<StepBase>): Answer<StepBase> => ({ ...step, notes: [] });

/** What the use asks of the sheets: shown, not shown, not met. */
export function needsStep({ needs }: OptionPlan, voice: Voice): readonly StepRow[] {
  if (!answered(needs)) return [['needs', needs, '']];
  const named = (met: string): string => {
    const whats = needs.needs.filter((need) => need.met === met).map(({ what }) => what);
    return [...new Set(whats)].map((what) => wordOf(what, voice)).join(', ');
  };
  const parts = [
    ['needs-row-not-met', named('not met')],
    ['needs-row-shown', named('met')],
    ['needs-row-open', named('not known')],
  ] as const;
  const says = parts.flatMap(([code, list]) => (list === '' ? [] : [voice.say({ code, names: { list } })]));
  return says.length === 0 ? [] : [['needs', quiet(needs), says.join(' · ')]];
}

const BESIDE = new Set(['foot', 'vehicle', 'budget', 'smell']);
const wordOf = (what: string, voice: Voice): string =>
  voice.word(BESIDE.has(what) ? `needs-what-${what}` : `evidence-property-${what}`);

/** The weakest link, and what more adhesion would be worth. */
export function governsStep({ governs }: OptionPlan, voice: Voice): readonly StepRow[] {
  if (!answered(governs)) return [['bond', governs, '']];
  const said = governs.notes.flatMap(({ code, ...rest }) => {
    const row = code.replace('governs-headline-', 'governs-row-').replace(/^governs-worth/, 'governs-row-worth');
    return row === code ? [] : [voice.say({ code: row, ...rest })];
  });
  return [['bond', quiet(governs), said.join(' · ')]];
}
