import type { Catalogue } from '../../catalogue.ts';
import type { Job } from '../../job.ts';
import type { Issue } from '../../kernel/issue.ts';
import { FAMILIES, familyOf, methodOf } from '../evidence/methods.ts';
import { readValue } from '../evidence/value.ts';
import type { Path } from './ids.ts';
import { nearestId } from './near.ts';

const NAMES = FAMILIES.map(({ id }) => id.replaceAll('-', ' '));

/** A value that its property cannot have: another unit, ends the wrong way round, off its scale, or no number at all. */
function valueIssues(what: string, method: string | undefined, value: string, path: Path): readonly Issue[] {
  const family = familyOf(what);
  if (!family) return [];
  const named = method === undefined ? undefined : methodOf(family, method).method;
  const methods = named ? [named] : family.methods;
  const read = readValue(value, methods);
  if (read.ok) return [];
  const examples = methods.flatMap((one) => one.units ?? []);
  const limits =
    read.code === 'evidence-outside-scale' ? (named?.scale ?? []).map(String) : [...new Set<string>(examples)];
  const names = {
    property: family.id.replaceAll('-', ' '),
    got: 'trouble' in read ? (read.trouble.got ?? '') : '',
    didYouMean: 'trouble' in read ? (read.trouble.didYouMean ?? []).join(', ') : '',
  };
  return [{ code: read.code, path, value, limits, names }];
}

/** Sense of the claims in a catalogue. Doubtful ones are no issue: they are named where sheets are compared. */
export const evidenceIssues = (catalogue: Catalogue): readonly Issue[] =>
  catalogue.products.flatMap(({ properties = [] }, i) =>
    properties.flatMap(({ what, method, value }, k) =>
      valueIssues(what, method, value, ['products', i, 'properties', k, 'value']),
    ),
  );

/** Sense of the must-haves a job states itself. */
export const needIssues = (job: Job): readonly Issue[] =>
  (job.use?.needs ?? []).flatMap(({ what, method, least }, i): readonly Issue[] => {
    const path = ['use', 'needs', i];
    if (!familyOf(what)) {
      const names = { suggestion: nearestId(what, NAMES) };
      return [{ code: 'needs-property-unknown', path: [...path, 'what'], value: what, limits: NAMES, names }];
    }
    return least === undefined ? [] : valueIssues(what, method, least, [...path, 'least']);
  });
