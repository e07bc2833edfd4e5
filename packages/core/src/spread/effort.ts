/**
 * How hard to look, in countable things, so that the same question gets the same plan on any machine.
 * `candidates`: orders grown and scored (a guided growth counts three); `nodes`: steps of the exact search on a coarse
 * copy, 0 for no proof.
 */
export interface SpreadEffort {
  readonly candidates: number;
  readonly nodes: number;
}

/** While somebody waits: fewer candidates the larger the floor, since each costs more. */
export function quickEffort(squares: number): SpreadEffort {
  return {
    candidates: Math.round(Math.max(squares > 30_000 ? 40 : 150, Math.min(900, 620_000 / (squares + 250)))),
    nodes: 0,
  };
}

/** Some seconds: for the plan that goes on paper. */
export function fullEffort(squares: number): SpreadEffort {
  return { candidates: Math.round(Math.max(700, Math.min(40_000, 14_000_000 / (squares + 50)))), nodes: 400_000 };
}

/** Told how far the search is; answering false stops it with the best plan so far. */
export type SpreadProgress = (done: number, of: number, bestScore: number) => boolean;

/** Squares grown between two reports, at most. */
const SQUARES_BETWEEN_REPORTS = 40_000;

/** Counts candidates and asks now and then whether to go on. */
export class Budget {
  done = 0;
  stopped = false;
  readonly total: number;
  private readonly onProgress: SpreadProgress | undefined;
  private nextReport = 0;
  private readonly every: number;

  constructor(total: number, squares: number, onProgress: SpreadProgress | undefined) {
    this.total = total;
    this.onProgress = onProgress;
    // seldom enough to cost nothing, often enough that a large floor stops within some tens of milliseconds
    this.every = Math.max(1, Math.min(Math.max(16, total / 100), Math.floor(SQUARES_BETWEEN_REPORTS / squares)));
  }

  /** True while `limit` is not reached and nobody said stop. */
  within(limit: number, bestScore: number): boolean {
    if (this.onProgress && !this.stopped && this.done >= this.nextReport) {
      this.nextReport = this.done + this.every;
      if (!this.onProgress(Math.min(this.done, this.total), this.total, bestScore)) this.stopped = true;
    }
    return !this.stopped && this.done < Math.min(limit, this.total);
  }
}
