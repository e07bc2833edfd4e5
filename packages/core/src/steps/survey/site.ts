import type { Job } from '../../job.ts';
import { pathText } from '../../kernel/issue.ts';
import type { Missing } from '../../kernel/missing.ts';
import type { Reason } from '../../kernel/verdict.ts';

export interface Site {
  readonly reasons: readonly Reason[];
  readonly missing: readonly Missing[];
}

const assumed = (path: string, name: string): Missing => ({
  path,
  fact: { code: `survey-missing-${name}` },
  changes: { code: `survey-missing-${name}-changes` },
  meanwhile: 'assumed',
});

/** What the crew meets on arrival. Nothing here forbids a coat; each changes hours, tools or the look of the result. */
export function lookAtSite(job: Job): Site {
  const { building, slab } = job.survey;
  const missing: Missing[] = [];
  const reasons: Reason[] = [];
  const ask = (known: boolean, path: string, name: string): void => {
    if (!known) missing.push(assumed(path, name));
  };
  ask(job.survey.on !== undefined && job.survey.by !== undefined, 'survey.on', 'surveyor');
  ask(building?.year !== undefined, 'survey.building.year', 'year');
  ask(building?.power !== undefined, 'survey.building.power', 'power');
  ask(building?.access !== undefined, 'survey.building.access', 'access');
  ask(building?.water === 'yes' || building?.water === 'no', 'survey.building.water', 'water');
  ask(building?.height !== undefined, 'survey.building.height', 'height');
  ask(
    building?.occupiedBeside === 'yes' || building?.occupiedBeside === 'no',
    'survey.building.occupiedBeside',
    'beside',
  );
  ask(slab?.falls !== undefined, 'survey.slab.falls', 'falls');
  ask(slab?.thickness !== undefined, 'survey.slab.thickness', 'thickness');
  ask(slab?.scratch !== undefined, 'survey.slab.scratch', 'scratch');
  ask(job.survey.testPatch !== undefined, 'survey.testPatch', 'test-patch');
  const emptied = building?.roomEmptied;
  if (emptied === 'no') reasons.push({ verdict: 'caution', code: 'survey-room-not-emptied' });
  ask(emptied === 'yes' || emptied === 'no', 'survey.building.roomEmptied', 'room');
  job.areas.forEach((area, i) => {
    const open = (area.exits ?? []).some(({ outside }) => outside === true);
    if (open && (area.doorEdge === undefined || area.doorEdge === 'not known')) {
      missing.push({
        ...assumed(pathText(['areas', i, 'doorEdge']), 'door-edge'),
        fact: { code: 'survey-missing-door-edge', names: { area: area.name } },
      });
    }
    if (open && area.doorEdge === 'feathered') {
      reasons.push({ verdict: 'caution', code: 'survey-door-edge-feathered', names: { area: area.name } });
    }
    if ((area.exits ?? []).length === 0) {
      missing.push({
        ...assumed(pathText(['areas', i, 'exits']), 'exits'),
        fact: { code: 'survey-missing-exits', names: { area: area.name } },
      });
    }
    for (const { id, kind } of area.spots ?? []) {
      if (kind === 'ponding')
        reasons.push({ verdict: 'caution', code: 'survey-ponding', names: { area: area.name, spot: id } });
    }
  });
  return { reasons, missing };
}
