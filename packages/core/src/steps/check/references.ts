import type { Catalogue } from '../../catalogue.ts';
import type { Job, JobOption } from '../../job.ts';
import type { Issue } from '../../kernel/issue.ts';
import { METHOD_IDS } from '../preparation/index.ts';
import { type Path, unknownId, unknownOrNone } from './ids.ts';

const ids = (items: readonly { readonly id: string }[] | undefined): readonly string[] =>
  (items ?? []).map(({ id }) => id);

function optionIssues(job: Job, catalogue: Catalogue, option: JobOption, path: Path): readonly Issue[] {
  const system = catalogue.systems.find(({ id }) => id === option.system);
  const layers = ids(system?.layers);
  const areas = option.areas.flatMap((area, i) =>
    unknownId('check-area-unknown', area, ids(job.areas), [...path, 'areas', i]),
  );
  const twice = option.areas.flatMap((area, i): readonly Issue[] => {
    const first = option.areas.indexOf(area);
    const issue: Issue = {
      code: 'check-id-twice',
      path: [...path, 'areas', i],
      value: area,
      names: { first: `${first}` },
    };
    return first === i ? [] : [issue];
  });
  const verticals = job.areas.flatMap(({ stemWalls, coves, steps }) => [
    ...ids(stemWalls),
    ...ids(coves),
    ...ids(steps),
  ]);
  const layerIssues = system
    ? [
        ...(option.thinner ?? []).flatMap(({ layer }, i) =>
          unknownId('check-layer-unknown', layer, layers, [...path, 'thinner', i, 'layer']),
        ),
        ...(option.starts ?? []).flatMap(({ layer }, i) =>
          unknownId('check-layer-unknown', layer, layers, [...path, 'starts', i, 'layer']),
        ),
        ...system.layers.flatMap(({ product }) => unknownProduct(catalogue, system.id, product, [...path, 'system'])),
      ]
    : [];
  const preparation = [...path, 'preparation'];
  return [
    ...unknownId('check-system-unknown', option.system, ids(catalogue.systems), [...path, 'system']),
    ...areas,
    ...twice,
    ...(option.stopLines ?? []).flatMap(({ area }, i) =>
      unknownId('check-area-unknown', area, ids(job.areas), [...path, 'stopLines', i, 'area']),
    ),
    ...unknownId('check-area-unknown', option.spread?.mixAt?.area, ids(job.areas), [
      ...path,
      'spread',
      'mixAt',
      'area',
    ]),
    ...(option.leaveOut ?? []).flatMap((id, i) =>
      unknownId('check-vertical-unknown', id, verticals, [...path, 'leaveOut', i]),
    ),
    ...layerIssues,
    ...unknownId('check-method-unknown', option.preparation?.method, METHOD_IDS, [...preparation, 'method']),
    ...unknownId('check-method-unknown', option.preparation?.removal, METHOD_IDS, [...preparation, 'removal']),
  ];
}

/** A system of the catalogue that names a product it does not hold; said at the option that wants it. */
function unknownProduct(catalogue: Catalogue, system: string, product: string, path: Path): readonly Issue[] {
  return unknownId('check-product-unknown', product, ids(catalogue.products), path).map((issue) => ({
    ...issue,
    names: { ...issue.names, system },
  }));
}

/** Ids in a job that name nothing, each with the nearest that exists. */
export function referenceIssues(job: Job, catalogue: Catalogue): readonly Issue[] {
  const { survey } = job;
  const covers = (survey.onFloor ?? []).flatMap((cover, i) =>
    (cover.areas ?? []).flatMap((area, k) =>
      unknownId('check-area-unknown', area, ids(job.areas), ['survey', 'onFloor', i, 'areas', k]),
    ),
  );
  const openTimes = (survey.openTimeTests ?? []).flatMap(({ product }, i) =>
    unknownId('check-product-unknown', product, ids(catalogue.products), ['survey', 'openTimeTests', i, 'product']).map(
      (issue) => ({ ...issue, names: { ...issue.names, system: '' } }),
    ),
  );
  const openMixes = (survey.openTimeTests ?? []).flatMap(({ product, mix }, i) =>
    unknownOrNone(
      'catalogue-mix-unknown',
      'catalogue-mix-none',
      mix,
      ids(catalogue.products.find(({ id }) => id === product)?.mixes),
      ['survey', 'openTimeTests', i, 'mix'],
    ).map((issue) => ({ ...issue, names: { ...issue.names, product } })),
  );
  const patch = ['survey', 'testPatch'];
  return [
    ...job.options.flatMap((option, i) => optionIssues(job, catalogue, option, ['options', i])),
    ...covers,
    ...openTimes,
    ...openMixes,
    ...unknownId('check-method-unknown', survey.testPatch?.method, METHOD_IDS, [...patch, 'method']),
    ...unknownId('check-tool-unknown', survey.testPatch?.tool, ids(catalogue.tools), [...patch, 'tool']),
  ];
}
