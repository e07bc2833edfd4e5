import type { CoatSpread, Published, SpreadSeen } from '@slabwright/core';
import type { StepView } from '../steps/step-view.tsx';
import { answered } from '../worker/plan-types.ts';
import type { CoatAsked, CoatCells } from './api.ts';

export type Coat = Published<CoatSpread>;

/** Coats of the spread, in the order they are laid; none while it is being worked out. */
export const coatsOf = ({ option }: StepView): readonly Coat[] =>
  option?.spread && answered(option.spread) ? option.spread.coats : [];

/** The coat looked at on one area: the one of the layer chosen, else the first that has pours, else the first. */
export function coatOn(coats: readonly Coat[], area: string | undefined, layer: string | null): Coat | null {
  const here = coats.filter(({ areas }) => area === undefined || areas.includes(area));
  return (
    here.find((one) => coatMark(one) === layer) ??
    here.find((one) => one.layer === layer?.split(' ')[0]) ??
    here.find(({ state }) => state === 'planned') ??
    here[0] ??
    null
  );
}

export const cellsFor = (cells: readonly CoatCells[], coat: Coat): CoatCells | null =>
  cells.find(
    ({ layer, areas, day }) => layer === coat.layer && day === coat.day?.number && areas.join() === coat.areas.join(),
  ) ?? null;

/** The coat as the second worker knows it. */
export const askedOf = ({ layer, areas, day }: Coat): CoatAsked => ({ layer, area: areas[0] ?? '', day: day?.number });

/** What was planned for a coat so asked for. */
export const seenFor = (seen: readonly SpreadSeen[], { layer, area, day }: CoatAsked): SpreadSeen | undefined =>
  seen.find((one) => one.layer === layer && one.day === day && one.areas.includes(area));

/** What the screen remembers of the coat somebody looks at: its layer, and the day where there are several. */
export const coatMark = ({ layer, day }: Coat): string => (day ? `${layer} ${day.number}` : layer);

/** A coat on its rooms, on its day: what the screen knows it by. */
export const coatKey = (coat: Coat): string => `${coatMark(coat)} ${coat.areas.join()}`;
