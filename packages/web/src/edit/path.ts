/** Reading and writing a raw JSON file by path. Files hold what was typed, so values here are text as a person wrote it. */

export type Path = readonly (string | number)[];
export type Raw = unknown;
type Container = Record<string | number, unknown>;

const isContainer = (value: unknown): value is Container => value !== null && typeof value === 'object';

export function valueAt(root: Raw, path: Path): unknown {
  let here = root;
  for (const key of path) {
    if (!isContainer(here)) return undefined;
    here = here[key];
  }
  return here;
}

export const textAt = (root: Raw, path: Path): string => {
  const found = valueAt(root, path);
  return typeof found === 'string' ? found : typeof found === 'number' ? `${found}` : '';
};

export const listAt = (root: Raw, path: Path): readonly unknown[] => {
  const found = valueAt(root, path);
  return Array.isArray(found) ? found : [];
};

/** Sets a value in a draft, making the objects and lists on the way. A number in the path makes a list. */
export function setAt(draft: Raw, path: Path, value: unknown): void {
  const last = path.at(-1);
  if (last === undefined || !isContainer(draft)) throw new Error('a value is set inside a file, not instead of it');
  let here: Container = draft;
  path.slice(0, -1).forEach((key, i) => {
    const next = here[key];
    if (isContainer(next)) {
      here = next;
      return;
    }
    const made: Container = typeof path[i + 1] === 'number' ? ([] as unknown as Container) : {};
    here[key] = made;
    here = made;
  });
  here[last] = value;
}

/** Takes a value out of a draft. Objects left empty go too, but for items of lists and what stands at the top. */
export function removeAt(draft: Raw, path: Path): void {
  const last = path.at(-1);
  const parent = valueAt(draft, path.slice(0, -1));
  if (last === undefined || !isContainer(parent)) return;
  if (Array.isArray(parent)) {
    if (typeof last === 'number') parent.splice(last, 1);
    return;
  }
  delete parent[last];
  const above = path.slice(0, -1);
  const empty = Object.keys(parent).length === 0;
  if (empty && above.length > 1 && typeof above.at(-1) === 'string') removeAt(draft, above);
}

/** Puts an item into a list of a draft, at its end unless told where. */
export function insertAt(draft: Raw, path: Path, item: unknown, index?: number): void {
  const found = valueAt(draft, path);
  if (!Array.isArray(found)) {
    setAt(draft, path, [item]);
    return;
  }
  found.splice(index ?? found.length, 0, item);
}

export const startsWith = (path: Path, start: Path): boolean => start.every((key, i) => path[i] === key);

/** A name for a new item that no other of its list has: `crack-3`. */
export function freshId(stem: string, taken: readonly unknown[]): string {
  const ids = new Set(taken.map((item) => textAt(item, ['id'])));
  let n = 1;
  while (ids.has(`${stem}-${n}`)) n += 1;
  return `${stem}-${n}`;
}
