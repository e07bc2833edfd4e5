import type { Issue } from '../../kernel/issue.ts';
import { nearestId } from './near.ts';

export type Path = readonly (string | number)[];

/** Ids that stand twice in one list; the second and later places are named. */
export function duplicates(items: readonly { readonly id: string }[] | undefined, path: Path): readonly Issue[] {
  const seen = new Map<string, number>();
  return (items ?? []).flatMap(({ id }, i): readonly Issue[] => {
    const first = seen.get(id);
    if (first === undefined) {
      seen.set(id, i);
      return [];
    }
    return [{ code: 'check-id-twice', path: [...path, i, 'id'], value: id, names: { first: `${first}` } }];
  });
}

/** One id that must name something known; the nearest known one is suggested. */
export function unknownId(
  code: string,
  id: string | undefined,
  known: readonly string[],
  path: Path,
): readonly Issue[] {
  if (id === undefined || known.includes(id)) return [];
  return [{ code, path, value: id, limits: known, names: { suggestion: nearestId(id, known) } }];
}

/** The same, with another message where there is nothing to choose from. */
export const unknownOrNone = (
  code: string,
  none: string,
  id: string | undefined,
  known: readonly string[],
  path: Path,
): readonly Issue[] =>
  known.length > 0 || id === undefined ? unknownId(code, id, known, path) : [{ code: none, path, value: id }];
