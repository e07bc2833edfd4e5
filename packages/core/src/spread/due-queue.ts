/**
 * Squares that must be spread by a moment, earliest first. Deadlines are handed out in rising order, so a plain linked
 * queue keeps them sorted. With `walk` it also keeps the minutes of walking from each square to the one after it.
 */
export class DueQueue {
  readonly due: Float64Array;
  /** Minutes of walking from the square before; 0 without foresight. */
  readonly chain: Float64Array;
  readonly next: Int32Array;
  /** Stands for both ends of the queue. */
  readonly end: number;
  count = 0;
  /** Walking along the whole queue. */
  walkMin = 0;
  private readonly previous: Int32Array;
  private readonly walk: ((a: number, b: number) => number) | undefined;

  constructor(squares: number, walk: ((a: number, b: number) => number) | undefined) {
    this.due = new Float64Array(squares);
    this.chain = new Float64Array(squares);
    this.end = squares;
    this.next = new Int32Array(squares + 1).fill(squares);
    this.previous = new Int32Array(squares + 1).fill(squares);
    this.walk = walk;
  }

  get first(): number {
    return this.next[this.end] as number;
  }

  append(square: number, due: number): void {
    const { next, previous, end } = this;
    const tail = previous[end] as number;
    this.due[square] = due;
    next[tail] = square;
    previous[square] = tail;
    next[square] = end;
    previous[end] = square;
    this.count += 1;
    if (this.walk && tail !== end) this.link(square, this.walk(tail, square));
  }

  remove(square: number): void {
    const { next, previous, end } = this;
    const before = previous[square] as number;
    const after = next[square] as number;
    next[before] = after;
    previous[after] = before;
    this.count -= 1;
    this.link(square, 0);
    if (this.walk && after !== end) this.link(after, before === end ? 0 : this.walk(before, after));
  }

  private link(square: number, minutes: number): void {
    this.walkMin += minutes - (this.chain[square] as number);
    this.chain[square] = minutes;
  }
}
