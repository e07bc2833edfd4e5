import acceptance from '../../data/acceptance.json' with { type: 'json' };
import { tabled } from '../../data/tabled.ts';
import type { PullOff, Survey } from '../../job.ts';
import type { Known } from '../../kernel/entry.ts';
import { FormulaRefused } from '../../kernel/refusal.ts';
import type { Said } from '../../kernel/said.ts';
import type { Trace } from '../../kernel/trace.ts';
import { pullOffStress } from '../../science/bond/index.ts';
import { meanOfValues } from '../../science/statistics/index.ts';
import { givenCount, givenField } from '../context.ts';
import type { SurveyPlan } from '../results.ts';

export interface PullOffsFound {
  readonly pullOff?: NonNullable<SurveyPlan['pullOff']>;
  readonly notes: readonly Said[];
}

const GLUE = new Set<PullOff['mode']>(['-/Y', 'Y', 'Y/Z']);
const GLUE_SHARE_MOST = tabled(acceptance.glueShareMost.value, '1');

/**
 * A pull that failed in the glue measured the glue: the concrete is at least that strong, no more is known. It never
 * enters a mean.
 */
export const failedInGlue = ({ mode, glueShare }: PullOff): boolean =>
  GLUE.has(mode) || (glueShare !== undefined && glueShare.value > GLUE_SHARE_MOST);

/** Stress of a pull as entered, or of its force and dolly; nothing where neither gives one. */
export function stressOf(trace: Trace, pull: PullOff): Known<'Pa'> | undefined {
  const parts = { ...(pull.where ? { where: pull.where } : {}), ...(pull.on ? { when: pull.on } : {}) };
  if (pull.stress) return givenField(trace, 'stress', pull.stress, 'reading', parts);
  if (!pull.force || !pull.dolly) return undefined;
  try {
    return trace.figure('stress', pullOffStress, {
      force: givenField(trace, 'force', pull.force, 'reading', parts),
      dollyDiameter: givenField(trace, 'dolly', pull.dolly, 'reading', parts),
    });
  } catch (trouble) {
    if (!(trouble instanceof FormulaRefused)) throw trouble;
    return undefined;
  }
}

/**
 * Pull-offs on the prepared concrete, averaged only within one failure mode: those that broke the concrete itself.
 * Pulls as found or on a coating are kept in the record and prove nothing about the prepared surface.
 */
export function judgePullOffs(trace: Trace, survey: Survey): PullOffsFound {
  const notes: Said[] = [];
  const counted: Known<'Pa'>[] = [];
  for (const pull of survey.pullOffs ?? []) {
    const where = pull.where ?? pull.id;
    const stress = stressOf(trace.within(`pull-off.${pull.id}`), pull);
    if (pull.after !== 'preparation') {
      notes.push({ code: 'survey-pull-off-not-after-preparation', names: { where } });
    } else if (!stress) {
      notes.push({ code: 'survey-pull-off-no-value', names: { where } });
    } else if (failedInGlue(pull)) {
      notes.push({ code: 'survey-pull-off-glue', figures: { stress: stress.id }, names: { where } });
    } else if (pull.mode !== 'A') {
      notes.push({
        code: 'survey-pull-off-other-mode',
        figures: { stress: stress.id },
        names: { where, mode: pull.mode },
      });
    } else {
      counted.push(stress);
    }
  }
  const [first, ...rest] = counted;
  if (!first) return { notes };
  const mean = trace.figure('pull-offs.mean', meanOfValues, { values: counted });
  return {
    pullOff: {
      mean: { ...mean, unit: 'Pa' },
      least: rest.reduce((least, stress) => (stress.value < least.value ? stress : least), first),
      counted: givenCount(trace, 'pull-offs.counted', counted.length, 'reading'),
    },
    notes,
  };
}
