import type { Task } from '../results.ts';

/** Tasks of one coat, by what they need of the floor. */
export interface CoatPhase {
  readonly layer: string;
  /** Screened before it; waits for the coat below. */
  readonly before: readonly Task[];
  /** Mixed, cut in, drawn out, rolled and thrown: one wet edge, one stretch of time. */
  readonly floor: readonly Task[];
  /** Walls and steps, beside the floor or after it. */
  readonly walls: readonly Task[];
  /** Scraped and swept once it may be walked on. */
  readonly after: readonly Task[];
}

export interface Phases {
  readonly preparation: readonly Task[];
  readonly coats: readonly CoatPhase[];
  /** Joints and handing over. */
  readonly closing: readonly Task[];
}

const WALLS = new Set(['stem-coat', 'stem-roll']);

/** The tasks of an option in the phases that windows and cure put between them. */
export function phasesOf(tasks: readonly Task[], layers: readonly string[]): Phases {
  const first = tasks.findIndex(({ layer }) => layer !== undefined);
  const cut = first < 0 ? tasks.length : first;
  return {
    preparation: tasks.slice(0, cut).filter(({ layer }) => layer === undefined),
    coats: layers.map((layer) => {
      const own = tasks.filter((task) => task.layer === layer);
      return {
        layer,
        before: own.filter(({ work }) => work === 'screen'),
        floor: own.filter(({ work }) => work !== 'screen' && work !== 'scrape' && !WALLS.has(work)),
        walls: own.filter(({ work }) => WALLS.has(work)),
        after: own.filter(({ work }) => work === 'scrape'),
      };
    }),
    closing: tasks.slice(cut).filter(({ layer }) => layer === undefined),
  };
}

/** Rolling keeps one wet edge: one hand. */
const ROLLED = new Set(['back-roll', 'roll-thin']);
export const isRolled = ({ work }: Task): boolean => ROLLED.has(work);
