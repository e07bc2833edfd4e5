import { planBack } from './plan-back.ts';
import type { SpreadProblem } from './problem.ts';
import { shortlist } from './shortlist.ts';
import { keyOf, type Sketch } from './sketch.ts';

/** A sketch and the order that grows from it plainly. */
export interface GrownSketch {
  readonly sketch: Sketch;
  readonly order: Int32Array;
}

/** Squares times sketches that are remembered at most, about 15 MB; larger floors are drawn anew. */
const MOST_REMEMBERED = 600_000;

/** By the links of a floor, then by what else decides: neither the coat nor the crew's pace does. */
const kept = new WeakMap<Int32Array, Map<string, readonly (() => GrownSketch)[]>>();

/** The shortlist of a floor, each sketch drawn and grown when it is first asked for. */
export function grownSketches(problem: SpreadProblem, most: number): readonly (() => GrownSketch)[] {
  const { squares, question } = problem;
  const kind = `${most} ${question.crew.spikedShoes === true}`;
  const before = kept.get(squares.link)?.get(kind);
  if (before) return before;
  const ideas = shortlist(problem, most);
  const small = squares.count * ideas.length <= MOST_REMEMBERED;
  const grown = ideas.map((draw) => {
    let made: GrownSketch | undefined;
    return (): GrownSketch => {
      if (made) return made;
      const sketch = draw();
      const now = { sketch, order: planBack(problem, keyOf(squares, sketch)) };
      if (small) made = now;
      return now;
    };
  });
  if (small) {
    const all = kept.get(squares.link) ?? new Map<string, readonly (() => GrownSketch)[]>();
    if (all.size >= 3) all.clear();
    kept.set(squares.link, all.set(kind, grown));
  }
  return grown;
}
