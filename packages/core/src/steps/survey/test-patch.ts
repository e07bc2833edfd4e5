import type { Survey } from '../../job.ts';
import type { Said } from '../../kernel/said.ts';

/** What the test patch says about tool and profile beside its rate. */
export function testPatchSays(survey: Survey): readonly Said[] {
  const patch = survey.testPatch;
  if (!patch) return [];
  const names = { where: patch.where ?? '@survey-place-not-named' };
  const wear =
    patch.wear === 'glazed' || patch.wear === 'fast' ? [{ code: `survey-patch-wear-${patch.wear}`, names }] : [];
  const profile =
    patch.profile === undefined
      ? []
      : [{ code: 'survey-patch-profile', names: { ...names, profile: `${patch.profile}` } }];
  return [...wear, ...profile];
}
