/** Walls somebody is still drawing are no mistake: the plan waits for them, and says so without alarm. */

interface Found {
  readonly code?: string;
  readonly path: readonly (string | number)[];
}

const WAITS = new Set(['check-area-without-shape', 'number-missing', 'field-missing', 'too-few']);

/** Whether an issue says only that the walls of a room are not all there yet. */
export const isUnfinished = ({ code = '', path }: Found): boolean =>
  path[0] === 'areas' && (path[2] === 'outline' || path[2] === 'tape') && WAITS.has(code);

/** Rooms whose walls are not all there yet, by their place in the file. */
export const unfinishedRooms = (issues: readonly Found[]): readonly number[] => [
  ...new Set(issues.filter(isUnfinished).map(({ path }) => Number(path[1]))),
];
