import type { Published } from '../plan.ts';
import type { CoatSpread, SpreadPour } from '../steps/results.ts';
import { known, type PaperContext, saying } from './context.ts';
import type { FloorMark } from './paper.ts';

export type PublishedPour = Published<SpreadPour>;

/** Labels of end lines on one drawing; with more the distances stand in the table only. */
const MOST_LABELLED = 3;

/** The planned spreads of a coat, one for each part of the floor; none where no order was found or asked for. */
export const spreadsOf = (ctx: PaperContext, layer: string): readonly Published<CoatSpread>[] =>
  (ctx.option.spread ? (known(ctx.option.spread)?.coats ?? []) : []).filter(
    (coat) => coat.layer === layer && coat.state === 'planned',
  );

/** `2.3`: third pour of the second day; plain where there is one day. */
export const pourName = (day: Published<CoatSpread>['day'], pour: string): string =>
  day ? `${day.number}.${pour}` : pour;

/** Pours in alternating tints, arrows of their lanes, the lines they end on, and where to stop if something goes wrong. */
export function pourMarks(coats: readonly Published<CoatSpread>[]): readonly FloorMark[] {
  return coats.flatMap(({ pours, bailOuts, day }) => [
    ...pours.map(
      (pour, i): FloorMark => ({
        kind: 'pour',
        outlines: pour.outline,
        number: pourName(day, pour.pour),
        at: pour.mark,
        tint: i % 2 === 0 ? 'deep' : 'light',
      }),
    ),
    ...pours.flatMap(({ arrow: [from, to] }): readonly FloorMark[] =>
      from && to ? [{ kind: 'arrow', from, to }] : [],
    ),
    ...bailOuts.flatMap(({ edge }) => edge.map((along): FloorMark => ({ kind: 'bail-out', along }))),
    ...pours.flatMap((pour) => endLines(pour, pours.length - 1 <= MOST_LABELLED)),
  ]);
}

/** The longest piece of an end line carries its words. */
function endLines({ edge, ends }: PublishedPour, labelled: boolean): readonly FloorMark[] {
  const length = (line: (typeof edge)[number]): number => {
    const [first, last] = [line[0], line.at(-1)];
    return first && last ? Math.hypot(last[0] - first[0], last[1] - first[1]) : 0;
  };
  const longest = edge.reduce((best, line, i) => (length(line) > length(edge[best] ?? []) ? i : best), 0);
  return edge.map((along, i) => ({
    kind: 'stop line',
    along,
    // a bent line takes too many words for a drawing: the table has them
    ...(labelled && i === longest && !ends.code.startsWith('spread-end-bent') ? { label: saying(ends) } : {}),
  }));
}
